package plan

// StripsOf returns the strips that a panel is glued up from, from its low edge on, those
// of the narrow panels that it was planed in among them.
func (p *Plan) StripsOf(panel Workpiece) []Workpiece { return StripsOf(p.Workpieces, panel) }

// StripsOf returns a panel's strips among the workpieces, as [Plan.StripsOf] does. A
// narrow panel is made from strips alone.
func StripsOf(all []Workpiece, panel Workpiece) []Workpiece {
	at := make(map[string]Workpiece, len(all))
	for _, w := range all {
		at[w.ID] = w
	}
	var out []Workpiece
	for _, id := range panel.From {
		switch w := at[id]; w.Kind {
		case StripPiece:
			out = append(out, w)
		case NarrowPanel:
			for _, id := range w.From {
				if s := at[id]; s.Kind == StripPiece {
					out = append(out, s)
				}
			}
		}
	}
	return out
}
