package share

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Passes reports whether a thing of three sizes goes through an opening of two,
// turned as it likes but square to it: its two least sizes against the opening's
// two. Where it does not, over is by how much the size that is missed most is too
// large. Errors: "figure.length-range" for sizes of nought or beyond 10 m.
func Passes(thing [3]unit.Length, opening [2]unit.Length) (over unit.Length, err error) {
	for _, l := range [5]unit.Length{thing[0], thing[1], thing[2], opening[0], opening[1]} {
		if err := figure.LengthRange("share.passes", "quantity.size", l, 1, maxRadius); err != nil {
			return 0, err
		}
	}
	a, b, c := thing[0], thing[1], thing[2]
	least := min(a, b, c)
	middle := max(min(a, b), min(max(a, b), c))
	return max(0, least-min(opening[0], opening[1]), middle-max(opening[0], opening[1])), nil
}

// HowMany returns how many things of a size stand in a length, with something
// between every two of them. Errors: "figure.length-range" for a size of nought.
func HowMany(size, between, in unit.Length) (int, error) {
	if err := figure.LengthRange("share.how-many", "quantity.thing", size, 1, maxRadius); err != nil {
		return 0, err
	}
	if err := figure.LengthRange("share.how-many", "quantity.play", between, 0, maxRadius); err != nil {
		return 0, err
	}
	if in < size {
		return 0, nil
	}
	return int(min((in+between)/(size+between), MaxCount)), nil
}

// MaxCount bounds how many equal things are counted.
const MaxCount = 1_000_000

// SpreadOver enlarges sizes that must be had so that they and what parts them fill a
// width: all of them by the same, to the nanometre. It is [Row.Close] with
// [ToOpenings] for things without margins and lands.
//
// Errors: "share.row-too-wide" where they need more; "share.too-many-things".
func SpreadOver(needs []unit.Length, width unit.Length) ([]unit.Length, error) {
	things := make([]Thing, len(needs))
	for i, n := range needs {
		things[i].Mouth = n
	}
	row, err := Least(things, Rule{})
	if err != nil {
		return nil, err
	}
	if len(needs) == 0 {
		return nil, figure.Refuse("share.nothing-to-spread", message.Length("has", width))
	}
	if row, err = row.Close(width, ToOpenings); err != nil {
		return nil, err
	}
	out := make([]unit.Length, len(needs))
	for i, s := range row.Slots {
		out[i] = s.Mouth
	}
	return out, nil
}
