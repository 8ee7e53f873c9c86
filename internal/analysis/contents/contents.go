package contents

import (
	"fmt"

	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/share"
	"scantling/internal/unit"
)

// Functions returns the pure functions that entries of this package call.
func Functions() ledger.Functions {
	return ledger.Functions{"seat of a rod": seat}
}

// seat takes the groove's radius, its depth and the rod's diameter, and gives
// how deep the rod lies (share.Groove.Seat).
func seat(args []unit.Value) (unit.Value, error) {
	if len(args) != 3 {
		return unit.Value{}, fmt.Errorf("the seat of a rod takes 3 lengths, not %d", len(args))
	}
	var l [3]unit.Length
	for i, a := range args {
		length, ok := a.Length()
		if !ok {
			return unit.Value{}, fmt.Errorf("the seat of a rod takes lengths, not a %s", a.Dim())
		}
		l[i] = length
	}
	s, err := share.Groove{Radius: l[0], Depth: l[1]}.Seat(l[2])
	if err != nil {
		return unit.Value{}, err
	}
	return unit.OfLength(s.Sit), nil
}

// Derive returns how every thing that has a channel is held, in the order of
// the contents.
func Derive(p *piece.Piece, l *ledger.Ledger) []plan.Held {
	cuts := map[address.Address]piece.Cut{}
	for _, c := range p.Cuts {
		cuts[c.Address] = c
	}
	series := map[address.Address]piece.Series{}
	for _, s := range p.Series {
		series[s.Address] = s
	}
	var out []plan.Held
	for _, contents := range p.Contents {
		for _, t := range contents.Things {
			cut, ok := cuts[t.Cut]
			if !ok || cut.Slot == nil {
				continue
			}
			held := plan.Held{Thing: t.Key, Of: contents.Address, In: t.In, Cut: t.Cut, Cutter: cut.Cutter, Depth: cut.Slot.Depth}
			name := string(t.Cut)
			sinks, err := l.Call(name+".sinks", "seat of a rod", cut.Slot.Corner.Entry, cut.Slot.Depth.Entry, t.Diameter.Entry)
			if err != nil {
				continue
			}
			held.Sinks = sinks
			held.Proud = l.Less(name+".proud", t.Diameter, sinks)
			held.Land = landAfter(series[cut.Series], cut.Nth)
			out = append(out, held)
		}
	}
	return out
}

// landAfter returns the wood after the nth channel of a series, or its margin
// after the last.
func landAfter(s piece.Series, nth int) ledger.Figure {
	seen := 0
	for i, t := range s.Terms {
		if t.Air {
			seen++
		} else if seen == nth && i > 0 {
			return t.Figure
		}
	}
	return ledger.Figure{}
}
