package tool

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Sources of the depth of a pass: makers' rules that disagree (1.6 mm in
// hardwood, 3.2 mm whatever the cutter, 6.35 mm at most), and the rule that no
// pass is deeper than half the cutter.
var (
	SourcePass = figure.PracticeSource("tool.depth-per-pass")
	SourceHalf = figure.PracticeSource("tool.depth-half-diameter")
)

// DepthPerPass returns the most that a router cutter takes in one pass: what the
// maker states for the cutter, otherwise the house rule where it is known,
// otherwise 3 mm (makers say 1.6 to 6.35); by rule never more than half the
// diameter, rounded down to 0.1 mm. Common practice, no source.
func DepthPerPass(c Cutter, house figure.Of[unit.Length]) figure.Of[unit.Length] {
	if c.PassDepth > 0 {
		return figure.Exactly(c.PassDepth, figure.Source{Key: SourcePass.Key, Status: figure.Stated})
	}
	rule := house
	if !rule.Known() || rule.Value <= 0 {
		rule = figure.Between(unit.MM(3), 1600*unit.Micrometre, 6350*unit.Micrometre, SourcePass)
	}
	half := (c.Diameter / 2).Round(unit.Millimetre/10, unit.Down)
	if c.Diameter > 0 && half < rule.Value {
		half = max(half, unit.Millimetre/10)
		return figure.Between(half, min(rule.Low, half), half, SourceHalf)
	}
	return rule
}

// maxPasses bounds a series of passes: more is a slip of the pen.
const maxPasses = 200

// Passes returns the depths to set one after another to reach a depth: full
// passes and what is left, 8 at 3 each as 3, 6, 8.
//
// Errors: "tool.too-many-passes" above 200 or where a pass takes nothing.
func Passes(depth, perPass unit.Length) ([]unit.Length, error) {
	if depth <= 0 {
		return nil, nil
	}
	if perPass <= 0 || depth > maxPasses*perPass {
		return nil, figure.Refuse("tool.too-many-passes", message.Length("depth", depth), message.Length("pass", perPass), message.Count("most", maxPasses)).
			Or("tool.deeper-pass")
	}
	var at []unit.Length
	for d := perPass; d < depth; d += perPass {
		at = append(at, d)
	}
	return append(at, depth), nil
}
