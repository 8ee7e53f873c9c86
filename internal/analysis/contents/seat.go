package contents

import (
	"fmt"

	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/share"
	"scantling/internal/unit"
)

// lengthsOf returns the first n values as lengths.
func lengthsOf(what string, args []unit.Value, n int) ([]unit.Length, error) {
	if len(args) != n {
		return nil, fmt.Errorf("%s takes %d values, not %d", what, n, len(args))
	}
	out := make([]unit.Length, n)
	for i, a := range args {
		l, ok := a.Length()
		if !ok {
			return nil, fmt.Errorf("%s takes lengths, not a %s", what, a.Dim())
		}
		out[i] = l
	}
	return out, nil
}

// seat takes the groove's radius, its depth and the rod's diameter, and gives
// how deep the rod lies (share.Groove.Seat).
func seat(args []unit.Value) (unit.Value, error) {
	l, err := lengthsOf("the seat of a rod", args, 3)
	if err != nil {
		return unit.Value{}, err
	}
	s, err := share.Groove{Radius: l[0], Depth: l[1]}.Seat(l[2])
	if err != nil {
		return unit.Value{}, err
	}
	return unit.OfLength(s.Sit), nil
}

// lined takes radius, depth, diameter and the lining's thickness.
func lined(args []unit.Value) (unit.Value, error) {
	l, err := lengthsOf("the seat of a lined rod", args, 4)
	if err != nil {
		return unit.Value{}, err
	}
	g, err := share.Groove{Radius: l[0], Depth: l[1]}.Lined(l[3])
	if err != nil {
		return unit.Value{}, err
	}
	s, err := g.Seat(l[2])
	if err != nil {
		return unit.Value{}, err
	}
	return unit.OfLength(s.Sit), nil
}

// prism takes the number of sides, then radius, depth, the size across corners and
// the lining's thickness, and gives how deep a rod with flats lies that way up.
func prism(turn share.Turn) func([]unit.Value) (unit.Value, error) {
	return func(args []unit.Value) (unit.Value, error) {
		if len(args) != 5 {
			return unit.Value{}, fmt.Errorf("the seat of a rod with flats takes 5 values, not %d", len(args))
		}
		sides, ok := args[0].Int()
		l, err := lengthsOf("the seat of a rod with flats", args[1:], 4)
		if err != nil || !ok {
			return unit.Value{}, fmt.Errorf("the seat of a rod with flats takes its sides and lengths (%w)", err)
		}
		g := share.Groove{Radius: l[0], Depth: l[1]}
		if l[3] != 0 {
			if g, err = g.Lined(l[3]); err != nil {
				return unit.Value{}, err
			}
		}
		s, err := g.SeatPrism(share.Prism{Sides: int(min(max(sides, 0), 1000)), Corners: l[2]}, turn)
		if err != nil {
			return unit.Value{}, err
		}
		return unit.OfLength(s.Sit), nil
	}
}

// sinks works out how deep a thing lies in its channel, with a corner down where
// it has flats; and what stands proud on a flat.
func (d deriver) sinks(held *plan.Held, t piece.Thing, cut piece.Cut, lining piece.Figure) bool {
	name := string(t.Cut)
	s, l := cut.Slot, d.ledger
	var err error
	call := func(fn string, args ...ledger.ID) piece.Figure {
		f, e := l.Call(name+".sinks", fn, args...)
		if e != nil && err == nil {
			err = e
		}
		return f
	}
	if t.Sides == 0 {
		held.Sinks = call("seat of a rod", s.Corner.Entry, s.Depth.Entry, t.Diameter.Entry)
		if lining.Nm > 0 && err == nil {
			held.Lining, held.Bare = lining, held.Sinks
			held.Sinks = call("seat of a lined rod", s.Corner.Entry, s.Depth.Entry, t.Diameter.Entry, lining.Entry)
		}
	} else {
		sides := l.Given(ledger.Entry{Name: name + ".sides", Value: unit.OfCount(t.Sides), Origin: ledger.Document})
		none := l.Leaf("no lining", 0, ledger.Default, "")
		way := func(fn string, lining piece.Figure) piece.Figure {
			return call(fn, sides, s.Corner.Entry, s.Depth.Entry, t.Diameter.Entry, lining.Entry)
		}
		held.Sinks = way("seat with a corner down", none)
		on := none
		if lining.Nm > 0 {
			held.Lining, held.Bare, on = lining, held.Sinks, lining
			held.Sinks = way("seat with a corner down", lining)
		}
		flat := way("seat on a flat", on)
		if err == nil {
			held.OnFlat = l.Less(name+".on-flat", t.Flats, flat)
		}
	}
	if err != nil {
		return false
	}
	held.Proud = l.Less(name+".proud", t.Diameter, held.Sinks)
	return true
}
