package inplace_test

import (
	"testing"

	"scantling/internal/address"
	"scantling/internal/inplace"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// shelf is a board of 300 × 100 × 20 between two sides, its end 1 at the left, or at the
// right where it is turned; read at that length.
func shelf(l *ledger.Ledger, turned bool, read unit.Length) *piece.Piece {
	at := func(nm unit.Length) piece.Figure { return l.Leaf("size", nm, ledger.Document, "") }
	box := func(x ...int64) (e [3]piece.Extent) {
		for i := range e {
			e[i] = piece.Extent{Low: at(unit.MM(x[2*i])), High: at(unit.MM(x[2*i+1]))}
		}
		return e
	}
	frame := piece.Frame{Length: piece.ToRight, Width: piece.ToBack, Thickness: piece.ToUp}
	if turned {
		frame = piece.Frame{Length: piece.ToLeft, Width: piece.ToFront, Thickness: piece.ToUp}
	}
	p := &piece.Piece{
		Parts: []piece.Part{
			{Address: "left", Extent: box(0, 20, 0, 100, 0, 500)},
			{Address: "right", Extent: box(300, 320, 0, 100, 0, 500)},
			{Address: "shelf", Extent: box(10, 310, 0, 100, 200, 220), Frame: frame, Length: at(unit.MM(300)), Width: at(unit.MM(100)), Thickness: at(unit.MM(20))},
		},
		Joints: []piece.Joint{{Address: "joint.left", A: "shelf", B: "left"}, {Address: "joint.right", A: "shelf", B: "right"}},
	}
	p.InPlace = []piece.InPlace{{Part: "shelf", Along: piece.AlongLength, Drawn: p.Parts[2].Length, Size: at(read), Far: p.FarEnd(&p.Parts[2], piece.AlongLength)}}
	return p
}

// TestFarEndGoesAlong: of a shelf read 0.5 longer, what is cut at end 2, and what the joint
// there cuts, goes along; a trench right through is longer; what stands anywhere else keeps
// its distance from end 1, and so do the parts round it.
func TestFarEndGoesAlong(t *testing.T) {
	const more = unit.Millimetre / 2
	for _, turned := range []bool{false, true} {
		l := ledger.New(nil)
		at := func(mm int64) piece.Figure { return l.Leaf("place", unit.MM(mm), ledger.Document, "") }
		p := shelf(l, turned, unit.MM(300)+more)
		far, near := address.Address("joint.right"), address.Address("joint.left")
		if turned {
			far, near = near, far
		}
		slot := func(joint address.Address, from, to int64) piece.Cut {
			return piece.Cut{Part: "shelf", Joint: joint, Slot: &piece.Slot{Open: piece.FaceHigh, Run: piece.AlongLength, From: at(from), To: at(to), Near: at(0), Far: at(100), Depth: at(5)}}
		}
		bore := func(joint address.Address, along int64) piece.Cut {
			return piece.Cut{Part: "shelf", Joint: joint, Bore: &piece.Bore{Open: piece.FaceHigh, At: [2]piece.Figure{at(along), at(50)}}}
		}
		cuts := []piece.Cut{slot(far, 280, 300), slot("", 290, 300), slot("", 0, 300), slot("", 200, 220), slot(near, 0, 10), bore(far, 290), bore(near, 10), bore("", 250),
			{Part: "shelf", Joint: far, Bore: &piece.Bore{Open: piece.EndHigh, At: [2]piece.Figure{at(50), at(10)}, Depth: at(30)}},
			{Part: "right", Joint: far, Slot: &piece.Slot{Open: piece.FaceLow, Run: piece.AlongWidth, From: at(0), To: at(100), Near: at(280), Far: at(300), Depth: at(10)}}}
		made, after := inplace.Apply(p, cuts, l)
		moves := [][2]unit.Length{{more, more}, {more, more}, {0, more}, {0, 0}, {0, 0}, {more, 0}, {0, 0}, {0, 0}, {0, 0}, {0, 0}}
		for i, m := range moves {
			var got [2]unit.Length
			if c := after[i]; c.Slot != nil {
				got = [2]unit.Length{c.Slot.From.Nm - cuts[i].Slot.From.Nm, c.Slot.To.Nm - cuts[i].Slot.To.Nm}
				if c.Slot.Near != cuts[i].Slot.Near || c.Slot.Far != cuts[i].Slot.Far {
					t.Errorf("turned %v: cut %d moved across", turned, i)
				}
			} else {
				got = [2]unit.Length{c.Bore.At[0].Nm - cuts[i].Bore.At[0].Nm, c.Bore.At[1].Nm - cuts[i].Bore.At[1].Nm}
			}
			if got != m {
				t.Errorf("turned %v: cut %d moved by %v, not %v", turned, i, got, m)
			}
		}
		low, high := made.Parts[2].Extent[0].Low.Nm, made.Parts[2].Extent[0].High.Nm
		if want := [2]unit.Length{unit.MM(10), unit.MM(310) + more}; !turned && (low != want[0] || high != want[1]) {
			t.Errorf("the shelf lies from %d to %d", low, high)
		}
		if want := [2]unit.Length{unit.MM(10) - more, unit.MM(310)}; turned && (low != want[0] || high != want[1]) {
			t.Errorf("turned: the shelf lies from %d to %d", low, high)
		}
		if p.Parts[2].Length.Nm != unit.MM(300) || cuts[0].Slot.To.Nm != unit.MM(300) || made.Parts[1].Extent != p.Parts[1].Extent {
			t.Errorf("turned %v: what was given, or another part, has changed", turned)
		}
		for _, d := range l.Verify() {
			t.Error(d)
		}
	}
}

// TestNothingRead: without readings the piece and its cuts are those that were given.
func TestNothingRead(t *testing.T) {
	p := shelf(ledger.New(nil), false, 1)
	p.InPlace = nil
	cuts := []piece.Cut{{Part: "shelf"}}
	if made, after := inplace.Apply(p, cuts, nil); made != p || &after[0] != &cuts[0] {
		t.Error("the piece was copied")
	}
}
