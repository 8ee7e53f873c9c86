package share

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Spread says what takes the width that a row does not need.
type Spread string

// The ways to spread spare width.
const (
	ToLands    Spread = "lands"    // between the mouths; a row of one widens its margins
	ToMargins  Spread = "margins"  // beyond the outer mouths, both alike
	ToAll      Spread = "all"      // lands and margins alike
	ToOpenings Spread = "openings" // the mouths themselves: cells and bays
	ToEnd      Spread = "end"      // the far margin
)

// Close returns the row widened to the width: the spare is shared among the terms
// that Spread names, the remainder of the division one nanometre at a time along
// them, so that the terms add up to the width exactly.
//
// Errors: "share.row-too-wide" where the row needs more, with what it needs, what
// there is and the difference.
func (r Row) Close(width unit.Length, to Spread) (Row, error) {
	spare := width - r.Width
	if spare < 0 {
		return r, figure.Refuse("share.row-too-wide", message.Length("needs", r.Width), message.Length("has", width), message.Length("over", -spare)).
			Or("share.widen").Or("share.head-to-tail").Or("share.fewer-things").Or("share.less-land")
	}
	n := len(r.Slots)
	add := make([]unit.Length, 2*n+1) // to each term
	var takers []int
	for i := range add {
		margin, mouth := i == 0 || i == 2*n, i%2 == 1
		switch to {
		case ToLands:
			if !mouth && (!margin || n < 2) {
				takers = append(takers, i)
			}
		case ToMargins:
			if margin {
				takers = append(takers, i)
			}
		case ToAll:
			if !mouth {
				takers = append(takers, i)
			}
		case ToOpenings:
			if mouth || n == 0 {
				takers = append(takers, i)
			}
		}
	}
	if len(takers) == 0 {
		takers = []int{2 * n}
	}
	for i, part := range spare.Share(len(takers)) {
		add[takers[i]] += part
	}
	out := Row{Width: width, Slots: make([]Slot, n)}
	moved := unit.Length(0)
	for i, s := range r.Slots {
		moved += add[2*i]
		out.Slots[i] = Slot{s.Key, s.Left + moved, s.Mouth + add[2*i+1]}
		moved += add[2*i+1]
	}
	return out, nil
}

// Filled is a row with the spare places that its width allowed.
type Filled struct {
	Row Row
	// Things are the things of the row with the spare ones, in order.
	Things []Thing
	// Spare is how many were added.
	Spare int
}

// FillUp returns the row closed to the width after adding as many spare things
// (say, channels for things bought later) at its end as there is room for, each
// named by name(1), name(2) and so on.
//
// Errors: those of [Least] and [Row.Close].
func FillUp(things []Thing, r Rule, width unit.Length, spare Thing, name func(nth int) string, to Spread) (Filled, error) {
	row, err := Least(things, r)
	if err != nil {
		return Filled{}, err
	}
	if spare.Mouth <= 0 {
		return filled(row, things, 0, width, to)
	}
	// The width grows with the number of spare things: find the most by halving.
	with := func(n int) ([]Thing, Row, error) {
		all := append(make([]Thing, 0, len(things)+n), things...)
		for i := range n {
			s := spare
			s.Key = name(i + 1)
			all = append(all, s)
		}
		row, err := Least(all, r)
		return all, row, err
	}
	low, high := 0, max(0, min(MaxThings-len(things), int((width-row.Width)/spare.Mouth)))
	for low < high {
		middle := (low + high + 1) / 2
		if _, wide, err := with(middle); err == nil && wide.Width <= width {
			low = middle
		} else {
			high = middle - 1
		}
	}
	all, row, err := with(low)
	if err != nil {
		return Filled{}, err
	}
	return filled(row, all, low, width, to)
}

func filled(row Row, things []Thing, spare int, width unit.Length, to Spread) (Filled, error) {
	row, err := row.Close(width, to)
	return Filled{row, things, spare}, err
}
