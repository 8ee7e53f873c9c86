package rehearsal

import (
	"fmt"
	"testing"

	"scantling/internal/analysis/operations"
	"scantling/internal/analysis/sequence"
	"scantling/internal/analysis/setups"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// many is a piece of n unlike parts in groups of five, with six cuts each.
func many(n int) *bench {
	b := newBench()
	for i := range n {
		width := unit.MM(60) + unit.Length(i%700)*100*um
		part := b.part(fmt.Sprintf("P%d", i+1), 1, unit.MM(400)+unit.Length(i)*100*um, width, unit.MM(14))
		b.slot(part, piece.Rebate, piece.FaceHigh, piece.AlongWidth, 0, unit.MM(10), unit.MM(7), 0)
		b.slot(part, piece.Groove, piece.FaceHigh, piece.AlongLength, unit.MM(8), unit.MM(12), unit.MM(5), 0)
		b.channels(part, 4, unit.MM(14), unit.MM(9), unit.MM(2))
	}
	return b
}

// BenchmarkPlanned times planning and rehearsal of 300 and 3 000 unlike parts.
func BenchmarkPlanned(b *testing.B) {
	for _, n := range []int{300, 3000} {
		bench := many(n)
		p := bench.plan(b)
		in := operations.Input{Piece: bench.p, Cuts: bench.cuts, Rows: bench.rows, Workpieces: p.Workpieces, Diagrams: p.Diagrams, Stages: p.Stages, Shop: bench.shop, Ledger: bench.l}
		b.Run(fmt.Sprintf("operations/%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				operations.Derive(in)
			}
		})
		derived, _ := operations.Derive(in)
		b.Run(fmt.Sprintf("setups/%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				setups.Decide(setups.Input{Piece: bench.p, Rows: bench.rows, Workpieces: p.Workpieces, Derived: derived, Shop: bench.shop, Ledger: bench.l})
			}
		})
		b.Run(fmt.Sprintf("sequence/%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				sequence.Decide(sequence.Input{
					Piece: bench.p, Cuts: bench.cuts, Rows: bench.rows, Workpieces: p.Workpieces, Diagrams: p.Diagrams, Stages: p.Stages,
					Operations: p.Operations, Setups: p.Setups,
				})
			}
		})
		b.Run(fmt.Sprintf("rehearsal/%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				bench.rehearse(p)
			}
		})
	}
}
