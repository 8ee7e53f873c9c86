package proportion

import (
	"cmp"
	"slices"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Fingers is the division of a box joint's width: whole fingers from the
// reference edge, and one of another width at the far edge where they do not
// come out.
type Fingers struct {
	// Finger is the width of a finger and of the socket beside it: the cutter's.
	Finger figure.Of[unit.Length]
	// Whole is how many fingers and sockets of that width there are.
	Whole int
	// Last is the width of the odd one at the far edge, from half a finger to less
	// than one and a half; zero where all are whole.
	Last unit.Length
}

// Count returns fingers and sockets together.
func (f Fingers) Count() int {
	if f.Last > 0 {
		return f.Whole + 1
	}
	return f.Whole
}

// Symmetrical reports whether both edges of a part begin alike: an odd count of
// whole fingers, so that the part may be turned over.
func (f Fingers) Symmetrical() bool { return f.Last == 0 && f.Whole%2 == 1 }

// Edges returns the ends of the fingers and sockets from the reference edge: the
// last is the width of the part exactly.
func (f Fingers) Edges() []unit.Length {
	var out []unit.Length
	for i := range f.Whole {
		out = append(out, f.Finger.Value*unit.Length(i+1))
	}
	if f.Last > 0 {
		out = append(out, f.Finger.Value*unit.Length(f.Whole)+f.Last)
	}
	return out
}

// maxFingers bounds a joint: more is a slip of the pen, and the error of every
// finger adds up.
const maxFingers = 100

// BoxJoint returns the fingers that a cutter of the width gives in parts of the
// width: as many whole ones as fit, the remainder at one edge where it is at
// least half a finger, otherwise joined to the last. Common practice, no source.
// Key: "proportion.finger-width". Errors: "figure.length-range" for the width;
// "proportion.fingers" where fewer than three or more than 100 would stand.
func BoxJoint(width, cutter unit.Length) (Fingers, error) {
	if err := sized("finger-width", "width", width); err != nil {
		return Fingers{}, err
	}
	if err := figure.LengthRange("proportion.finger-width", "quantity.cutter", cutter, unit.Millimetre, maxSize); err != nil {
		return Fingers{}, err
	}
	f := Fingers{Finger: ruled("finger-width", cutter, cutter, cutter), Whole: int(width / cutter)}
	f.Last = width - cutter*unit.Length(f.Whole)
	if f.Last > 0 && 2*f.Last < cutter {
		f.Whole--
		f.Last += cutter
	}
	if f.Count() < 3 || f.Count() > maxFingers {
		return Fingers{}, figure.Refuse("proportion.fingers", message.Count("count", f.Count()), message.Length("width", width), message.Length("cutter", cutter)).
			Or("proportion.other-cutter").Or("proportion.other-joint")
	}
	return f, nil
}

// BestBoxJoint returns the box joint by the cutter of the shop that suits best:
// fingers from a half to the whole thickness of the parts before others, then
// whole fingers in an odd count, then any whole, then the width nearest to three
// quarters of the thickness. Common practice, no source. Errors: those of
// [BoxJoint]; "proportion.no-finger-cutter" where no cutter gives a joint.
func BestBoxJoint(width, thickness unit.Length, cutters []unit.Length) (Fingers, error) {
	if err := sized("finger-width", "thickness", thickness); err != nil {
		return Fingers{}, err
	}
	if err := sized("finger-width", "width", width); err != nil {
		return Fingers{}, err
	}
	var found []Fingers
	for _, c := range cutters {
		if f, err := BoxJoint(width, c); err == nil {
			found = append(found, f)
		}
	}
	if len(found) == 0 {
		return Fingers{}, figure.Refuse("proportion.no-finger-cutter", message.Length("width", width), message.Length("thickness", thickness)).
			Or("proportion.buy-cutter", message.Length("least", thickness/2), message.Length("greatest", thickness)).Or("proportion.other-joint")
	}
	return slices.MinFunc(found, func(a, b Fingers) int {
		rank := func(f Fingers) (out, odd int, off unit.Length) {
			w := f.Finger.Value
			if 2*w < thickness || w > thickness {
				out = 1
			}
			switch {
			case f.Symmetrical():
			case f.Last == 0:
				odd = 1
			default:
				odd = 2
			}
			return out, odd, (4*w - 3*thickness).Abs()
		}
		ao, ad, an := rank(a)
		bo, bd, bn := rank(b)
		return cmp.Or(cmp.Compare(ao, bo), cmp.Compare(ad, bd), cmp.Compare(an, bn), cmp.Compare(a.Finger.Value, b.Finger.Value))
	}), nil
}
