package joinery_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/diag"
	"scantling/internal/geom/solid"
	"scantling/internal/joinery"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/rules"
	"scantling/internal/shape"
)

// newRuled is a builder whose ledger knows the rules of a mitre's triangle.
func newRuled(t *testing.T) *builder {
	b := newBuilder(t)
	b.Ledger = ledger.New(rules.Functions())
	return b
}

// shapes of the corner joints, and what they must come to: worked out by hand in the
// comments, in mm³ and mm².
var cornerPairs = []struct {
	name  string
	build func(b *builder)
	want  want
}{
	{
		// Boards 18 thick edge to edge, 400 long, a tongue 6 × 6 in the middle: overlap
		// 6·18·400; tongue 6·6·400, shoulders 6·12·400; meet on both walls 2·6·400, the
		// bottom 6·400 and the shoulders 12·400.
		name: "tongue and groove",
		build: func(b *builder) {
			b.Part("a", upright, 940, 2000, 0, 180, 0, 4000)
			b.Part("b", upright, 0, 1000, 0, 180, 0, 4000)
			b.Joint("j", piece.TongueJoint, "a", "b", 60, func(j *piece.Joint) {
				j.Tongue = &piece.Tongue{Thickness: b.Fig("t", 60), From: b.Fig("f", 60)}
			})
		},
		want: want{43200, 14400, 28800, 0, 4800 + 2400 + 4800},
	},
	{
		// The same, floating: the groove 0.2 wider and 1 deeper, shoulders 2 off:
		// 7·6.2·400 - 14 400 = 2 960 and 2·12·400 = 9 600; meet on one wall, 6·400.
		name: "tongue that floats",
		build: func(b *builder) {
			b.Part("a", upright, 940, 2000, 0, 180, 0, 4000)
			b.Part("b", upright, 0, 1000, 0, 180, 0, 4000)
			b.Joint("j", piece.TongueJoint, "a", "b", 60, func(j *piece.Joint) {
				j.Tongue = &piece.Tongue{Thickness: b.Fig("t", 60), From: b.Fig("f", 60), Gap: b.Fig("g", 20)}
				j.ClearAcross, j.ClearDeep = b.Fig("ca", 2), b.Fig("cd", 10)
			})
		},
		want: want{43200, 14400, 28800, 2960 + 9600, 2400},
	},
	{
		// A drawer's back, 10 thick, by a tongue 4 thick at its low face + 3, 5 into a
		// side 12 thick, 60 high.
		name: "tongue at an end",
		build: func(b *builder) {
			b.Part("a", frontGrain, 70, 2000, 0, 100, 0, 600)
			b.Part("b", sideGrain, 0, 120, -1000, 2000, 0, 600)
			b.Joint("j", piece.TongueJoint, "a", "b", 50, func(j *piece.Joint) {
				j.Tongue = &piece.Tongue{Thickness: b.Fig("t", 40), From: b.Fig("f", 30)}
			})
		},
		want: want{3000, 1200, 1800, 0, 2*5*60 + 4*60 + 6*60},
	},
	{
		// A case's corner, 12 and 12 thick, 100 high: 12·12·100; half each; the mitre's
		// face 12√2·100.
		name: "mitre of a case",
		build: func(b *builder) {
			b.Part("a", frontGrain, 0, 3000, 0, 120, 0, 1000)
			b.Part("b", sideGrain, 0, 120, 0, 2000, 0, 1000)
			b.Joint("j", piece.MitreJoint, "a", "b", 0, nil)
		},
		want: want{14400, 7200, 7200, 0, 1200 * math.Sqrt2},
	},
	{
		// A frame 20 thick, rail 60 wide, stile 40: 60·40·20; face √(60² + 40²)·20.
		name: "mitre of a frame, unequal",
		build: func(b *builder) {
			b.Part("a", frontGrain, 0, 3000, 0, 200, 3400, 4000)
			b.Part("b", upright, 0, 400, 0, 200, 0, 4000)
			b.Joint("j", piece.MitreJoint, "a", "b", 0, nil)
		},
		want: want{48000, 24000, 24000, 0, 20 * math.Sqrt(60*60+40*40)},
	},
	{
		// A splined corner, 12 thick, 100 high, spline 4 thick, 5 into each, 3 from the
		// inner corner: neither 2·5·4·100, the face less 4·100.
		name: "splined mitre of a case",
		build: func(b *builder) {
			b.Part("a", frontGrain, 0, 3000, 0, 120, 0, 1000)
			b.Part("b", sideGrain, 2880, 3000, 0, 2000, 0, 1000)
			b.Joint("j", piece.MitreJoint, "a", "b", 0, func(j *piece.Joint) {
				j.Spline = &piece.Spline{Thickness: b.Fig("t", 40), Depth: b.Fig("d", 50), Heel: b.Fig("h", 30)}
			})
		},
		want: want{14400, 7200, 7200, 4000, 1200*math.Sqrt2 - 400},
	},
	{
		// A frame's spline, 6 of 20, 10 into each, from corner to corner: 2·10·6·D.
		name: "splined mitre of a frame",
		build: func(b *builder) {
			b.Part("a", frontGrain, 0, 3000, 0, 200, 3400, 4000)
			b.Part("b", upright, 0, 400, 0, 200, 0, 4000)
			b.Joint("j", piece.MitreJoint, "a", "b", 0, func(j *piece.Joint) {
				j.Spline = &piece.Spline{Thickness: b.Fig("t", 60), Depth: b.Fig("d", 100)}
			})
		},
		want: want{48000, 24000, 24000, 120 * math.Sqrt(5200), 14 * math.Sqrt(5200)},
	},
	{
		// Three keys 3 thick, 11 deep: each a triangle of 11·22/2 in section.
		name: "keyed mitre of a case",
		build: func(b *builder) {
			b.Part("a", frontGrain, 0, 3000, 0, 120, 0, 1000)
			b.Part("b", sideGrain, 0, 120, 0, 2000, 0, 1000)
			b.Joint("j", piece.MitreJoint, "a", "b", 0, func(j *piece.Joint) {
				j.Keys = &piece.Keys{Thickness: b.Fig("t", 30), Depth: b.Fig("d", 110), At: []piece.Figure{b.Fig("1", 200), b.Fig("2", 500), b.Fig("3", 800)}}
			})
		},
		want: want{14400, 7200, 7200, 3 * 3 * 121, 1200*math.Sqrt2 - 3*33},
	},
	{
		// A frame's key: 6 thick, 30 deep, in an unequal corner a = 40, b = 60: legs
		// 30·D/40 and 30·D/60.
		name: "keyed mitre of a frame",
		build: func(b *builder) {
			b.Part("a", frontGrain, 0, 3000, 0, 200, 3400, 4000)
			b.Part("b", upright, 0, 400, 0, 200, 0, 4000)
			b.Joint("j", piece.MitreJoint, "a", "b", 0, func(j *piece.Joint) {
				j.Keys = &piece.Keys{Thickness: b.Fig("t", 60), Depth: b.Fig("d", 300), At: []piece.Figure{b.Fig("1", 100)}}
			})
		},
		want: want{48000, 24000, 24000, 900 * 5200 / 40.0 / 60 / 2 * 6, 20*math.Sqrt(5200) - 180},
	},
	{
		// Boards 15 and 20 thick along their long edges, 500 long.
		name: "mitre along an edge",
		build: func(b *builder) {
			b.Part("a", grainBack, 0, 2000, 0, 5000, 0, 150)
			b.Part("b", piece.Frame{Length: piece.ToBack, Width: piece.ToUp, Thickness: piece.ToRight}, 0, 200, 0, 5000, 0, 1500)
			b.Joint("j", piece.MitreJoint, "a", "b", 0, nil)
		},
		want: want{150000, 75000, 75000, 0, 500 * 25},
	},
	{
		// A drawer's side 10 thick with two tails 24, pins 4, 4, 4, lean 1.5, through a
		// front 12 thick, 60 high: tails 10·12·2·22.5; flanks 4·10·√(144 + 2.25); roots
		// 10·(12 + 6); faces 12·45.
		name: "dovetail through",
		build: func(b *builder) {
			b.Part("a", sideGrain, 0, 100, 0, 3000, 0, 600)
			b.Part("b", frontGrain, 0, 2000, 0, 120, 0, 600)
			b.Joint("j", piece.DovetailJoint, "a", "b", 0, func(j *piece.Joint) { j.Tails = tails(b, 15, 0, 40, 240, 40, 240, 40) })
		},
		want: want{7200, 5400, 1800, 0, 4*10*math.Sqrt(146.25) + 10*(12+6) + 12*45},
	},
	{
		// The same, half-blind, a lap of 4 on a front 16 thick: as above, and on the
		// tails' ends 10·48.
		name: "dovetail half-blind",
		build: func(b *builder) {
			b.Part("a", sideGrain, 0, 100, 40, 3000, 0, 600)
			b.Part("b", frontGrain, 0, 2000, 0, 160, 0, 600)
			b.Joint("j", piece.DovetailJoint, "a", "b", 0, func(j *piece.Joint) { j.Tails = tails(b, 15, 40, 40, 240, 40, 240, 40) })
		},
		want: want{7200, 5400, 1800, 0, 4*10*math.Sqrt(146.25) + 10*(12+6) + 12*45 + 480},
	},
	{
		// A shelf 18 thick, 200 deep, 6 into a side 20 thick; neck 12, lean 1: overlap
		// 6·18·200; dovetail 6·13·200; flanks 2·√37·200, bottom 14·200, shoulders 6·200.
		name: "sliding dovetail",
		build: func(b *builder) {
			b.Part("a", grainRight, 140, 3000, 0, 2000, 1000, 1180)
			b.Part("b", grainUp, 0, 200, 0, 2000, 0, 4000)
			b.Joint("j", piece.SlidingJoint, "a", "b", 60, func(j *piece.Joint) {
				j.Slide = &piece.Slide{Neck: b.Fig("n", 120), Lean: b.Fig("l", 10)}
			})
		},
		want: want{21600, 15600, 6000, 0, 400*math.Sqrt(37) + 2800 + 1200},
	},
	{
		// The dovetail as wide as the shelf, stopped 20 in front: dovetail 6·17·180,
		// neck 16; flanks 2·√37·180, bottom 18·180, shoulders 2·180, its end 6·17, and
		// under the notch 20·18.
		name: "sliding dovetail stopped, full width",
		build: func(b *builder) {
			b.Part("a", grainRight, 140, 3000, 0, 2000, 1000, 1180)
			b.Part("b", grainUp, 0, 200, 0, 2000, 0, 4000)
			b.Joint("j", piece.SlidingJoint, "a", "b", 60, func(j *piece.Joint) {
				j.Slide = &piece.Slide{Neck: b.Fig("n", 160), Lean: b.Fig("l", 10)}
				j.StopLow = b.Fig("s", 200)
			})
		},
		want: want{21600, 18360, 3240, 0, 360*math.Sqrt(37) + 3240 + 360 + 102 + 360},
	},
	{
		// Half, neck 12 from the low face, lean 1: 6·12.5·200; flanks (√37 + 6)·200,
		// bottom 13·200, shoulder 6·200; 1 of room at the bottom: 14.1667 wide there,
		// (13 + 7/6·... ) a trapezoid 13 to 13 1/6 wide and 1 deep.
		name: "sliding dovetail half",
		build: func(b *builder) {
			b.Part("a", grainRight, 140, 3000, 0, 2000, 1000, 1180)
			b.Part("b", grainUp, 0, 200, 0, 2000, 0, 4000)
			b.Joint("j", piece.SlidingJoint, "a", "b", 60, func(j *piece.Joint) {
				j.Slide = &piece.Slide{Neck: b.Fig("n", 120), Lean: b.Fig("l", 10), OneSide: true}
				j.ClearDeep = b.Fig("c", 10)
			})
		},
		want: want{21600, 15000, 6600, 200 * (13 + 13 + 1/6.0) / 2, 200*(math.Sqrt(37)+6) + 1200},
	},
}

// tails is a row of dovetails, a pin first, in tenths of a millimetre.
func tails(b *builder, lean, lap int64, row ...int64) *piece.Tails {
	t := &piece.Tails{Lean: b.Fig("lean", lean)}
	if lap > 0 {
		t.Lap = b.Fig("lap", lap)
	}
	for i, n := range row {
		if i%2 == 0 {
			t.Pins = append(t.Pins, b.Fig("pin", n))
		} else {
			t.Tails = append(t.Tails, b.Fig("tail", n))
		}
	}
	return t
}

// TestCornerForms holds tongues, mitres and dovetails against their numbers worked
// out by hand, and the finished solids against both.
func TestCornerForms(t *testing.T) {
	for _, c := range cornerPairs {
		t.Run(c.name, func(t *testing.T) {
			b := newRuled(t)
			c.build(b)
			cuts, low := b.lower()
			if len(low) != 1 {
				t.Fatalf("%d joints lowered", len(low))
			}
			got := [5]float64{mm3(low[0].Overlap), mm3(low[0].KeptA), mm3(low[0].KeptB), mm3(low[0].Neither), mm2(low[0].Contact)}
			for i, v := range [5]float64{c.want.overlap, c.want.keptA, c.want.keptB, c.want.neither, c.want.contact} {
				// Slopes are rounded to the nanometre.
				if math.Abs(got[i]-v) > 1e-3 {
					t.Errorf("number %d is %.6f, by hand %.6f", i, got[i], v)
				}
			}
			checkPartition(t, b, cuts, low[0])
			for _, d := range b.Ledger.Verify() {
				t.Error(d)
			}
		})
	}
}

// checkPartition holds the solids of a joint against its numbers.
func checkPartition(t *testing.T, b *builder, cuts []piece.Cut, low joinery.Lowered) {
	t.Helper()
	shapes := shape.New(&b.Piece, cuts, 8)
	sa, _ := shapes.Of(low.A)
	sb, _ := shapes.Of(low.B)
	body := -mm3(low.Overlap)
	for _, s := range []*shape.Shape{sa, sb} {
		if ok, why := s.Verified(); !ok {
			t.Fatalf("%s: %s", s.Part.Address, why)
		}
		body += s.Part.Length.Nm.Millimetres() * s.Part.Width.Nm.Millimetres() * s.Part.Thickness.Nm.Millimetres()
	}
	if got := sa.Solid.Volume() + sb.Solid.Volume() + mm3(low.Neither); math.Abs(got-body) > 1e-6*body {
		t.Errorf("|A'| + |B'| + neither = %.6f, |A ∪ B| = %.6f mm³", got, body)
	}
	// A nanometre of rounding over the mitre's face.
	if o := solid.Interference(sa.Placed(), sb.Placed()); o.Status != solid.Verified || o.Volume > 1e-2 || o.Depth > 1e-5 {
		t.Errorf("interference: %+v", o)
	}
	if touch := solid.Contact(sa.Placed(), sb.Placed()); touch.Status != solid.Verified || math.Abs(touch.Area-mm2(low.Contact)) > 2e-3 {
		t.Errorf("the solids touch over %.6f mm², by the joint %.6f", touch.Area, mm2(low.Contact))
	}
}

// randomCorner makes two boards that meet in a tongue, a mitre or a dovetail, all
// sizes random tenths of a millimetre.
func randomCorner(b *builder, r *rand.Rand) {
	between := func(lo, hi int64) int64 { return lo + r.Int64N(hi-lo+1) }
	ta, tb, high := between(90, 250), between(90, 250), between(300, 1500)
	frames := [2]piece.Frame{trial.SideLow, trial.SideHigh}
	left := []int64{0, ta}
	if r.IntN(2) == 0 {
		left = []int64{3000 - ta, 3000}
	}
	switch r.IntN(4) {
	case 0: // dovetail; A is the side
		lap := []int64{0, between(10, tb/2)}[r.IntN(2)]
		b.Part("a", frames[r.IntN(2)], left[0], left[1], lap, 3000, 0, high)
		b.Part("b", frontGrain, 0, 3000, 0, tb, 0, high)
		lean := between(5, 25)
		var row []int64
		rest := high - between(20, 60)
		row = append(row, high-rest)
		for rest > 200 {
			tail, pin := between(2*lean+31, 110), between(16, 60)
			row, rest = append(row, tail, pin), rest-tail-pin
		}
		row[len(row)-1] += rest
		b.Joint("j", piece.DovetailJoint, "a", "b", 0, func(j *piece.Joint) { j.Tails = tails(b, lean, lap, row...) })
	case 1: // mitre of a case
		b.Part("a", frames[r.IntN(2)], left[0], left[1], 0, 3000, 0, high)
		b.Part("b", frontGrain, 0, 3000, 0, tb, 0, high)
		b.Joint("j", piece.MitreJoint, "a", "b", 0, func(j *piece.Joint) {
			thin := min(ta, tb)
			if r.IntN(2) == 0 {
				j.Spline = &piece.Spline{Thickness: b.Fig("t", between(5, thin/4)), Depth: b.Fig("d", between(5, thin/3)), Heel: b.Fig("h", between(0, thin/4))}
			}
			if r.IntN(2) == 0 {
				d := float64(ta) * float64(tb) / math.Hypot(float64(ta), float64(tb))
				j.Keys = &piece.Keys{Thickness: b.Fig("t", between(10, 40)), Depth: b.Fig("d", between(10, int64(d))), At: []piece.Figure{b.Fig("at", between(30, 130)), b.Fig("at", between(180, 270))}}
				j.Spline = nil
			}
		})
	case 2: // mitre of a frame
		wa, wb := between(200, 900), between(200, 900)
		b.Part("a", frontGrain, 0, 3000, 0, ta, 4000-wa, 4000)
		b.Part("b", upright, 0, wb, 0, ta, 0, 4000)
		b.Joint("j", piece.MitreJoint, "a", "b", 0, func(j *piece.Joint) {
			if r.IntN(2) == 0 {
				j.Spline = &piece.Spline{Thickness: b.Fig("t", between(10, ta-10)), Depth: b.Fig("d", between(10, 150))}
			}
		})
	case 3: // sliding dovetail
		at := between(100, 3000)
		back, depth := between(500, 2000), between(20, tb-20)
		b.Part("b", grainUp, 0, tb, 0, back, 0, 4000)
		b.Part("a", grainRight, tb-depth, 3000, 0, back, at, at+ta)
		lean := between(3, ta/8)
		b.Joint("j", piece.SlidingJoint, "a", "b", depth, func(j *piece.Joint) {
			j.Slide = &piece.Slide{Neck: b.Fig("n", between(30, ta-2*lean)), Lean: b.Fig("l", lean), OneSide: r.IntN(2) == 0}
			if r.IntN(2) == 0 {
				j.StopLow = b.Fig("s", between(10, 200))
			}
		})
	}
}

// TestCornerLaws holds random corners against the laws of a joint, as solids.
func TestCornerLaws(t *testing.T) {
	r := seeded(t, 20261126)
	for n := range rounds(150) {
		b := newRuled(t)
		randomCorner(b, r)
		cuts, low := b.lower()
		if len(low) != 1 {
			t.Fatalf("corner %d: not lowered", n)
		}
		checkPartition(t, b, cuts, low[0])
		if t.Failed() {
			t.Fatalf("corner %d: %+v\n%+v\n%v", n, b.Piece.Parts, b.Piece.Joints, low)
		}
	}
}

// TestMitreNailed: pilot holes go through A's outer face and on into B, in line, on
// either hand.
func TestMitreNailed(t *testing.T) {
	for _, at := range []int64{0, 2880} {
		b := newRuled(t)
		b.Part("a", frontGrain, 0, 3000, 0, 120, 0, 1000)
		b.Part("b", sideGrain, at, at+120, 0, 2000, 0, 1000)
		b.Joint("j", piece.MitreJoint, "a", "b", 0, func(j *piece.Joint) {
			j.Fasteners = &piece.Fasteners{Kind: "panel pin 30", Count: 2, Margin: b.Fig("m", 250), Pilot: b.Fig("p", 15), Depth: b.Fig("d", 300)}
		})
		cuts, _ := b.lower()
		var got []string
		for _, c := range cuts {
			if c.Bore != nil {
				got = append(got, fmt.Sprintf("%s %s %v,%v deep %v %v", c.Part, c.Bore.Open, mm(c.Bore.At[0]), mm(c.Bore.At[1]), mm(c.Bore.Depth), c.Bore.Through))
			}
		}
		// A's outer face is its front, B's holes go in at its front end; the middle of the
		// corner is 6 from the end of A.
		from := 6.0
		if at > 0 {
			from = 294
		}
		want := []string{
			fmt.Sprintf("a face 2 %v,25 deep 12 true", from), "b end 1 25,6 deep 30 false",
			fmt.Sprintf("a face 2 %v,75 deep 12 true", from), "b end 1 75,6 deep 30 false",
		}
		if !slices.Equal(got, want) {
			t.Errorf("\n%q\n%q", got, want)
		}
	}
}

// TestCornerFaults: what cannot be made is said with a code and the two figures.
func TestCornerFaults(t *testing.T) {
	caseOf := func(b *builder, say func(j *piece.Joint)) {
		b.Part("a", frontGrain, 0, 3000, 0, 120, 0, 1000)
		b.Part("b", sideGrain, 0, 120, 0, 2000, 0, 1000)
		b.Joint("j", piece.MitreJoint, "a", "b", 0, say)
	}
	drawer := func(b *builder, front, side piece.Frame, row ...int64) {
		b.Part("a", side, 0, 100, 0, 3000, 0, 600)
		b.Part("b", front, 0, 2000, 0, 120, 0, 600)
		b.Joint("j", piece.DovetailJoint, "a", "b", 0, func(j *piece.Joint) { j.Tails = tails(b, 15, 0, row...) })
	}
	for _, c := range []struct {
		key   string
		code  diag.Code
		build func(b *builder)
	}{
		{"joint.key-comes-out-inside", joinery.CodeSlip, func(b *builder) { // 12 √2 = 16.97
			caseOf(b, func(j *piece.Joint) {
				j.Keys = &piece.Keys{Thickness: b.Fig("t", 30), Depth: b.Fig("d", 170), At: []piece.Figure{b.Fig("a", 500)}}
			})
		}},
		{"", "", func(b *builder) {
			caseOf(b, func(j *piece.Joint) {
				j.Keys = &piece.Keys{Thickness: b.Fig("t", 30), Depth: b.Fig("d", 169), At: []piece.Figure{b.Fig("a", 500)}}
			})
		}},
		{"joint.spline-breaks-out", joinery.CodeSlip, func(b *builder) { // 12 √2 - 10 = 6.97 square to the face
			caseOf(b, func(j *piece.Joint) {
				j.Spline = &piece.Spline{Thickness: b.Fig("t", 40), Depth: b.Fig("d", 70), Heel: b.Fig("h", 60)}
			})
		}},
		{"", "", func(b *builder) {
			caseOf(b, func(j *piece.Joint) {
				j.Spline = &piece.Spline{Thickness: b.Fig("t", 40), Depth: b.Fig("d", 69), Heel: b.Fig("h", 60)}
			})
		}},
		{"joint.spline-stopped-twice", joinery.CodeSlip, func(b *builder) {
			caseOf(b, func(j *piece.Joint) {
				j.Spline = &piece.Spline{Thickness: b.Fig("t", 40), Depth: b.Fig("d", 50), Heel: b.Fig("h", 20)}
				j.StopLow, j.StopHigh = b.Fig("s", 100), b.Fig("s", 100)
			})
		}},
		{"joint.fingers-need-end-grain", joinery.CodeGrain, func(b *builder) { drawer(b, upright, grainUp, 40, 240, 40, 240, 40) }},
		{"joint.short-grain", joinery.CodeGrain, func(b *builder) { drawer(b, upright, sideGrain, 40, 240, 40, 240, 40) }},
		{"joint.fingers-do-not-add-up", joinery.CodeFingers, func(b *builder) { drawer(b, frontGrain, sideGrain, 40, 240, 40, 241, 40) }},
		{"joint.pin-too-narrow", joinery.CodeTails, func(b *builder) { drawer(b, frontGrain, sideGrain, 40, 240, 14, 266, 40) }},
		{"joint.tail-too-narrow", joinery.CodeTails, func(b *builder) { drawer(b, frontGrain, sideGrain, 40, 59, 40, 421, 40) }},
		{"", "", func(b *builder) { drawer(b, frontGrain, sideGrain, 40, 60, 15, 445, 40) }},
	} {
		b := newRuled(t)
		c.build(b)
		_, low, faults := joinery.Lower(&b.Piece, b.Ledger)
		switch {
		case c.key == "" && (len(faults) > 0 || len(low) != 1):
			t.Errorf("%+v", faults)
		case c.key != "" && (len(faults) != 1 || faults[0].Text.Key != c.key || faults[0].Code != c.code):
			t.Errorf("%s: %+v", c.key, faults)
		}
	}
}
