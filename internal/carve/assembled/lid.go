package assembled

import (
	"scantling/internal/ledger"
	"scantling/internal/piece"
)

// How a part of a closed box stands to the stretch that a saw takes as the lid comes
// off.
type Stand int

// The ways of standing.
const (
	Below   Stand = iota // it stays with the base
	Wall                 // it is sawn through from the outside
	Above                // it goes off with the lid
	Within               // it ends in what is sawn away
	Between              // it stands through the line, and no outside of it is one of the box's
)

// Stands tells how a part stands to what is lost along up, and for a wall which way its
// outside looks: across the thinnest of its sizes that reach a side of the block.
func Stands(block, one piece.Part, lost piece.Extent) (Stand, piece.Direction) {
	up := one.Extent[piece.Up]
	switch {
	case up.High.Nm <= lost.Low.Nm:
		return Below, ""
	case up.Low.Nm >= lost.High.Nm:
		return Above, ""
	case up.Low.Nm >= lost.Low.Nm || up.High.Nm <= lost.High.Nm:
		return Within, ""
	}
	stand, out := Between, piece.Direction("")
	thin := piece.Extent{}
	for _, a := range [2]piece.Axis{piece.Right, piece.Back} {
		e, b := one.Extent[a], block.Extent[a]
		if e.Low.Nm != b.Low.Nm && e.High.Nm != b.High.Nm || stand == Wall && e.Size() >= thin.Size() {
			continue
		}
		stand, thin, out = Wall, e, piece.Toward(a, 1)
		if e.Low.Nm == b.Low.Nm {
			out = out.Opposite()
		}
	}
	return stand, out
}

// Kerf is what the saw takes of a wall, in its own axes, from the side that is the
// box's outside: right through, from one end to the other.
func Kerf(l *ledger.Ledger, name string, one piece.Part, out piece.Direction, lost piece.Extent) piece.Cut {
	open := one.Frame.SideToward(out)
	through, _ := open.Axis()
	across, same := one.Frame.LocalOf(piece.Up)
	run := 3 - through - across
	e := one.Extent[piece.Up]
	s := piece.Slot{Open: open, Run: run, StartOpen: true, EndOpen: true, Depth: one.Sizes()[through], From: l.Less("", e.Low, e.Low), To: one.Sizes()[run]}
	s.Near, s.Far = l.Less("", lost.Low, e.Low), l.Less("", lost.High, e.Low)
	if same < 0 {
		s.Near, s.Far = l.Less("", e.High, lost.High), l.Less("", e.High, lost.Low)
	}
	return piece.Cut{
		Address: one.Address.Child(name), Kind: piece.LidKerf, Part: one.Address, Slot: &s,
	}
}
