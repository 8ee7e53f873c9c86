package rehearsal

import (
	"math/rand/v2"
	"testing"

	"scantling/internal/address"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestRandomPieces: whatever boards and cuts come, the planned work makes the
// piece, and hand and machine together make every cut once.
func TestRandomPieces(t *testing.T) {
	const seed = 2024
	r := rng(seed)
	cuts, hand, setups := 0, 0, 0
	for round := range 150 {
		b := random(r)
		p := b.plan(t)
		findings, report := b.rehearse(p)
		if !passed(findings) {
			t.Fatalf("seed %d, round %d: %s", seed, round, say(findings))
		}
		cuts += report.Cuts
		setups += len(p.Setups)
		for _, c := range p.Setups {
			if c.Machine == "hand" {
				hand += len(c.Placements)
			}
		}
	}
	t.Logf("%d cuts on %d cards, %d of them by hand", cuts, setups, hand)
	if hand*3 > cuts {
		t.Errorf("%d of %d cuts by hand: the machines do too little", hand, cuts)
	}
}

// TestRandomMutants: a tenth of a millimetre anywhere on a card is found out.
func TestRandomMutants(t *testing.T) {
	const seed = 77
	r := rng(seed)
	all, survivors := 0, 0
	for range 12 {
		b := random(r)
		p := b.plan(t)
		figures(p, func(where string, f *plan.Figure) {
			if r.IntN(4) > 0 {
				return
			}
			was := f.Nm
			f.Nm += 100 * um
			all++
			if findings, _ := b.rehearse(p); passed(findings) {
				survivors++
				t.Errorf("seed %d: survives: %s", seed, where)
			}
			f.Nm = was
		})
	}
	t.Logf("%d mutants, %d survive", all, survivors)
}

// random returns a piece of one to four rows with slots of every kind.
func random(r *rand.Rand) *bench {
	b := newBench()
	mm := func(low, high int64) unit.Length { return unit.MM(low) + unit.Length(r.Int64N((high-low)*10))*100*um }
	for i := range 1 + r.IntN(4) {
		thickness := mm(8, 20)
		width := mm(40, 145)
		if r.IntN(3) == 0 {
			width = mm(200, 290)
		}
		length := mm(306, 700)
		switch r.IntN(4) {
		case 0:
			length, width = mm(150, 300), mm(40, 140)
		case 1:
			length, width = mm(40, 150), mm(30, 100)
		}
		part := b.part("P"+string(rune('1'+i)), 1+r.IntN(3), length, width, thickness)
		for range r.IntN(6) {
			randomCut(r, b, part, length, width, thickness)
		}
	}
	return b
}

func randomCut(r *rand.Rand, b *bench, part address.Address, length, width, thickness unit.Length) {
	tenths := func(l unit.Length) unit.Length { return unit.Length(r.Int64N(max(1, int64(l/(100*um))))) * 100 * um }
	depth := unit.MM(1) + tenths(thickness/3)
	faces := []piece.Side{piece.FaceLow, piece.FaceHigh}
	open := faces[r.IntN(2)]
	run, across := piece.AlongLength, width
	if r.IntN(2) == 0 {
		run, across = piece.AlongWidth, length
	}
	wide := unit.MM(4) + tenths(min(across/4, unit.MM(20)))
	near := tenths(across - wide)
	switch r.IntN(7) {
	case 0: // a rebate at the low or the high side
		near = 0
		if r.IntN(2) == 0 {
			near = across - wide
		}
		b.slot(part, piece.Rebate, open, run, near, near+wide, depth, 0)
	case 1: // stopped at one end
		c := b.slot(part, piece.Housing, open, run, near, near+wide, depth, 0)
		if r.IntN(2) == 0 {
			c.Slot.StartOpen, c.Slot.From = false, b.fig(unit.MM(8))
		} else {
			c.Slot.EndOpen, c.Slot.To = false, b.fig(c.Slot.To.Nm-unit.MM(8))
		}
	case 2: // a row of channels
		n := 1 + r.IntN(5)
		pitch := unit.MM(9) + tenths(unit.MM(10))
		if span := unit.Length(n-1)*pitch + unit.MM(8); span < width {
			b.channels(part, n, (width-span)/2, pitch, unit.MM(1)+tenths(unit.MM(4)))
		}
	case 3:
		b.add(part, piece.Cut{Kind: piece.Hole, Bore: &piece.Bore{
			Open: open, At: [2]piece.Figure{b.fig(tenths(length)), b.fig(tenths(width))}, Diameter: b.fig(unit.MM(5)), Depth: b.fig(depth),
		}})
	case 4: // a socket in an end
		if width > unit.MM(20) {
			near := tenths(width - unit.MM(12))
			b.slot(part, piece.Socket, piece.EndLow, piece.AlongThickness, near, near+unit.MM(8), thickness, 0)
		}
	default:
		b.slot(part, piece.Groove, open, run, near, near+wide, depth, 0)
	}
}
