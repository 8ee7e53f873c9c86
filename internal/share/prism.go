package share

import (
	"math"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Prism is a rod with flats, as an octagonal handle: so many equal sides, two
// and two opposite.
type Prism struct {
	Sides int
	// Corners is the size across two opposite corners.
	Corners unit.Length
}

// MaxSides bounds the sides of a [Prism].
const MaxSides = 16

// Check reports a prism that is not worked out: sides that are odd, below 4 or
// above [MaxSides] (key "share.prism-sides"), or a size that is out of range.
func (p Prism) Check() error {
	if p.Sides < 4 || p.Sides > MaxSides || p.Sides%2 != 0 {
		return figure.Refuse("share.prism-sides", message.Count("got", p.Sides), message.Count("most", MaxSides))
	}
	return figure.LengthRange("share.prism", "quantity.rod", p.Corners, 2, maxRadius)
}

// half is half the angle that a side is seen under from the axis.
func (p Prism) half() float64 { return math.Pi / float64(p.Sides) }

// Flats returns the size across two opposite flats, corners * cos(pi/sides), to
// the nearest nanometre.
func (p Prism) Flats() unit.Length {
	return unit.FromMillimetres(float64(p.Corners.Millimetres() * math.Cos(p.half())))
}

// PrismOfFlats returns the prism of a size across flats: corners are
// flats / cos(pi/sides), to the nearest nanometre. Errors: those of [Prism.Check].
func PrismOfFlats(sides int, flats unit.Length) (Prism, error) {
	p := Prism{sides, flats}
	if err := p.Check(); err != nil {
		return Prism{}, err
	}
	p.Corners = unit.FromMillimetres(flats.Millimetres() / math.Cos(p.half()))
	return p, p.Check()
}

// Turn says which way up a prism lies.
type Turn int

// The ways up.
const (
	CornerDown Turn = iota
	FlatDown
)

// Height returns how high the prism is as it lies: across corners with a corner
// down, across flats on a flat.
func (p Prism) Height(t Turn) unit.Length {
	if t == FlatDown {
		return p.Flats()
	}
	return p.Corners
}

// corner is one corner: how far beside the axis, how high above the lowest line.
type corner struct{ beside, above float64 }

// corners returns the corners of one side of the section in millimetres, from
// the bottom up.
func (p Prism) corners(t Turn) []corner {
	r, step := p.Corners.Millimetres()/2, 2*p.half()
	start, low := 0.0, r
	if t == FlatDown {
		start, low = p.half(), r*math.Cos(p.half())
	}
	var out []corner
	for k := range p.Sides {
		angle := start + float64(float64(k)*step)
		if angle > math.Pi+1e-9 {
			break
		}
		out = append(out, corner{float64(r * math.Sin(angle)), low - float64(r*math.Cos(angle))})
	}
	return out
}

// SeatPrism returns how a prism lies in the groove. Going straight down it stops
// where one of its corners meets the round, or where a side of it meets the two
// edges of the mouth; Rides tells the second. Geometry of the circle and the
// straight line, in millimetres as float64; to the nearest nanometre.
//
// Errors: those of [Groove.Check] and [Prism.Check].
func (g Groove) SeatPrism(p Prism, t Turn) (Seat, error) {
	if err := g.Check(); err != nil {
		return Seat{}, err
	}
	if err := p.Check(); err != nil {
		return Seat{}, err
	}
	radius, depth, mouth := g.Radius.Millimetres(), g.Depth.Millimetres(), float64(g.Mouth().Millimetres()/2)
	all := p.corners(t)
	sit, rides := depth, false
	if all[0].beside > mouth { // the flat lies across the mouth
		sit, rides = 0, true
	}
	for _, c := range all {
		if c.beside > mouth {
			continue // stays outside: the edge of the mouth meets a side below it
		}
		round := radius - math.Sqrt(max(0, float64(radius*radius)-float64(c.beside*c.beside)))
		sit = min(sit, depth+c.above-round)
	}
	for i := 1; i < len(all); i++ {
		low, high := all[i-1], all[i]
		if high.beside <= mouth || low.beside > mouth {
			continue
		}
		at := low.above + float64((high.above-low.above)*((mouth-low.beside)/(high.beside-low.beside)))
		if at < sit {
			sit, rides = at, true
		}
		break
	}
	s := unit.FromMillimetres(sit)
	return Seat{s, p.Height(t) - s, rides}, nil
}

// roundPlay is how much wider than what it takes the round of a channel is.
const roundPlay = 400 * unit.Micrometre

// LeastRound returns the least diameter of a round-nose cutter whose channel takes
// a rod of the diameter (a prism's across corners) inside a lining, on its bottom
// and not on its edges: the rod, the lining on both sides and 0.4 mm of play, as a
// 25.4 cutter (1 in) serves rods of 25. Common practice, no source. Errors:
// "figure.length-range".
func LeastRound(rod, lining unit.Length) (figure.Of[unit.Length], error) {
	source := figure.PracticeSource("share.least-round")
	if err := figure.LengthRange(source.Key, "quantity.rod", rod, 1, maxRadius); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	if err := figure.LengthRange(source.Key, "quantity.lining", lining, 0, maxRadius); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	least := rod + 2*lining
	return figure.Between(least+roundPlay, least, least+unit.Millimetre, source), nil
}
