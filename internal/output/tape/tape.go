package tape

import (
	"scantling/internal/address"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Tape rounds the sizes of one plan.
type Tape struct {
	plan *plan.Plan
	show unit.Show
	rows map[address.Address]*plan.PartRow
	part map[address.Address]*piece.Part
}

// Of returns the tape of a plan in one system of units.
func Of(p *plan.Plan, system unit.System) *Tape {
	t := &Tape{plan: p, show: p.Show(system), rows: map[address.Address]*plan.PartRow{}, part: map[address.Address]*piece.Part{}}
	for i := range p.Parts {
		for _, a := range p.Parts[i].Members {
			t.rows[a] = &p.Parts[i]
		}
	}
	for i := range p.Piece.Parts {
		t.part[p.Piece.Parts[i].Address] = &p.Piece.Parts[i]
	}
	return t
}

// Inches reports whether sizes are fractions of an inch.
func (t *Tape) Inches() bool { return t.show.Works() == unit.Inches }

// Sizes returns length, width and thickness of a row of the part list.
func (t *Tape) Sizes(r plan.PartRow) [3]unit.Length {
	var out [3]unit.Length
	for i, f := range r.Sizes() {
		out[i] = t.round(f.Nm, r.Goes[i].What)
	}
	return out
}

func (t *Tape) round(l unit.Length, g plan.Goes) unit.Length {
	if !t.Inches() {
		return l
	}
	return t.show.Toward(g.Rounding()).Round(l)
}

// Toward rounds a length to the side that it goes to.
func (t *Tape) Toward(l unit.Length, g plan.Goes) unit.Length { return t.round(l, g) }

// Row returns the terms of a row as they are printed, their sum, and the term that
// takes what rounding leaves over; -1 if none needs to. A part keeps the size that the
// part list gives it.
func (t *Tape) Row(r plan.Row) (shown []unit.Length, total unit.Length, takes int) {
	if !t.Inches() {
		lengths := make([]unit.Length, len(r.Terms))
		for i, term := range r.Terms {
			lengths[i] = term.Figure.Nm
		}
		shown, takes = unit.ShowRow(lengths, t.show), -1
	} else {
		members := make([]unit.Member, len(r.Terms))
		for i, term := range r.Terms {
			goes, whole := t.along(term.Of, r.Axis, term.Figure.Nm)
			members[i] = unit.Member{Length: term.Figure.Nm, Kept: whole, Toward: goes.Rounding()}
		}
		shown, takes = unit.CloseRow(members, t.show.Toward(t.whole(r).Rounding()))
	}
	for _, l := range shown {
		total += l
	}
	return shown, total, takes
}

// along is what a part's size along an axis does, if the stretch is all of that size.
func (t *Tape) along(a address.Address, axis piece.Axis, stretch unit.Length) (plan.Goes, bool) {
	row, p := t.rows[a], t.part[a]
	if row == nil || p == nil {
		return plan.Matches, false
	}
	local, _ := p.Frame.LocalOf(axis)
	return row.Goes[local].What, row.Sizes()[local].Nm == stretch
}

// whole is what a part does that is as long as the whole row.
func (t *Tape) whole(r plan.Row) plan.Goes {
	for i := range t.plan.Piece.Parts {
		p := &t.plan.Piece.Parts[i]
		if e := p.Extent[r.Axis]; e.Low.Nm == r.Start.Nm && e.High.Nm-e.Low.Nm == r.Total.Nm {
			if g, ok := t.along(p.Address, r.Axis, r.Total.Nm); ok && g != plan.Matches {
				return g
			}
		}
	}
	return plan.Matches
}
