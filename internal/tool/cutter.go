package tool

import (
	"cmp"
	"slices"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Shape is the shape that a cutter leaves.
type Shape string

// The shapes of cutters.
const (
	Straight  Shape = "straight"
	RoundNose Shape = "round-nose" // half a circle at the bottom, also called core-box
	RebateBit Shape = "rebate"     // with a bearing
	RoundOver Shape = "round-over"
	Cove      Shape = "cove"
	Chamfer   Shape = "chamfer"
	VGroove   Shape = "v-groove"
	Moulding  Shape = "moulding"
	Drill     Shape = "drill"
	SawBlade  Shape = "saw blade"
)

// Shapes returns all shapes in the order above.
func Shapes() []Shape {
	return []Shape{Straight, RoundNose, RebateBit, RoundOver, Cove, Chamfer, VGroove, Moulding, Drill, SawBlade}
}

// Cutter is one cutter of a shop.
type Cutter struct {
	Name  string
	Shape Shape
	// Diameter is the circle that the edges turn in.
	Diameter unit.Length
	// CuttingLength is how deep the edges reach; zero is not known. For a saw
	// blade it is the height of cut.
	CuttingLength unit.Length
	Shank         unit.Length
	// Radius is that of a round-over or cove; a round-nose has half its diameter.
	Radius unit.Length
	// Kerf is the width that a saw blade cuts.
	Kerf unit.Length
	// Greatest is the speed marked on the cutter; zero is none.
	Greatest Speed
	// PassDepth is what the maker takes with this cutter in one pass; zero is by rule.
	PassDepth unit.Length
	Teeth     int
}

// Bounds of a cutter that a document may state.
const (
	leastDiameter    = unit.Millimetre / 2
	greatestDiameter = 400 * unit.Millimetre
)

// Check reports a cutter that cannot be. Keys: "tool.unknown-shape",
// "figure.length-range".
func (c Cutter) Check() error {
	if !slices.Contains(Shapes(), c.Shape) {
		return figure.Refuse("tool.unknown-shape", message.Text("shape", string(c.Shape)))
	}
	if err := figure.LengthRange("tool.cutter", "quantity.diameter", c.Diameter, leastDiameter, greatestDiameter); err != nil {
		return err
	}
	if err := figure.LengthRange("tool.cutter", "quantity.cutting-length", c.CuttingLength, 0, greatestDiameter); err != nil {
		return err
	}
	return figure.LengthRange("tool.cutter", "quantity.shank", c.Shank, 0, 40*unit.Millimetre)
}

// NoseRadius returns the radius of a round-nose cutter, half its diameter (an
// odd nanometre falls away); zero for other shapes.
func (c Cutter) NoseRadius() unit.Length {
	if c.Shape != RoundNose {
		return 0
	}
	return c.Diameter / 2
}

// Reaches reports whether the edges are long enough for a depth; a cutter of
// unknown cutting length reaches any.
func (c Cutter) Reaches(depth unit.Length) bool {
	return c.CuttingLength == 0 || depth <= c.CuttingLength
}

// Across is how a flat-bottomed groove is cut to its width.
type Across struct {
	Cutter Cutter
	// Shift is how far the fence moves in all: width less diameter.
	Shift unit.Length
	// Passes is how many paths lie side by side, each overlapping the last.
	Passes int
}

// ForWidth returns the straight cutter for a groove or housing of a width and
// depth: the one of just that diameter, otherwise the largest below it that
// reaches, with the shift that brings it to the width.
//
// A slot is then cut by paths that overlap by at least a tenth of the diameter.
// Common practice, no source. Errors: "tool.no-straight-cutter" with the width
// and the least diameter in the shop.
func ForWidth(cutters []Cutter, width, depth unit.Length) (Across, error) {
	var best *Cutter
	least := unit.Length(0)
	for i, c := range cutters {
		if c.Shape != Straight || !c.Reaches(depth) || c.Diameter <= 0 {
			continue
		}
		if least == 0 || c.Diameter < least {
			least = c.Diameter
		}
		if c.Diameter > width {
			continue
		}
		if best == nil || cmp.Or(cmp.Compare(c.Diameter, best.Diameter), cmp.Compare(best.Name, c.Name)) > 0 {
			best = &cutters[i]
		}
	}
	if best == nil {
		return Across{}, figure.Refuse("tool.no-straight-cutter", message.Length("width", width), message.Length("depth", depth), message.Length("least", least)).
			Or("tool.buy-cutter").Or("tool.widen-groove")
	}
	shift := width - best.Diameter
	step := best.Diameter - best.Diameter/10
	return Across{*best, shift, 1 + int((shift+step-1)/step)}, nil
}
