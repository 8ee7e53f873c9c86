package strength

import (
	"fmt"

	"scantling/internal/analysis/estimate"
	"scantling/internal/mechanics"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// oneWay is what of a load a part bears along its span: all of it, or where the part is
// held at all four edges and at nothing between, the share that two strips which cross in
// its middle leave to the one along the span (see [mechanics.StripShare]).
func (s sagger) oneWay(name string, load plan.Estimate, stiff estimate.Arg) plan.Estimate {
	if s.cross.Nm <= 0 || s.span.Nm != s.whole.Nm || !load.Known() {
		return load
	}
	other := s
	other.name += ".cross"
	other.local = piece.AlongLength
	if s.local == piece.AlongLength {
		other.local = piece.AlongWidth
	}
	across, _, _ := other.stiffness()
	return s.maker.Estimate(s.name+"."+name+".one way", "strip of a panel", "", mechanics.SourceStrips, plan.NoStiffness,
		estimate.Again(load), estimate.Of(s.span), estimate.Of(s.cross), stiff, across)
}

// stripOfPanel is a load, the span, how far the part bridges the other way, and its moduli
// along both, in GPa.
func stripOfPanel(a []unit.Value) (unit.Value, error) {
	if len(a) != 5 {
		return unit.Value{}, fmt.Errorf("a strip takes 5 values, not %d", len(a))
	}
	l, err := lengthsOf(a[1:], 2)
	if err != nil {
		return unit.Value{}, err
	}
	share := mechanics.StripShare(l[0], l[1], mechanics.Stress(a[3].Float()), mechanics.Stress(a[4].Float()))
	return estimate.Value(unit.DimForce, a[0].Float()*float64(share)), nil
}
