package joinery_test

import (
	"math/big"
	"testing"

	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// want is what a joint must come to, in mm³ and mm², worked out by hand in the
// comment of the case.
type want struct {
	overlap, keptA, keptB, neither, contact float64
}

// pairs are joints of two parts with their closed forms.
var pairs = []struct {
	name  string
	build func(b *builder)
	want  want
}{
	{
		// A shelf 15 thick and 200 deep, 5 into a side 18 thick: 5·15·200 = 15 000;
		// bottom 15·200 and two walls 5·200.
		name: "housing through",
		build: func(b *builder) {
			b.Part("shelf", grainRight, 130, 3000, 0, 2000, 4000, 4150)
			b.Part("side", grainUp, 0, 180, 0, 2000, 0, 8000)
			b.Joint("j", piece.HousingJoint, "shelf", "side", 50, nil)
		},
		want: want{15000, 15000, 0, 0, 3000 + 2000},
	},
	{
		// The same, stopped 8 short of the front: B keeps 5·15·8 = 600; contact
		// 15·192 + 2·5·192, the trench's end 5·15 and under the notch 15·8.
		name: "housing stopped",
		build: func(b *builder) {
			b.Part("shelf", grainRight, 130, 3000, 0, 2000, 4000, 4150)
			b.Part("side", grainUp, 0, 180, 0, 2000, 0, 8000)
			b.Joint("j", piece.HousingJoint, "shelf", "side", 50, func(j *piece.Joint) { j.StopLow = b.Fig("stop", 80) })
		},
		want: want{15000, 14400, 600, 0, 2880 + 1920 + 75 + 120},
	},
	{
		// Stopped 8 in front and 12 behind, the shelf standing 5 back: the notch in
		// front is only 3 long. Run 195: kept by B 5·15·(3 + 12) = 1 125.
		name: "housing stopped at both ends, shelf set back",
		build: func(b *builder) {
			b.Part("shelf", grainRight, 130, 3000, 50, 2000, 4000, 4150)
			b.Part("side", grainUp, 0, 180, 0, 2000, 0, 8000)
			b.Joint("j", piece.HousingJoint, "shelf", "side", 50, func(j *piece.Joint) {
				j.StopLow, j.StopHigh = b.Fig("stop", 80), b.Fig("stop", 120)
			})
		},
		want: want{14625, 13500, 1125, 0, 180*15 + 2*180*5 + 2*75 + 15*15},
	},
	{
		// The top of a box 14 thick, 7 into a side: 7·14·200; bottom 14·200, wall 7·200.
		name: "rebate at a corner",
		build: func(b *builder) {
			b.Part("top", grainRight, 70, 3000, 0, 2000, 3860, 4000)
			b.Part("side", grainUp, 0, 140, 0, 2000, 0, 4000)
			b.Joint("j", piece.RebateJoint, "top", "side", 70, nil)
		},
		want: want{19600, 19600, 0, 0, 2800 + 1400},
	},
	{
		// A back 6 thick let 7 into a side 400 high, from 10 to 390, 0.5 of clearance
		// at the wall: 7·6·380; neither 7·0.5·380; contact the bottom 6·380 and the
		// ends 2·6·7, for B stands beyond them.
		name: "rebate for a back, stopped by where the back ends",
		build: func(b *builder) {
			b.Part("back", upright, 70, 3000, 1940, 2000, 100, 3900)
			b.Part("side", grainUp, 0, 140, 0, 2000, 0, 4000)
			b.Joint("j", piece.RebateJoint, "back", "side", 70, func(j *piece.Joint) { j.ClearAcross = b.Fig("clear", 5) })
		},
		want: want{15960, 15960, 0, 1330, 6*380 + 2*42},
	},
	{
		// A ply bottom 4 thick, 5 into a side 10 thick; the side is 300 long, the
		// bottom lies from 5 to 295; clearance 0.2 across and 0.5 deep, at the ends
		// too: kept 5·4·290 = 5 800, cut 5.5·4.2·291 = 6 722.1; contact one wall 5·290.
		name: "groove within",
		build: func(b *builder) {
			b.Part("bottom", grainBack, 50, 1500, 50, 2950, 80, 120)
			b.Part("side", sideGrain, 0, 100, 0, 3000, 0, 600)
			b.Joint("j", piece.GrooveJoint, "bottom", "side", 50, func(j *piece.Joint) {
				j.ClearAcross, j.ClearDeep = b.Fig("across", 2), b.Fig("deep", 5)
			})
		},
		want: want{5800, 5800, 0, 922.1, 1450},
	},
	{
		// Two drawer sides 10 and 12 thick and 60 high in five fingers of 12: A keeps
		// three: 3·12·10·12 = 4 320, B two 2 880; between fingers 4·120, socket
		// bottoms 12·(3·12) and 10·(2·12), as A's fingers pass the thickness of B, 12.
		name: "box joint",
		build: func(b *builder) {
			b.Part("front", frontGrain, 0, 2000, 0, 100, 0, 600)
			b.Part("side", sideGrain, 0, 120, 0, 3000, 0, 600)
			b.Joint("j", piece.BoxJoint, "front", "side", 0, func(j *piece.Joint) { j.Finger = b.Fig("finger", 120) })
		},
		want: want{7200, 4320, 2880, 0, 480 + 12*36 + 10*24},
	},
	{
		// Two strips 40 × 20 crossing: 40·40·20; they meet over 40·40 and on two
		// walls of either notch, 4·40·10.
		name: "halving",
		build: func(b *builder) {
			b.Part("rail", grainRight, 0, 3000, 1000, 1400, 0, 200)
			b.Part("stile", grainBack, 1000, 1400, 0, 3000, 0, 200)
			b.Joint("j", piece.HalvingJoint, "rail", "stile", 0, nil)
		},
		want: want{32000, 16000, 16000, 0, 1600 + 1600},
	},
	{
		// Dividers 6 thick, slotted over each other, 40 and 60 high; A keeps 15 of
		// the common 40: 6·6·40.
		name: "halving of dividers of different heights",
		build: func(b *builder) {
			b.Part("long", frontGrain, 0, 3000, 1000, 1060, 0, 600)
			b.Part("cross", sideGrain, 1500, 1560, 0, 2000, 0, 400)
			b.Joint("j", piece.HalvingJoint, "long", "cross", 150, nil)
		},
		// Walls: A's notch 25 high: 2·6·25; B's 15 high: 2·6·15; between 6·6; and
		// above the cross divider nothing.
		want: want{1440, 540, 900, 0, 300 + 180 + 36},
	},
	{
		// A stop 30 × 14 on a board.
		name: "butt",
		build: func(b *builder) {
			b.Part("stop", grainRight, 500, 800, 150, 290, 140, 190)
			b.Part("board", grainRight, 0, 2000, 0, 2000, 0, 140)
			b.Joint("j", piece.ButtJoint, "stop", "board", 0, nil)
		},
		want: want{contact: 30 * 14},
	},
	{
		// A rail's end, 20 × 60, on a leg.
		name: "dowels",
		build: func(b *builder) {
			b.Part("rail", frontGrain, 400, 3000, 100, 300, 4000, 4600)
			b.Part("leg", upright, 0, 400, 0, 400, 0, 5000)
			b.Joint("j", piece.DowelJoint, "rail", "leg", 0, func(j *piece.Joint) {
				j.Dowels = &piece.Dowels{Diameter: b.Fig("d", 80), Count: 2, Margin: b.Fig("m", 150), InA: b.Fig("a", 250), InB: b.Fig("b", 200)}
			})
		},
		want: want{contact: 1200},
	},
}

// TestClosedForms holds every joint against its numbers worked out by hand, and
// the cuts, counted cell by cell, against the joint's numbers.
func TestClosedForms(t *testing.T) {
	for _, c := range pairs {
		t.Run(c.name, func(t *testing.T) {
			b := newBuilder(t)
			c.build(b)
			cuts, low := b.lower()
			if len(low) != 1 {
				t.Fatalf("%d joints lowered", len(low))
			}
			got := want{mm3(low[0].Overlap), mm3(low[0].KeptA), mm3(low[0].KeptB), mm3(low[0].Neither), mm2(low[0].Contact)}
			if got != c.want {
				t.Errorf("is   %v\nwant %v", got, c.want)
			}
			checkPair(t, b, cuts, low[0])
			for _, d := range b.Ledger.Verify() {
				t.Error(d)
			}
		})
	}
}

// checkPair counts the finished wood of the two parts on an exact grid.
func checkPair(t *testing.T, b *builder, cuts []piece.Cut, low joinery.Lowered) {
	t.Helper()
	a, c := string(low.A), string(low.B)
	var wood [2]big.Int
	var both, union big.Int
	b.voxels([]string{a, c}, cuts, func(lo, hi [3]unit.Length, w, body []bool) {
		v := cell(lo, hi)
		for k := range w {
			if w[k] {
				wood[k].Add(&wood[k], v)
			}
		}
		if w[0] && w[1] {
			both.Add(&both, v)
		}
		if body[0] || body[1] {
			union.Add(&union, v)
		}
	})
	if both.Sign() != 0 {
		t.Errorf("finished parts share %v nm³", &both)
	}
	sum := new(big.Int).Add(&wood[0], &wood[1])
	sum.Add(sum, low.Neither.Number().Num())
	if sum.Cmp(&union) != 0 {
		t.Errorf("|A'| + |B'| + neither = %v, |A ∪ B| = %v", sum, &union)
	}
}
