package tape

import (
	"slices"

	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Setting returns a setting as it is read off a rule, and its passes, the last of which
// is the setting. Where the passes are the paths of a cut that takes something the
// first goes the other way, so that the cut comes out no narrower than it should.
func (t *Tape) Setting(s plan.Setting) (shown unit.Length, passes []unit.Length) {
	shown = t.round(s.Figure.Nm, s.Goes)
	for i, f := range s.Passes {
		switch {
		case i == len(s.Passes)-1:
			passes = append(passes, shown)
		case i == 0 && s.Goes == plan.Takes && !risen[s.Word]:
			passes = append(passes, t.round(f.Nm, plan.GoesIn))
		default:
			passes = append(passes, t.round(f.Nm, plan.Matches))
		}
	}
	return shown, passes
}

// risen are the settings whose passes go deeper, and not further across.
var risen = map[string]bool{"height": true, "plunge depth": true, "depth": true, "thickness": true}

// Read rounds a length that a sketch of a card shows: as the setting that it is, or to
// the nearest.
func (t *Tape) Read(l unit.Length, settings []plan.Setting) unit.Length {
	goes, _ := t.known(l, "", settings)
	return t.round(l, goes)
}

// Width rounds the width of a cut, as of a slot or a hole.
func (t *Tape) Width(c piece.Cut, l unit.Length) unit.Length { return t.round(l, plan.WidthOf(c)) }

// Depth rounds the depth of a cut.
func (t *Tape) Depth(c piece.Cut, l unit.Length) unit.Length { return t.round(l, plan.DepthOf(c)) }

// Sum returns the terms of a sum of a card and their total as they are printed: a term
// or a total that is one of the settings, or a size of the row, has the figure that it
// has there; the others share what is left.
func (t *Tape) Sum(sum plan.Sum, mark string, settings []plan.Setting) (shown []unit.Length, total unit.Length) {
	lengths := make([]unit.Length, len(sum.Terms))
	for i, term := range sum.Terms {
		lengths[i] = term.Figure.Nm
	}
	if !t.Inches() {
		shown = unit.ShowRow(lengths, t.show)
		return shown, added(shown)
	}
	if shown = t.passed(sum, settings); shown != nil {
		return shown, added(shown)
	}
	members, free := make([]unit.Member, len(lengths)), 0
	for i, l := range lengths {
		goes, kept := t.known(l, mark, settings)
		if members[i] = (unit.Member{Length: l, Kept: kept, Toward: goes.Rounding()}); !kept {
			free++
		}
	}
	if free == 0 { // then the total is what they come to
		for _, m := range members {
			shown = append(shown, m.Length.Round(t.show.Step(), m.Toward))
		}
		return shown, added(shown)
	}
	whole, _ := t.known(sum.Total.Nm, mark, settings)
	shown, _ = unit.CloseRow(members, t.show.Toward(whole.Rounding()))
	return shown, added(shown)
}

func added(shown []unit.Length) (total unit.Length) {
	for _, l := range shown {
		total += l
	}
	return total
}

// passed returns the terms of a sum that adds up passes: each is the difference of two
// passes as they are printed, the first from nought or from the thickest work.
func (t *Tape) passed(sum plan.Sum, settings []plan.Setting) []unit.Length {
	i := slices.IndexFunc(settings, func(s plan.Setting) bool {
		n := len(sum.Terms) - len(s.Passes)
		return s.Figure.Nm == sum.Total.Nm && len(s.Passes) > 1 && (n == 0 && sum.Terms[0].Figure.Nm == s.Passes[0].Nm || n == 1)
	})
	if i < 0 {
		return nil
	}
	_, passes := t.Setting(settings[i])
	var out []unit.Length
	last := unit.Length(0)
	if len(sum.Terms) > len(passes) {
		last = t.round(sum.Terms[0].Figure.Nm, plan.Matches)
		out = append(out, last)
	}
	for _, p := range passes {
		out, last = append(out, p-last), p
	}
	return out
}

// known is what a length does that is printed elsewhere too.
func (t *Tape) known(l unit.Length, mark string, settings []plan.Setting) (plan.Goes, bool) {
	for _, s := range settings {
		if s.Figure.Nm == l {
			return s.Goes, true
		}
	}
	for i := range t.plan.Parts {
		if r := &t.plan.Parts[i]; mark != "" && r.Mark == mark {
			for n, f := range r.Sizes() {
				if f.Nm == l {
					return r.Goes[n].What, true
				}
			}
		}
	}
	return plan.Matches, false
}
