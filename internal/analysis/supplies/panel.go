package supplies

import (
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/unit"
)

// RulePanelGlue is the rule of the house that names the glue of panels.
const RulePanelGlue = "panel glue"

// usualPanelGlue is what boards are glued up with where nobody says. Common practice, no
// source.
const usualPanelGlue = "pva"

// PanelGlue is what boards are glued up with edge to edge, for which a document has no
// word: the glue of the house's rule, or the one that all glued joints of the piece have,
// or PVA. The shop may be nil.
func PanelGlue(p *piece.Piece, s *shop.Shop) string {
	if s != nil {
		if r, ok := s.Rule(RulePanelGlue); ok && r.Value.Dim() == unit.DimText && r.Value.Text() != "" {
			return r.Value.Text()
		}
	}
	one := ""
	for _, j := range p.Joints {
		switch {
		case j.Glue == "" || j.Glue == one:
		case one != "":
			return usualPanelGlue // of two, nobody knows which
		default:
			one = j.Glue
		}
	}
	if one == "" {
		return usualPanelGlue
	}
	return one
}

// gluedUp reports whether a workpiece is glued up from others, edge to edge.
func gluedUp(w plan.Workpiece) bool {
	return (w.Kind == plan.PanelPiece || w.Kind == plan.NarrowPanel) && len(w.From) > 1
}

// Panel returns the first workpiece that is glued up from others, and whether there is
// one.
func Panel(from []plan.Workpiece) (plan.Workpiece, bool) {
	for _, w := range from {
		if gluedUp(w) {
			return w, true
		}
	}
	return plan.Workpiece{}, false
}
