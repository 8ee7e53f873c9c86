package joinery

import (
	"slices"

	"scantling/internal/piece"
	"scantling/internal/unit"
)

// wood is what is known of the finished parts while cuts are run out: for each
// part the boxes taken from it. Round cuts count as the boxes around them, so
// that no cut is run out on the strength of wood that may not be there.
type wood struct {
	body   []box
	gone   [][]box
	inner  [][]box // of gone, what is gone for certain
	sloped [][]prism
	beside [][]int // parts that touch the part or overlap it
	steps  *steps
}

func (w *work) finished() *wood {
	n := len(w.piece.Parts)
	f := &wood{body: make([]box, n), gone: make([][]box, n), inner: make([][]box, n), sloped: make([][]prism, n), beside: make([][]int, n), steps: &w.steps}
	for i := range w.piece.Parts {
		f.body[i] = w.piece.Parts[i].Extent
	}
	for _, p := range pairsOf(f.body, &w.steps, touches) {
		f.beside[p[0]] = append(f.beside[p[0]], p[1])
		f.beside[p[1]] = append(f.beside[p[1]], p[0])
	}
	for i := range w.claims {
		if c := &w.claims[i]; !c.gone {
			f.gone[c.loser] = append(f.gone[c.loser], c.cut)
			if c.profile != nil {
				f.sloped[c.loser] = append(f.sloped[c.loser], c.cutBody())
			}
			if b, ok := c.inner(); ok {
				f.inner[c.loser] = append(f.inner[c.loser], b)
			}
		}
	}
	for i := range w.piece.Cuts {
		c := &w.piece.Cuts[i]
		if p, ok := w.index[c.Part]; ok {
			for _, b := range Around(&w.piece.Parts[p], c) {
				f.gone[p] = append(f.gone[p], b)
				f.inner[p] = append(f.inner[p], b)
			}
		}
	}
	return f
}

// runOut lengthens grooves, housings and rebates to the ends of their parts
// where nothing shows.
func (w *work) runOut() {
	f := w.finished()
	for i := range w.claims {
		c := &w.claims[i]
		if c.gone || !c.runsOut() {
			continue
		}
		body := f.body[c.loser]
		for k, high := range [2]bool{false, true} {
			end := body.end(c.run, high)
			if c.stops[k] || c.cut.end(c.run, high).Nm == end.Nm {
				continue
			}
			more := c.cut.with(c.run, !high, c.cut.end(c.run, high)).with(c.run, high, end)
			if f.hides(c.loser, c.cut, more) {
				f.gone[c.loser] = append(f.gone[c.loser], more)
				f.inner[c.loser] = append(f.inner[c.loser], more)
				c.cut = c.cut.with(c.run, high, end)
			}
		}
	}
}

// runsOut reports whether a cut of this kind is lengthened to the end of its part.
func (c *claim) runsOut() bool {
	switch c.kind {
	case piece.Groove, piece.Housing, piece.Rebate, piece.Cheek:
		return true
	}
	return false
}

// hides reports whether taking more from a part beside a cut shows nowhere: no
// wood is there, or every side on which what is taken lies open is covered by
// finished wood of other parts.
func (f *wood) hides(part int, cut, more box) bool {
	taken := []box{more}
	for _, g := range f.inner[part] {
		taken = f.steps.lessAll(taken, g)
	}
	for _, t := range taken {
		if slices.ContainsFunc(f.sloped[part], func(p prism) bool { return p.holds(t) }) {
			continue
		}
		for _, a := range axes {
			for _, high := range [2]bool{false, true} {
				open := []box{skin(t, a, high)}
				open = f.steps.lessAll(f.steps.lessAll(open, cut), more)
				open = f.lessWood(open, part)
				for _, q := range f.beside[part] {
					open = f.lessWood(open, q)
				}
				if len(open) > 0 {
					return false
				}
			}
		}
	}
	return true
}

// skin returns the layer of one nanometre that lies on a side of a box, outside.
func skin(b box, a piece.Axis, high bool) box {
	at := b.end(a, high).Nm
	if high {
		b[a] = piece.Extent{Low: piece.Figure{Nm: at}, High: piece.Figure{Nm: at + unit.Nanometre}}
	} else {
		b[a] = piece.Extent{Low: piece.Figure{Nm: at - unit.Nanometre}, High: piece.Figure{Nm: at}}
	}
	return b
}

// lessWood takes the finished wood of a part away from a list of boxes.
func (f *wood) lessWood(list []box, part int) []box {
	var out []box
	body := f.body[part]
	for _, b := range list {
		if !overlaps(b, body) {
			out = append(out, b)
			continue
		}
		if !f.steps.take(len(f.gone[part])) {
			return append(out, b)
		}
		out = append(out, less(b, body, 0)...)
		for _, g := range f.gone[part] {
			if overlaps(b, g) {
				if air := meet(b, g); overlaps(air, body) {
					out = append(out, meet(air, body))
				}
			}
		}
	}
	return out
}
