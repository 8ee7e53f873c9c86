package share

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Groove is a round-bottomed groove: cut by a nose of the radius to the depth.
// Deeper than its radius it has straight walls above the round.
type Groove struct{ Radius, Depth unit.Length }

// maxRadius bounds the sizes that the geometry takes.
const maxRadius = 10 * unit.Metre

// Check reports a groove that cannot be cut. Key: "figure.length-range".
func (g Groove) Check() error {
	if err := figure.LengthRange("share.groove", "quantity.radius", g.Radius, 1, maxRadius); err != nil {
		return err
	}
	return figure.LengthRange("share.groove", "quantity.depth", g.Depth, 1, maxRadius)
}

// round returns the depth of the round part that reaches the surface.
func (g Groove) round() unit.Length { return min(g.Depth, g.Radius) }

// Mouth returns the width at the surface, 2*sqrt(2Rh - h*h), and 2R where the
// groove is deeper than its radius. Half of it is rounded to the nearest
// nanometre, so that the mouth is even. Geometry of the circle.
func (g Groove) Mouth() unit.Length {
	h := g.round()
	return 2 * times(h, 2*g.Radius-h).root()
}

// Lined returns the groove that is left inside a lining of even thickness.
// Errors: "share.lining-fills-groove".
func (g Groove) Lined(lining unit.Length) (Groove, error) {
	if lining < 0 || lining >= g.round() {
		return Groove{}, figure.Refuse("share.lining-fills-groove", message.Length("lining", lining), message.Length("depth", g.round())).
			Or("share.thinner-lining").Or("share.bigger-cutter")
	}
	return Groove{g.Radius - lining, g.Depth - lining}, nil
}

// Seat is how a rod lies in a groove.
type Seat struct {
	// Sit is how deep the rod's lowest line lies below the surface.
	Sit unit.Length
	// Proud is how much of the rod stands above the surface; negative below it.
	Proud unit.Length
	// Rides is true where the rod is thicker than the groove is round and lies on
	// the two edges of the mouth, not on the bottom.
	Rides bool
}

// Seat returns how a rod of the diameter lies in the groove: on the bottom where
// its radius r is at most the groove's R, otherwise on the edges, at
// r - sqrt(r*r - (mouth/2)^2). Geometry of the circle; to the nearest nanometre.
// Errors: those of [Groove.Check] and "figure.length-range" for the rod.
func (g Groove) Seat(rod unit.Length) (Seat, error) {
	if err := g.Check(); err != nil {
		return Seat{}, err
	}
	if err := figure.LengthRange("share.groove", "quantity.rod", rod, 1, maxRadius); err != nil {
		return Seat{}, err
	}
	if rod <= 2*g.Radius {
		return Seat{g.Depth, rod - g.Depth, false}, nil
	}
	h := g.round()
	// In diameters, so that no half nanometre is lost: rod^2 - mouth^2, exact.
	level := times(rod, rod).less(times(4*h, 2*g.Radius-h)).root()
	sit := (rod - level) / 2
	return Seat{sit, rod - sit, true}, nil
}

// DepthForMouth returns the greatest depth at which a nose of the radius leaves
// at most the mouth, rounded down to the nanometre: R - sqrt(R*R - (m/2)^2), and
// the radius where the mouth allows all of it.
func DepthForMouth(radius, mouth unit.Length) unit.Length {
	if mouth <= 0 || radius <= 0 {
		return 0
	}
	if mouth >= 2*radius {
		return radius
	}
	d := 2 * radius
	depth := (d - times(d, d).less(times(mouth, mouth)).root()) / 2
	for depth > 0 && (Groove{radius, depth}).Mouth() > mouth {
		depth--
	}
	return depth
}

// TroughDepth returns how deep a trough across the channels must be for a head to
// hang free in it while its rod lies in its channel: the head's radius less the
// height of the axis over the surface, and the clearance under it. Rounded up to
// the nanometre; zero where the head stays above the surface.
func TroughDepth(head, rod, sit, clearance unit.Length) unit.Length {
	return max(0, (head-rod+1)/2+sit+clearance)
}
