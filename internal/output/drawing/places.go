package drawing

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/output/naming"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// mark is a place on one local axis that is dimensioned, and what lies there.
type mark struct {
	at      unit.Length
	address address.Address
	// inner is a member of a series that is neither its first nor its last.
	inner bool
}

// collect gathers the places to dimension: limits of slots, centres of channels
// and bores, ends of dips. Each place once.
func (d *partDrawing) collect() {
	last := map[address.Address]int{}
	for _, c := range d.cuts {
		last[c.Series] = max(last[c.Series], c.Nth)
	}
	for _, c := range d.cuts {
		switch {
		case c.Slot != nil && c.Kind == piece.Channel:
			d.place(c.Slot.Across(), mark{(c.Slot.Near.Nm + c.Slot.Far.Nm) / 2, c.Address, c.Series != "" && c.Nth != 1 && c.Nth != last[c.Series]})
			d.runsFrom(c)
		case c.Slot != nil:
			d.place(c.Slot.Across(), mark{at: c.Slot.Near.Nm, address: c.Address})
			d.place(c.Slot.Across(), mark{at: c.Slot.Far.Nm, address: c.Address})
			d.runsFrom(c)
			d.depth(c)
		case c.Bore != nil:
			for i, axis := range naming.CrossAxes(c.Bore.Open) {
				d.place(axis, mark{at: c.Bore.At[i].Nm, address: c.Address})
			}
		case c.Dip != nil:
			axis := piece.AlongLength
			if open, _ := c.Dip.Open.Axis(); open == piece.AlongLength {
				axis = piece.AlongWidth
			}
			d.place(axis, mark{at: c.Dip.Centre.Nm - c.Dip.Chord.Nm/2, address: c.Address})
			d.place(axis, mark{at: c.Dip.Centre.Nm + c.Dip.Chord.Nm/2, address: c.Address})
			d.inwards(c.Dip.Open, c.Dip.Depth.Nm, c.Address)
		case c.Slice != nil:
			d.slices(c)
		case c.Pocket != nil:
			d.pockets(c)
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

// runsFrom adds the ends of a slot that does not run out.
func (d *partDrawing) runsFrom(c piece.Cut) {
	if !c.Slot.StartOpen {
		d.place(c.Slot.Run, mark{at: c.Slot.From.Nm, address: c.Address})
	}
	if !c.Slot.EndOpen {
		d.place(c.Slot.Run, mark{at: c.Slot.To.Nm, address: c.Address})
	}
}

func (d *partDrawing) depth(c piece.Cut) { d.inwards(c.Slot.Open, c.Slot.Depth.Nm, c.Address) }

// inwards adds the place that lies that deep below a side.
func (d *partDrawing) inwards(open piece.Side, depth unit.Length, a address.Address) {
	axis, high := open.Axis()
	if high {
		depth = d.part.Sizes()[axis].Nm - depth
	}
	d.place(axis, mark{at: depth, address: a})
}
