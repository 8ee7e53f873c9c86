package strength

import (
	"fmt"

	"scantling/internal/analysis/estimate"
	"scantling/internal/ledger"
	"scantling/internal/mechanics"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// ofStorey is how many values stand for a board in a stack.
const ofStorey = 6

// stacked works out a bridge that shares an upright with others above or below it.
func (e *estimator) stacked(b *bridge, s sagger) plan.ShelfSag {
	out := s.under("contents", e.carries(b, s))
	if !out.Load.Known() {
		return out
	}
	lowest := b
	for lowest.on != nil {
		lowest = lowest.on
	}
	place := 0
	var boards []estimate.Arg
	for x := lowest; x != nil; x = x.above {
		if x == b {
			place = len(boards)/ofStorey + 1
		}
		boards = append(boards, e.storey(x)...)
	}
	beside := s.span
	if b.on != nil {
		beside = e.Ledger.Less(s.name+".beside", b.beside[1], b.beside[0])
	}
	args := append([]estimate.Arg{s.maker.Given(s.name+".storey", unit.OfCount(place), ledger.Derived, ""), estimate.Of(beside)}, boards...)
	out.AtOnce = s.maker.Estimate(s.name+".contents.together", "sag with others", "", mechanics.SourceStack, plan.NoStiffness, args...)
	_, _, creep := s.stiffness()
	out.Lasting = s.maker.Estimate(s.name+".contents.together lasting", "sag after years", "", creepSource, plan.NoStiffness, estimate.Again(out.AtOnce), creep)
	if b.above != nil {
		out.Upright = s.maker.Estimate(s.name+".upright", "upright hands down", "", mechanics.SourceStack, plan.NoStiffness, args...)
	}
	return out
}

// carries is what a bridge carries, worked out once.
func (e *estimator) carries(b *bridge, s sagger) plan.Estimate {
	if b.load == nil {
		load := s.carries()
		b.load = &load
	}
	return *b.load
}

// storey is a bridge as a board of a stack. Where nothing says what lies on it, its own
// weight counts.
func (e *estimator) storey(b *bridge) []estimate.Arg {
	s := e.sagger(b)
	load := e.carries(b, s)
	if !load.Known() && load.Missing[0] == plan.NoLoad {
		load = e.maker.Estimate(s.name+".own", "weight of a mass", "", mechanics.SourceStack, plan.NoMass, estimate.Again(e.mass(b.part)))
	}
	stiff, rigid, _ := s.stiffness()
	return []estimate.Arg{estimate.Again(s.oneWay("stack", load, stiff)), estimate.Of(s.span), estimate.Of(s.wide), estimate.Of(b.part.Thickness), stiff, rigid}
}

// storeys reads the number of a board, the widest stretch of it that nothing props, and
// the boards of its stack.
func storeys(a []unit.Value) (nth int, beside unit.Length, all []mechanics.Storey, err error) {
	if len(a) < 2+ofStorey || (len(a)-2)%ofStorey != 0 {
		return 0, 0, nil, fmt.Errorf("a stack does not take %d values", len(a))
	}
	n, ok := a[0].Int()
	l, err := lengthsOf(a[1:], 1)
	if err != nil {
		return 0, 0, nil, err
	}
	for i := 2; i < len(a); i += ofStorey {
		b, load, err := beam(a[i : i+ofStorey])
		if err != nil {
			return 0, 0, nil, err
		}
		all = append(all, mechanics.Storey{Beam: b, Spread: load})
	}
	if !ok || n < 1 || n > int64(len(all)) {
		return 0, 0, nil, fmt.Errorf("board %v of %d", a[0], len(all))
	}
	return int(n) - 1, l[0], all, nil
}

// sagInStack is how far a board goes down in its stack, and no less than the stretch of it
// that nothing props bends by itself.
func sagInStack(a []unit.Value) (unit.Value, error) {
	nth, beside, all, err := storeys(a)
	if err != nil {
		return unit.Value{}, err
	}
	sags, _, err := mechanics.Stack(all)
	if err != nil {
		return unit.Value{}, err
	}
	b, load := all[nth].Beam, all[nth].Spread
	part := mechanics.Force(float64(load) * beside.Millimetres() / b.Span.Millimetres())
	b.Span = beside
	alone, err := b.Sag(part)
	return unit.OfLength(max(sags[nth], alone.Whole()).Round(unit.Micrometre, unit.Nearest)), err
}

// handedDown is what the upright on a board brings.
func handedDown(a []unit.Value) (unit.Value, error) {
	nth, _, all, err := storeys(a)
	if err != nil {
		return unit.Value{}, err
	}
	_, hands, err := mechanics.Stack(all)
	if err != nil {
		return unit.Value{}, err
	}
	return estimate.Value(unit.DimForce, float64(hands[nth])), nil
}
