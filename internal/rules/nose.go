package rules

import (
	"scantling/internal/share"
	"scantling/internal/unit"
)

// noseReach gives how far the mouth of a round nose reaches from its middle: half
// the mouth that a radius leaves at a depth.
func noseReach(a []unit.Value) (unit.Value, error) {
	l, err := lengths(a)
	if err != nil || len(l) != 2 {
		return unit.Value{}, errArguments
	}
	g := share.Groove{Radius: l[0], Depth: l[1]}
	if err := g.Check(); err != nil {
		return unit.Value{}, err
	}
	return unit.OfLength(g.Mouth() / 2), nil
}
