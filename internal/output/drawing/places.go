package drawing

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/output/naming"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// mark is a place on one local axis that is dimensioned, and what lies there.
type mark struct {
	at      unit.Length
	toward  plan.Goes // the wall of a cut that takes something goes away from its middle
	address address.Address
	// inner is a member of a series that is neither its first nor its last.
	inner bool
}

// collect gathers the places to dimension, each place once.
func (d *partDrawing) collect() {
	last := map[address.Address]int{}
	for _, c := range d.cuts {
		last[c.Series] = max(last[c.Series], c.Nth)
	}
	for _, c := range d.cuts {
		inner := c.Kind == piece.Channel && c.Series != "" && c.Nth != 1 && c.Nth != last[c.Series]
		for axis, places := range naming.Places(&d.part, c) {
			for _, at := range places {
				d.place(piece.Local(axis), mark{at, wall(c, piece.Local(axis), at), c.Address, inner && c.Slot != nil && piece.Local(axis) == c.Slot.Across()})
			}
		}
	}
	for _, list := range []*[]mark{&d.along, &d.across, &d.through} {
		slices.SortFunc(*list, func(a, b mark) int { return cmp.Compare(a.at, b.at) })
		if len(*list) > d.options.MostDimensions {
			*list = slices.DeleteFunc(*list, func(m mark) bool { return m.inner })
		}
		if n := d.options.MostDimensions; len(*list) > n {
			*list = (*list)[:n]
		}
	}
}

// wall says to which side the wall of a cut is rounded: away from the cut's middle where
// something goes into it.
func wall(c piece.Cut, axis piece.Local, at unit.Length) plan.Goes {
	switch {
	case c.Slot == nil || axis != c.Slot.Across() || plan.WidthOf(c) != plan.Takes:
		return plan.Matches
	case at == c.Slot.Near.Nm:
		return plan.GoesIn
	}
	return plan.Takes
}

// place adds a place on an axis, unless it is the part's own limit or there
// already.
func (d *partDrawing) place(axis piece.Local, m mark) {
	if m.at <= 0 || m.at >= d.part.Sizes()[axis].Nm {
		return
	}
	list := [3]*[]mark{&d.along, &d.across, &d.through}[axis]
	if !slices.ContainsFunc(*list, func(have mark) bool { return have.at == m.at }) {
		*list = append(*list, m)
	}
}
