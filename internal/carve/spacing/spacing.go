package spacing

import (
	"scantling/internal/ledger"
	"scantling/internal/piece"
)

// Row is how a row is laid out.
type Row struct {
	// Centres lie from the first centre on: the first is nought.
	Centres []piece.Figure
	// Before is how far the first centre lies in, where the spacing says so (Said).
	Before piece.Figure
	Said   bool
	// Mouths says that the row is laid out from edge to edge, so that its middle is
	// that of its outermost edges, not of its outermost centres.
	Mouths bool
}

// Even lays n centres at one pitch.
func Even(l *ledger.Ledger, pitch piece.Figure, n int) Row {
	out := Row{Centres: make([]piece.Figure, n)}
	for i := range n {
		out.Centres[i] = l.Times("", pitch, int64(i), 1)
	}
	return out
}

// Stepped lays centres at one pitch after the other; one more than there are
// pitches, of which there must be some.
func Stepped(l *ledger.Ledger, pitches []piece.Figure) Row {
	out := Row{Centres: []piece.Figure{l.Times("", pitches[0], 0, 1)}}
	for _, p := range pitches {
		out.Centres = append(out.Centres, l.Sum("", out.Centres[len(out.Centres)-1], p))
	}
	return out
}

// Landed lays things of those widths, of which there must be some, with a land
// before each but the first: land gives the one before number nth, from 1.
func Landed(l *ledger.Ledger, widths []piece.Figure, land func(nth int) piece.Figure) Row {
	out := Row{Centres: []piece.Figure{l.Times("", widths[0], 0, 1)}, Mouths: true}
	for i := 1; i < len(widths); i++ {
		step := l.Sum("", l.Half("", widths[i-1]), land(i), l.Half("", widths[i]))
		out.Centres = append(out.Centres, l.Sum("", out.Centres[i-1], step))
	}
	return out
}
