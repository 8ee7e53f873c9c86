package corner

import (
	"cmp"
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/problem"
)

// best returns the fillings worth most, no two of them with the same pieces.
func (b *beam) best(q Question) []*ceiling.Parcel {
	type found struct {
		at    int32
		value int64
	}
	var all []found
	for _, s := range b.done {
		value := int64(0)
		for n := s; n >= 0; n = b.partials[n].parent {
			if p := b.partials[n].piece; p >= 0 {
				value += q.Value[b.t.pieces[p].Kind]
			}
		}
		if value > q.Floor {
			all = append(all, found{s, value})
		}
	}
	slices.SortStableFunc(all, func(a, c found) int { return cmp.Compare(c.value, a.value) })
	var out []*ceiling.Parcel
	var sets [][]int
	for _, f := range all {
		b.count(f.at, 1)
		set := slices.Clone(b.taken)
		b.count(f.at, -1)
		if slices.ContainsFunc(sets, func(s []int) bool { return slices.Equal(s, set) }) {
			continue
		}
		sets = append(sets, set)
		if out = append(out, b.parcel(f.at, q)); len(out) == q.Most {
			break
		}
	}
	return out
}

// parcel returns how a filling lies.
func (b *beam) parcel(s int32, q Question) *ceiling.Parcel {
	var chain []partial
	for ; b.partials[s].parent >= 0; s = b.partials[s].parent {
		chain = append(chain, b.partials[s])
	}
	slices.Reverse(chain)
	t := b.t
	root := &ceiling.Parcel{X: q.X, Y: q.Y}
	rects, parcels := []rect{t.whole()}, []*ceiling.Parcel{root}
	for _, c := range chain {
		r, p := rects[0], parcels[0]
		rects, parcels = rects[1:], parcels[1:]
		if c.piece < 0 {
			continue
		}
		over, rest := t.split(r, c.piece, c.first)
		beyond, beside := t.cut(p, c.piece, c.first)
		for n, o := range []rect{over, rest} {
			if t.at(o) > 0 {
				at := t.place(rects, o)
				rects = slices.Insert(rects, at, o)
				parcels = slices.Insert(parcels, at, []*ceiling.Parcel{beyond, beside}[n])
			}
		}
	}
	return root
}

// cut divides a parcel, puts a piece at its corner, and returns the parcel beyond
// the piece in the part with it, and the other part.
func (t *table) cut(p *ceiling.Parcel, piece int32, first way) (beyond, rest *ceiling.Parcel) {
	l := t.pieces[piece]
	w, h := t.x.At[t.px[piece]], t.y.At[t.py[piece]]
	var near *ceiling.Parcel
	if first == acrossX {
		p.Cut, p.At = problem.Crosscut, w
		near = &ceiling.Parcel{X: w, Y: p.Y, Cut: problem.Rip, At: h}
		beyond, rest = &ceiling.Parcel{X: w, Y: p.Y - h}, &ceiling.Parcel{X: p.X - w, Y: p.Y}
	} else {
		p.Cut, p.At = problem.Rip, h
		near = &ceiling.Parcel{X: p.X, Y: h, Cut: problem.Crosscut, At: w}
		beyond, rest = &ceiling.Parcel{X: p.X - w, Y: h}, &ceiling.Parcel{X: p.X, Y: p.Y - h}
	}
	near.Parts = [2]*ceiling.Parcel{{X: w, Y: h, Piece: &l}, beyond}
	p.Parts = [2]*ceiling.Parcel{near, rest}
	return beyond, rest
}
