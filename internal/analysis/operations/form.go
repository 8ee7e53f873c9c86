package operations

import (
	"scantling/internal/ledger"
	"scantling/internal/piece"
)

// form is a slot as it is offered: which side lies down. A rebate is open on two
// sides and so has two forms; other slots have one.
type form struct {
	down               piece.Side
	run, across        piece.Local
	from, to           piece.Figure
	startOpen, endOpen bool
	near, far, depth   piece.Figure
	corner             piece.Figure
}

// forms returns the ways to lie down, flat ones first.
func forms(l *ledger.Ledger, s piece.Slot, size [3]piece.Figure) []form {
	first := form{
		down: s.Open, run: s.Run, across: s.Across(),
		from: s.From, to: s.To, startOpen: s.StartOpen, endOpen: s.EndOpen,
		near: s.Near, far: s.Far, depth: s.Depth, corner: s.Corner,
	}
	out := []form{first}
	low, high := s.Near.Nm <= 0, s.Far.Nm >= size[first.across].Nm
	if s.Corner.Nm == 0 && low != high && !leans(&s) {
		second := first
		second.down = piece.SideOf(first.across, high)
		open, isHigh := s.Open.Axis()
		second.across = open
		if high {
			second.depth = l.Less("depth", size[first.across], s.Near)
		} else {
			second.depth = s.Far
		}
		zero := l.Less("zero", s.Depth, s.Depth)
		second.near, second.far = zero, s.Depth
		if isHigh {
			second.near, second.far = l.Less("near", size[open], s.Depth), size[open]
		}
		if rankOf(second.down) < rankOf(first.down) {
			return []form{second, first}
		}
		out = append(out, second)
	}
	return out
}

// rankOf orders sides by how well work lies on them: face, edge, end.
func rankOf(s piece.Side) int {
	axis, _ := s.Axis()
	return 2 - int(axis)
}
