package strips

import "scantling/internal/unit"

// Boards is what a piece takes when its panels are shared out in some way.
type Boards struct {
	// Faults counts what cannot be cut at all.
	Faults int
	// Bought counts boards that must be bought, Rack those of the rack that are cut.
	Bought, Rack int
	// Price is what the bought ones come to, in any unit that is the same all through a
	// search.
	Price int64
}

// Score is a way to share panels out, as it is compared.
type Score struct {
	Boards
	// Strips counts the strips of all panels.
	Strips int
	// Uneven is the sum of the squares of their widths, in square micrometres: of as many
	// strips of as much width the least is of equal ones.
	Uneven int64
}

// Better reports whether s is taken instead of other: less that cannot be cut, then,
// never dearer, fewer boards bought, a lower price, fewer boards of the rack, fewer
// strips, more even ones.
func (s Score) Better(other Score) bool {
	switch {
	case s.Faults != other.Faults:
		return s.Faults < other.Faults
	case s.Price > other.Price:
		return false
	case s.Bought != other.Bought:
		return s.Bought < other.Bought
	case s.Price != other.Price:
		return true
	case s.Rack != other.Rack:
		return s.Rack < other.Rack
	case s.Strips != other.Strips:
		return s.Strips < other.Strips
	}
	return s.Uneven < other.Uneven
}

// saves reports whether boards or money are saved: what makes strips other than equal
// ones worth their while.
func (s Score) saves(other Score) bool {
	s.Strips, s.Uneven = other.Strips, other.Uneven
	return s.Better(other)
}

func square(w unit.Length) int64 {
	um := int64(w / unit.Micrometre)
	return um * um
}
