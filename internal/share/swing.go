package share

import "scantling/internal/unit"

// Swing is what passes over the contents as a hinged lid opens: the lowest inner
// edge of the wall opposite the hinges, on a circle about the hinge line. Frame:
// reaches count from the hinge line, heights from the level of the hinge line,
// which is the rim that the shut lid lies on.
type Swing struct {
	// Arm is from the hinge line to that edge.
	Arm unit.Length
}

// At returns how far from the hinge line the edge passes at a height above the
// rim, sqrt(arm^2 - height^2), rounded down to the nanometre; nought above the arm.
// Geometry of the circle.
func (s Swing) At(height unit.Length) unit.Length {
	if height < 0 {
		height = 0
	}
	if height >= s.Arm {
		return 0
	}
	return floorRoot(times(s.Arm, s.Arm).less(times(height, height)))
}

// Under returns how high above the rim something may stand that reaches so far
// from the hinge line, sqrt(arm^2 - reach^2), rounded down; nought beyond the arm.
func (s Swing) Under(reach unit.Length) unit.Length { return s.At(reach) }

// floorRoot is the root rounded down, where root rounds to the nearest.
func floorRoot(p product) unit.Length {
	x := p.root()
	if times(x, x).over(p) {
		x--
	}
	return x
}

// Clears reports by how much a thing's edge at a reach and height clears the
// swing; below nought it is struck.
func (s Swing) Clears(reach, height unit.Length) unit.Length { return s.At(height) - reach }
