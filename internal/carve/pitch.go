package carve

import (
	"scantling/internal/carve/direction"
	"scantling/internal/carve/fault"
	"scantling/internal/carve/spacing"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// widest is the pitch that a channel must stay within: the least of those said.
func (r *row) widest() (piece.Figure, bool) {
	if r.Has("pitch") || !r.Has("pitches") {
		v, ok := r.need("pitch")
		return r.figure(v), ok
	}
	all, ok := r.pitches()
	if !ok || len(all) == 0 {
		return piece.Figure{}, false
	}
	return r.Maker.Ledger.Least("", all...), true
}

// pitches reads a list of pitches from centre to centre.
func (r *row) pitches() ([]piece.Figure, bool) {
	v := r.Value("pitches", "")
	if v.OK() && v.Kind != formula.List {
		r.Fault(formula.CodeWrongKind, v.Where, message.Word("got", v.Word()), message.Word("want", "kind.list"))
	}
	if v.Kind != formula.List {
		return nil, false
	}
	var out []piece.Figure
	for _, item := range v.Items {
		l, ok := r.Maker.Length(item, r.name+".pitch")
		if !ok || !r.Positive(l, "pitches", r.name+".pitch") {
			return nil, false
		}
		out = append(out, r.figure(l))
	}
	return out, true
}

// spaced works out the centres from the first one on: at one pitch, at a list of
// pitches, with one land between all, or with the lands that the margins leave.
func (r *row) spaced() (spacing.Row, bool) {
	l := r.Maker.Ledger
	n := len(r.slots)
	switch {
	case r.Has("pitch"):
		pitch, ok := r.need("pitch")
		if !ok || !r.Positive(pitch, "pitch", r.name+".pitch") {
			return spacing.Row{}, false
		}
		return spacing.Even(l, r.figure(pitch), n), true
	case r.Has("pitches"):
		all, ok := r.pitches()
		if ok && len(all) != n-1 {
			r.Fault(fault.CodePitches, r.Where("pitches"), message.Count("got", len(all)), message.Count("want", n-1), message.Count("cuts", n))
		}
		if !ok || len(all) != n-1 {
			return spacing.Row{}, false
		}
		if n == 1 {
			return spacing.Even(l, r.slots[0].width, 1), true
		}
		return spacing.Stepped(l, all), true
	case r.Has("land"):
		land, ok := r.need("land")
		if !ok || !r.Positive(land, "land", r.name+".land") {
			return spacing.Row{}, false
		}
		return r.landed(func(int) piece.Figure { return r.figure(land) }), true
	}
	return r.leftOver()
}

// landed lays the mouths with lands between them.
func (r *row) landed(land func(nth int) piece.Figure) spacing.Row {
	return spacing.Landed(r.Maker.Ledger, r.widths(), land)
}

func (r *row) widths() []piece.Figure {
	out := make([]piece.Figure, len(r.slots))
	for i, m := range r.slots {
		out[i] = m.width
	}
	return out
}

// leftOver shares what the mouths leave of the part: between them, if there is a
// margin, else before, between and behind them alike.
func (r *row) leftOver() (spacing.Row, bool) {
	l := r.Maker.Ledger
	n := len(r.slots)
	terms := append([]piece.Figure{r.whole}, r.widths()...)
	even := r.Words("place") == "even"
	if !even {
		if !r.Has("margin") || n < 2 {
			r.Missing("pitch")
			return spacing.Row{}, false
		}
		margin, ok := r.need("margin")
		if !ok {
			return spacing.Row{}, false
		}
		terms = append(terms, r.figure(margin), r.figure(margin))
	}
	rest := l.Less(r.name+".lands", terms...)
	if rest.Nm <= 0 {
		r.Fault(fault.CodeSeriesWide, r.Block.Where, message.Text("name", r.Name), message.LengthRounded("over", -rest.Nm, unit.Up), message.Length("width", r.whole.Nm))
		return spacing.Row{}, false
	}
	if !even {
		return r.landed(func(nth int) piece.Figure { return l.Share(r.name+".land", rest, n-1, nth) }), true
	}
	out := r.landed(func(nth int) piece.Figure { return l.Share(r.name+".land", rest, n+1, nth+1) })
	out.Before = l.Sum(r.name+".first", l.Share(r.name+".margin", rest, n+1, 1), l.Half("", r.slots[0].width))
	out.Said = true
	return out, true
}

// place lays the mouths along the row, from the margin on or in the middle, in the
// order of the document, from the low end or the one that it starts at.
func (r *row) place() bool {
	if len(r.slots) == 0 {
		return true
	}
	sp, ok := r.spaced()
	if !ok {
		return false
	}
	first, ok := r.first(sp)
	if !ok {
		return false
	}
	back, ok := r.backwards()
	if !ok {
		return false
	}
	l := r.Maker.Ledger
	for i := range r.slots {
		centre := first
		if i > 0 {
			centre = l.Sum("", first, sp.Centres[i])
		}
		if back {
			centre = l.Less("", r.whole, centre)
		}
		r.slots[i].lies(l, r.name, r.cutting.local(r.axis, quantity(centre)))
	}
	return r.apart()
}

// lies puts a mouth about its centre along the part's own axis.
func (m *mouth) lies(l *ledger.Ledger, name string, at piece.Figure) {
	m.at = at
	m.near = l.Round(name+".near", l.Less("", at, l.Half("", m.width)), unit.Nanometre, unit.Nearest)
	m.far = l.Sum(name+".far", m.near, m.width)
	m.from, m.to = m.near, m.far
	if m.depth.Nm < m.corner.Nm {
		m.from = l.Round(name+".from", l.Less("", at, m.corner), unit.Nanometre, unit.Nearest)
		m.to = l.Sum(name+".to", m.from, m.corner, m.corner)
	}
}

// first is where the first centre lies, from the end that the row starts at.
func (r *row) first(sp spacing.Row) (piece.Figure, bool) {
	l := r.Maker.Ledger
	word := r.Words("place")
	half := l.Half("", r.slots[0].width)
	switch {
	case sp.Said:
		return sp.Before, true
	case r.Has("margin") && word == "":
		margin, ok := r.need("margin")
		if !ok {
			return piece.Figure{}, false
		}
		return l.Sum(r.name+".first", r.figure(margin), half), true
	case word == "centred" || word == "centered" || word == "" && !r.Has("place"):
		last := sp.Centres[len(sp.Centres)-1]
		if !sp.Mouths {
			return l.Half(r.name+".first", l.Less("", r.whole, last)), true
		}
		free := l.Less("", r.whole, half, last, l.Half("", r.slots[len(r.slots)-1].width))
		return l.Sum(r.name+".first", l.Half(r.name+".margin", free), half), true
	}
	if word != "" {
		r.BadWord("place", word, splitWords("centred, even"))
	}
	return piece.Figure{}, false
}

// backwards reads the side that the row starts at.
func (r *row) backwards() (bool, bool) {
	if !r.Has("starts") {
		return false, true
	}
	word := r.Words("starts")
	axis, low, ok := direction.Face(word)
	if !ok || axis != r.axis {
		if word != "" {
			r.BadWord("starts", word, []string{direction.Low[r.axis], direction.High[r.axis]})
		}
		return false, false
	}
	return !low, true
}
