package bodies

import (
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Slot is a straight cut as checks see it, in its part's own axes.
type Slot struct {
	*piece.Slot
	Cut  *piece.Cut
	Part *piece.Part
	// Open is the axis that it goes in along, from the high side if High.
	Axis   piece.Local
	High   bool
	Across piece.Local
	// Through says that it goes right through the part.
	Through bool
}

// Slots returns the straight cuts of a part of the given kinds, all if none is
// given. Cuts that cannot be (open along their run) are left out.
func (x *Index) Slots(p *piece.Part, kinds ...piece.CutKind) []Slot {
	var out []Slot
	for _, c := range x.cuts[p.Address] {
		if c.Slot == nil || !among(kinds, c.Kind) {
			continue
		}
		axis, high := c.Slot.Open.Axis()
		if axis == c.Slot.Run {
			continue
		}
		out = append(out, Slot{
			Slot: c.Slot, Cut: c, Part: p, Axis: axis, High: high, Across: c.Slot.Across(),
			Through: c.Slot.Depth.Nm >= p.Sizes()[axis].Nm,
		})
	}
	return out
}

// Footprint returns the slot's stretches along its run and across it.
func (s Slot) Footprint() (run, across Span) {
	return Span{s.From.Nm, s.To.Nm}, Span{s.Near.Nm, s.Far.Nm}
}

// Meets reports whether two slots into the same axis lie over each other as seen
// along it.
func (s Slot) Meets(t Slot) bool {
	a, b := s.local(), t.local()
	for i := range a {
		if piece.Local(i) != s.Axis && !a[i].Overlaps(b[i]) {
			return false
		}
	}
	return s.Axis == t.Axis
}

// local returns the slot's box in its part's own axes; round bottoms count as
// square.
func (s Slot) local() Box {
	var b Box
	run, across := s.Footprint()
	b[s.Run], b[s.Across] = run, across
	whole := s.Part.Sizes()[s.Axis].Nm
	b[s.Axis] = Span{0, s.Depth.Nm}
	if s.High {
		b[s.Axis] = Span{whole - s.Depth.Nm, whole}
	}
	return b
}

// Whole returns the size of the slot's part along an axis of the part.
func (s Slot) Whole(a piece.Local) unit.Length { return s.Part.Sizes()[a].Nm }

func among(kinds []piece.CutKind, k piece.CutKind) bool {
	for _, want := range kinds {
		if want == k {
			return true
		}
	}
	return len(kinds) == 0
}
