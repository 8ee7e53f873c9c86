package joinery

import (
	"math/big"

	"scantling/internal/piece"
	"scantling/internal/unit"
)

// box is a body or a region by right, back and up, in the piece.
type box [3]piece.Extent

var axes = [3]piece.Axis{piece.Right, piece.Back, piece.Up}

func (b box) size(a piece.Axis) unit.Length { return b[a].Size() }

// end returns the figure at the low or the high limit along an axis.
func (b box) end(a piece.Axis, high bool) piece.Figure {
	if high {
		return b[a].High
	}
	return b[a].Low
}

// with returns the box with one limit moved.
func (b box) with(a piece.Axis, high bool, f piece.Figure) box {
	if high {
		b[a].High = f
	} else {
		b[a].Low = f
	}
	return b
}

// solid reports whether the box has a volume.
func (b box) solid() bool {
	return b.size(0) > 0 && b.size(1) > 0 && b.size(2) > 0
}

// meet returns what two boxes have in common; where limits are equal the first
// box's figures stand.
func meet(a, b box) box {
	for i := range a {
		if b[i].Low.Nm > a[i].Low.Nm {
			a[i].Low = b[i].Low
		}
		if b[i].High.Nm < a[i].High.Nm {
			a[i].High = b[i].High
		}
	}
	return a
}

// overlaps reports whether two boxes share a volume.
func overlaps(a, b box) bool {
	for i := range a {
		if a[i].Low.Nm >= b[i].High.Nm || b[i].Low.Nm >= a[i].High.Nm {
			return false
		}
	}
	return true
}

// touches reports whether two boxes overlap or lie against each other.
func touches(a, b box) bool {
	for i := range a {
		if a[i].Low.Nm > b[i].High.Nm || b[i].Low.Nm > a[i].High.Nm {
			return false
		}
	}
	return true
}

// less returns what is left of b when c is taken away, as boxes that do not
// overlap; it is split along the axis first before the others.
func less(b, c box, first piece.Axis) []box {
	if !overlaps(b, c) {
		return []box{b}
	}
	var out []box
	for _, a := range [3]piece.Axis{first, (first + 1) % 3, (first + 2) % 3} {
		if c[a].Low.Nm > b[a].Low.Nm {
			out = append(out, b.with(a, true, c[a].Low))
			b[a].Low = c[a].Low
		}
		if c[a].High.Nm < b[a].High.Nm {
			out = append(out, b.with(a, false, c[a].High))
			b[a].High = c[a].High
		}
	}
	return out
}

// lessAll takes c away from every box of a list. Where the steps run out the list
// stands as it is, as if c were not there.
func (s *steps) lessAll(list []box, c box) []box {
	if !s.take(len(list)) {
		return list
	}
	var out []box
	for _, b := range list {
		out = append(out, less(b, c, 0)...)
	}
	return out
}

// volume returns the box's content in cubic nanometres.
func (b box) volume() *big.Int {
	v := big.NewInt(int64(b.size(0)))
	v.Mul(v, big.NewInt(int64(b.size(1))))
	return v.Mul(v, big.NewInt(int64(b.size(2))))
}

// side returns the area of a side that is normal to an axis, in square
// nanometres.
func (b box) side(a piece.Axis) *big.Int {
	v := big.NewInt(int64(b.size((a + 1) % 3)))
	return v.Mul(v, big.NewInt(int64(b.size((a+2)%3))))
}

func volumeOf(n *big.Int) unit.Value { return unit.Of(unit.DimVolume, new(big.Rat).SetInt(n)) }

func areaOf(n *big.Int) unit.Value { return unit.Of(unit.DimArea, new(big.Rat).SetInt(n)) }
