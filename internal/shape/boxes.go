package shape

import (
	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Box is limited by right, back and up of the piece.
type Box struct{ Lo, Hi [3]unit.Length }

// Overlaps reports whether two boxes share a volume.
func (b Box) Overlaps(c Box) bool {
	for a := range 3 {
		if b.Lo[a] >= c.Hi[a] || c.Lo[a] >= b.Hi[a] {
			return false
		}
	}
	return true
}

// less appends what is left of b when t is taken away, in boxes that do not
// overlap.
func (b Box) less(t Box, out []Box) []Box {
	if !b.Overlaps(t) {
		return append(out, b)
	}
	for a := range 3 {
		if t.Lo[a] > b.Lo[a] {
			c := b
			c.Hi[a] = t.Lo[a]
			out = append(out, c)
			b.Lo[a] = t.Lo[a]
		}
		if t.Hi[a] < b.Hi[a] {
			c := b
			c.Lo[a] = t.Hi[a]
			out = append(out, c)
			b.Hi[a] = t.Hi[a]
		}
	}
	return out
}

// Boxes returns boxes of the piece that hold the finished wood of a part, exact
// in nanometres and without overlap. Slots with square corners are taken away
// exactly. Curved and slanting cuts are not taken away, so that all the wood is in
// the boxes, unless around is set: then the boxes around them are, and some wood
// beside a curve or a slope is missing. A tilted part is the box around it as it
// stands. It reports false, and returns the uncut body, where that would take more
// than [MaxBoxes].
func Boxes(p *piece.Part, cuts []*piece.Cut, around bool) ([]Box, bool) {
	list := []Box{boxOf(joinery.Stands(p))}
	if p.Tilt != nil {
		return list, true
	}
	for _, c := range cuts {
		if square := c.Slot != nil && Plain(p, c.Slot); !square && !around {
			continue
		}
		for _, taken := range joinery.Around(p, c) {
			t := boxOf(taken)
			var next []Box
			for _, b := range list {
				next = b.less(t, next)
			}
			list = next
		}
		if len(list) > MaxBoxes {
			return []Box{boxOf(joinery.Stands(p))}, false
		}
	}
	return list, true
}

// Plain reports whether a slot takes the box around it and nothing less.
func Plain(p *piece.Part, s *piece.Slot) bool {
	return straight(s) && s.Corner.Nm <= 0 && !leans(s) && roundEnds(p, s) == [2]bool{}
}

// MaxBoxes bounds the boxes of one part.
const MaxBoxes = 4096

func boxOf(e [3]piece.Extent) (b Box) {
	for a := range e {
		b.Lo[a], b.Hi[a] = e[a].Low.Nm, e[a].High.Nm
	}
	return b
}
