package proportion

import (
	"math/big"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// MitreAlong returns length × of / √(of² + by²), to the nanometre: how far one goes
// along the side of a rectangle when going so far along its diagonal. Pythagoras.
// Nought where both sides are.
func MitreAlong(length, of, by unit.Length) unit.Length {
	return slant(length, of, of, by)
}

// MitreLength returns √(of² + by²), to the nanometre: how long the diagonal of a
// rectangle is. Pythagoras.
func MitreLength(of, by unit.Length) unit.Length {
	r := root(new(big.Int).Add(times(of, of), times(by, by)))
	return nearest(r, new(big.Int).Mul(digits, digits))
}

// MitreLeg returns length × √(of² + by²) / of, to the nanometre: how long the leg
// along that side is, of the triangle whose height on the other diagonal is length.
// Nought where a side is.
func MitreLeg(length, of, by unit.Length) unit.Length {
	if of <= 0 {
		return 0
	}
	// length √(of² + by²) / of = length (of² + by²) / (of √(of² + by²))
	sum := new(big.Int).Add(times(of, of), times(by, by))
	num := new(big.Int).Mul(big.NewInt(int64(length)), sum)
	return nearest(num, new(big.Int).Mul(big.NewInt(int64(of)), root(sum)))
}

// digits is by how much roots are taken finer than whole numbers.
var digits = new(big.Int).Exp(big.NewInt(10), big.NewInt(20), nil)

func slant(length, times1, of, by unit.Length) unit.Length {
	sum := new(big.Int).Add(times(of, of), times(by, by))
	return nearest(times(length, times1), root(sum))
}

func times(a, b unit.Length) *big.Int {
	return new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(int64(b)))
}

// root returns √n, digits times as large.
func root(n *big.Int) *big.Int {
	n = new(big.Int).Mul(n, digits)
	return n.Mul(n, digits).Sqrt(n)
}

// nearest returns num × digits / den to the nearest whole number.
func nearest(num, den *big.Int) unit.Length {
	if den.Sign() == 0 {
		return 0
	}
	num = new(big.Int).Mul(num, digits)
	num.Mul(num, big.NewInt(2)).Add(num, den)
	num.Div(num, new(big.Int).Mul(den, big.NewInt(2)))
	if !num.IsInt64() {
		return 0
	}
	return unit.Length(num.Int64())
}

// Spline is a loose strip in a mitre.
type Spline struct {
	// Thickness of the strip, Depth how far it goes into each part, Heel how far its
	// groove lies from the inner corner along the mitre.
	Thickness, Depth, Heel figure.Of[unit.Length]
}

// MitreSpline returns the spline for parts of a thickness, of which the mitre's
// face is so long: a third of the thickness thick, half of it deep, and in a case's
// corner a sixth of the mitre from the inner corner, where there is most wood.
// Common practice, no source. Keys: "proportion.spline-thickness",
// "proportion.spline-depth", "proportion.spline-heel". Errors:
// "figure.length-range" outside 1 mm to 5 m.
func MitreSpline(thickness, mitre, step unit.Length) (Spline, error) {
	if err := sized("spline-thickness", "thickness", thickness); err != nil {
		return Spline{}, err
	}
	if err := sized("spline-heel", "width", mitre); err != nil {
		return Spline{}, err
	}
	third, half := part(thickness, 1, 3, step), part(thickness, 1, 2, step)
	heel := part(mitre, 1, 6, step)
	return Spline{
		ruled("spline-thickness", third, part(thickness, 1, 4, step), third),
		ruled("spline-depth", half, part(thickness, 1, 3, step), part(thickness, 2, 3, step)),
		ruled("spline-heel", heel, step, part(mitre, 1, 3, step)),
	}, nil
}

// Keys are slips across a mitre's corner.
type Keys struct {
	// Thickness of a key, and Depth how far it goes in, square to the corner's edge.
	Thickness, Depth figure.Of[unit.Length]
	// Count is how many stand along the corner.
	Count int
}

// MitreKeys returns the keys for a corner of a height between parts of a thickness
// whose mitre's face is so long: a quarter of the thickness thick, two thirds of the
// mitre deep; along a case's corner one for every 50, at least two; in a frame, which
// is no higher than three of its keys, one in the middle. Common practice, no source.
// Keys: "proportion.key-thickness", "proportion.key-depth". Errors:
// "figure.length-range" outside 1 mm to 5 m.
func MitreKeys(height, thickness, mitre, step unit.Length) (Keys, error) {
	for _, c := range [...]struct {
		what string
		size unit.Length
	}{{"thickness", thickness}, {"width", mitre}, {"height", height}} {
		if err := sized("key-thickness", c.what, c.size); err != nil {
			return Keys{}, err
		}
	}
	thin := min(part(thickness, 1, 4, step), part(height, 1, 3, step))
	deep := part(mitre, 2, 3, step)
	k := Keys{
		Thickness: ruled("key-thickness", thin, unit.Millimetre, part(thickness, 1, 3, step)),
		Depth:     ruled("key-depth", deep, part(mitre, 1, 2, step), part(mitre, 4, 5, step)),
		Count:     1,
	}
	if height > 3*thickness {
		k.Count = int(max(2, (height+25*unit.Millimetre)/(50*unit.Millimetre)))
	}
	if k.Count > maxFingers {
		return Keys{}, figure.Refuse("proportion.keys", message.Count("count", k.Count), message.Count("most", maxFingers))
	}
	return k, nil
}
