package problem_test

import (
	"slices"
	"testing"

	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// A sheet of 1000 × 600 sawn by hand, kerf 3: a scrap of 7 off its end leaves 990, a rip of
// 200 is cut to two lengths of 300, the rest ripped to 200 again and left.
func TestSettings(t *testing.T) {
	const mm = unit.Millimetre
	piece := func(kind problem.Kind, length, width unit.Length) *problem.Node {
		return &problem.Node{Box: problem.Box{Size: problem.Size{Length: length * mm, Width: width * mm}}, Kind: kind}
	}
	sawn := func(d problem.Direction, at, length, width unit.Length, near, far *problem.Node) *problem.Node {
		n := piece(problem.Sawn, length, width)
		n.Direction, n.At, n.Near, n.Far = d, at*mm, near, far
		return n
	}
	strip := sawn(problem.Crosscut, 300, 990, 200, piece(problem.Finished, 300, 200),
		sawn(problem.Crosscut, 300, 687, 200, piece(problem.Finished, 300, 200), piece(problem.Remnant, 384, 200)))
	rest := sawn(problem.Rip, 200, 990, 397, piece(problem.Finished, 990, 200), piece(problem.Waste, 990, 194))
	root := sawn(problem.Crosscut, 7, 1000, 600, piece(problem.Waste, 7, 600), sawn(problem.Rip, 200, 990, 600, strip, rest))
	rips, stops := problem.Answer{Diagrams: []problem.Diagram{{Root: root, Copies: 2}}}.Settings()
	if !slices.Equal(rips, []unit.Length{200 * mm}) || !slices.Equal(stops, []unit.Length{300 * mm, 990 * mm}) {
		t.Errorf("rips %v, stops %v; by hand 200, and 300 and 990", rips, stops)
	}
	nothing := sawn(problem.Crosscut, -1, 2, 600, nil, nil)
	if rips, stops := (problem.Answer{Diagrams: []problem.Diagram{{Root: nothing, Copies: 1}}}).Settings(); len(rips)+len(stops) != 0 {
		t.Errorf("a cut that leaves nothing is set to %v %v", rips, stops)
	}
}
