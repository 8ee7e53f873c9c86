package mechanics

import (
	"math"

	"scantling/internal/figure"
	"scantling/internal/unit"
)

// SourceTipping is the source of what statics says of tipping.
var SourceTipping = figure.Source{Key: "mechanics.tipping", Title: "statics", Status: figure.Computed}

// Load is a mass and where its centre of gravity lies: so far behind the line of
// the front feet, or before it if negative, and so high above the floor.
type Load struct {
	Mass   Mass
	Behind unit.Length
	High   unit.Length
}

// Standing is what keeps a piece on its feet.
type Standing struct {
	// Mass is all that stands, Behind and High are where its centre lies.
	Mass         Mass
	Behind, High unit.Length
	// Holds is the moment about the front feet that keeps it standing; at nought
	// or below it falls by itself.
	Holds Moment
}

// Stand adds up loads about the line of the front feet.
func Stand(loads []Load) Standing {
	var out Standing
	var holds, high float64
	for _, l := range loads {
		out.Mass += l.Mass
		holds += float64(float64(l.Mass.Weight()) * l.Behind.Millimetres())
		high += float64(float64(l.Mass) * l.High.Millimetres())
	}
	out.Holds = Moment(holds)
	if out.Mass > 0 {
		out.Behind, out.High = length(holds/float64(out.Mass.Weight())), length(high/float64(out.Mass))
	}
	return out
}

// Pull returns the level pull, so high above the floor, at which the piece begins
// to tip: F = m g x/h (statics). Infinite at the floor.
func (s Standing) Pull(high unit.Length) Force {
	if high <= 0 {
		return Force(math.Inf(1))
	}
	return Force(max(0, float64(s.Holds)) / high.Millimetres())
}

// Press returns the load that tips the piece when it presses down so far before
// the front feet, as a child on a drawer does. Infinite behind them.
func (s Standing) Press(before unit.Length) Force {
	if before <= 0 {
		return Force(math.Inf(1))
	}
	return Force(max(0, float64(s.Holds)) / before.Millimetres())
}

// Lean returns the angle by which the piece may be tilted forward before it goes
// on by itself.
func (s Standing) Lean() Degrees {
	if s.High <= 0 {
		return 90
	}
	return Degrees(math.Atan2(s.Behind.Millimetres(), s.High.Millimetres()) * 180 / math.Pi)
}

// Child is the load that the American standard for clothing storage units lets
// press on an open drawer: 60 lb.
var Child = figure.Exactly(Mass(27.2), figure.Source{Key: "mechanics.child", Title: "ASTM F2057", Edition: "2023", Status: figure.Read})

// NeedToBear returns the moment of mass that a piece needs
// about its front feet to stand while a mass presses so far before them: m x >= M a.
func NeedToBear(press Mass, before unit.Length) MassMoment {
	return MassMoment(float64(press) * before.Millimetres() / 1000)
}

// Carpet returns how far a centre of gravity so high moves forward when the back of
// a piece so deep stands on a strip of the height given, as on a carpet's gripper:
// high times the tangent, height over depth.
func Carpet(height, depth, high unit.Length) unit.Length {
	if depth <= 0 {
		return 0
	}
	return length(high.Millimetres() * height.Millimetres() / depth.Millimetres())
}

// CarpetStrip is the block under the back feet in the test on a soft floor: 0.43 in.
var CarpetStrip = figure.Exactly(unit.Inch*43/100, figure.Source{Key: "mechanics.carpet", Title: "ASTM F2057", Edition: "2023", Status: figure.Memory})
