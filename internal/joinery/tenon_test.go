package joinery_test

import (
	"math"
	"testing"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/geom/solid"
	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/shape"
)

// tenoned is a leg of 45 × 45 and a rail of 20 × 80 with its upper edge so far
// below the leg's top, entering the leg by a depth; all in tenths.
func tenoned(b *builder, top, depth int64, change func(j *piece.Joint)) {
	b.Part("leg", upright, 0, 450, 0, 450, 0, 4000)
	b.Part("rail", frontGrain, 450-depth, 3000, 100, 300, 3200-top, 4000-top)
	b.Joint("j", piece.TenonJoint, "rail", "leg", depth, change)
}

func (b *builder) tenon(from, thick, low, high int64) *piece.Tenon {
	return &piece.Tenon{Thickness: b.Fig("t", thick), From: b.Fig("f", from), Low: b.Fig("l", low), High: b.Fig("h", high)}
}

// corners is what lies outside the half circle at each end of a mortise 7 wide.
var corners = (2 - math.Pi/2) * 3.5 * 3.5

// tenonPairs are tenons with their closed forms; long is the contact of long grain.
var tenonPairs = []struct {
	name  string
	build func(b *builder)
	want  want
	long  float64
}{
	{
		// 30 × 20 × 80 into the leg; tenon 7 between shoulders 8 and 10: 30·7·62; glue
		// room 1.5·7·62; cheeks 2·30·62, edges 2·30·7, shoulders 20·80 - 7·62.
		name: "stopped",
		build: func(b *builder) {
			tenoned(b, 200, 300, func(j *piece.Joint) { j.Tenon, j.ClearDeep = b.tenon(65, 70, 80, 100), b.Fig("c", 15) })
		},
		want: want{48000, 13020, 34980, 651, 3720 + 420 + 1166}, long: 3720,
	},
	{
		// Through 45, shoulders 5 and 5: 45·7·70; cheeks 2·45·70, edges 2·45·7,
		// shoulders 20·80 - 7·70.
		name: "through",
		build: func(b *builder) {
			tenoned(b, 200, 450, func(j *piece.Joint) { j.Tenon = b.tenon(65, 70, 50, 50); j.Tenon.Through = true })
		},
		want: want{72000, 22050, 49950, 0, 6300 + 630 + 1110}, long: 6300,
	},
	{
		// Flush with the leg's top; shoulders 5 and 27, the upper one haunched 7 in:
		// 30·7·48 + 7·7·27; cheeks 2·30·48 + 2·7·27, edges 30·7 + 23·7, the haunch's
		// bottom 7·27, shoulders 20·80 - 7·48 - 7·27.
		name: "haunched",
		build: func(b *builder) {
			tenoned(b, 0, 300, func(j *piece.Joint) {
				j.Tenon, j.ClearDeep = b.tenon(65, 70, 50, 270), b.Fig("c", 15)
				j.Tenon.Haunch, j.Tenon.HaunchHigh = b.Fig("g", 70), true
			})
		},
		want: want{48000, 11403, 36597, 504, 3258 + 210 + 161 + 189 + 1075}, long: 3258,
	},
	{
		// One face bare: no cheek in front. 30·7·80 without shoulders at the edges.
		name: "bare-faced",
		build: func(b *builder) {
			tenoned(b, 200, 300, func(j *piece.Joint) { j.Tenon = b.tenon(0, 70, 0, 0) })
		},
		// Cheeks 2·30·80, edges 2·30·7, bottom 7·80, the one shoulder 13·80.
		want: want{48000, 16800, 31200, 0, 4800 + 420 + 560 + 1040}, long: 4800,
	},
	{
		// As the first, round: the corners go over to B; of the glue room too.
		name: "round",
		build: func(b *builder) {
			tenoned(b, 200, 300, func(j *piece.Joint) {
				j.Tenon, j.ClearDeep = b.tenon(65, 70, 80, 100), b.Fig("c", 15)
				j.Tenon.Round = true
			})
		},
		// Cheeks 2·30·(62 - 7), half circles 2·π 3.5·30, shoulders 1166 and the corners.
		want: want{48000, 13020 - 60*corners, 34980 + 60*corners, 651 - 3*corners, 3300 + 210*math.Pi + 1166 + 2*corners}, long: 3300,
	},
	{
		// As the third, round: at the haunch the corners go over for 23 only, and stay
		// the tenon's for the haunch's 7.
		name: "round and haunched",
		build: func(b *builder) {
			tenoned(b, 0, 300, func(j *piece.Joint) {
				j.Tenon, j.ClearDeep = b.tenon(65, 70, 50, 270), b.Fig("c", 15)
				j.Tenon.Haunch, j.Tenon.HaunchHigh, j.Tenon.Round = b.Fig("g", 70), true, true
			})
		},
		want: want{48000, 11403 - 53*corners, 36597 + 53*corners, 504 - 3*corners,
			3258 - 53*7 + 53*3.5*math.Pi + 189 + 1075 + 2*corners}, long: 3258 - 53*7,
	},
	{
		// A frame's corner: rail 50 and stile 60 wide, 21 thick, in thirds: 60·7·50;
		// flats 2·60·50, the slot's bottom 60·7, the fork on the shoulders 2·7·50.
		name: "bridle at a corner",
		build: func(b *builder) {
			b.Part("rail", frontGrain, 0, 3000, 0, 210, 0, 500)
			b.Part("stile", upright, 0, 600, 0, 210, 0, 4000)
			b.Joint("j", piece.BridleJoint, "rail", "stile", 0, func(j *piece.Joint) { j.Tenon = b.tenon(70, 70, 0, 0) })
		},
		want: want{63000, 21000, 42000, 0, 6000 + 420 + 700}, long: 6000,
	},
	{
		// A post under the middle of a rail: two shoulders to each cheek.
		name: "bridle in the middle",
		build: func(b *builder) {
			b.Part("rail", frontGrain, 0, 3000, 0, 210, 4000, 4500)
			b.Part("post", upright, 1000, 1600, 0, 210, 0, 4500)
			b.Joint("j", piece.BridleJoint, "rail", "post", 0, func(j *piece.Joint) { j.Tenon = b.tenon(70, 70, 0, 0) })
		},
		want: want{63000, 21000, 42000, 0, 6000 + 420 + 1400}, long: 6000,
	},
}

// TestTenons holds tenons and bridles against their numbers worked out by hand,
// those with square ends against an exact count of cells, all against the solids.
func TestTenons(t *testing.T) {
	for _, c := range tenonPairs {
		t.Run(c.name, func(t *testing.T) {
			b := newBuilder(t)
			c.build(b)
			cuts, low := b.lower()
			if len(low) != 1 {
				t.Fatalf("%d joints lowered", len(low))
			}
			for _, n := range [][2]float64{
				{mm3(low[0].Overlap), c.want.overlap}, {mm3(low[0].KeptA), c.want.keptA}, {mm3(low[0].KeptB), c.want.keptB},
				{mm3(low[0].Neither), c.want.neither}, {mm2(low[0].Contact), c.want.contact}, {mm2(low[0].LongGrain), c.long},
			} {
				if math.Abs(n[0]-n[1]) > 1e-9*math.Max(1, n[1]) {
					t.Errorf("is %v, by hand %v; %+v", n[0], n[1], c.want)
				}
			}
			if round := b.Piece.Joints[0].Tenon.Round; !round {
				checkPair(t, b, cuts, low[0])
			}
			checkSolids(t, b, cuts, low[0])
			for _, d := range b.Ledger.Verify() {
				t.Error(d)
			}
		})
	}
}

// TestLooseTenons: the mortises of both parts are in line, with half circles at
// their ends; the row's numbers.
func TestLooseTenons(t *testing.T) {
	b := newBuilder(t)
	b.Part("rail", frontGrain, 400, 3000, 100, 300, 4000, 5200)
	b.Part("leg", upright, 0, 400, 0, 400, 0, 6000)
	b.Joint("j", piece.LooseJoint, "rail", "leg", 0, func(j *piece.Joint) {
		j.Loose = &piece.Loose{Thickness: b.Fig("t", 60), Width: b.Fig("w", 240), Count: 2, Margin: b.Fig("m", 250), InA: b.Fig("a", 250), InB: b.Fig("b", 200)}
	})
	cuts, low := b.lower()
	if len(low) != 1 || len(cuts) != 4 {
		t.Fatalf("%d joints, %d cuts", len(low), len(cuts))
	}
	// The rail's end 20 × 120; two tenons with two flats of 24 - 6 over 20.
	if a, l := mm2(low[0].Contact), mm2(low[0].LongGrain); a != 2400 || l != 4*18*20 {
		t.Errorf("contact %v, long grain %v", a, l)
	}
	for _, c := range cuts {
		s, depth := c.Slot, map[address.Address]float64{"rail": 25, "leg": 20}[c.Part]
		if c.Kind != piece.Mortise || mm(s.EndRadius) != 3 || mm(s.Depth) != depth || mm(s.To)-mm(s.From) != 24 || mm(s.Far)-mm(s.Near) != 6 {
			t.Errorf("%s: %+v", c.Address, *s)
		}
	}
	// Each mortise takes a slot of 24 × 6 with half circles at its ends.
	shapes, slot := shape.New(&b.Piece, cuts, 16), 18*6+math.Pi*9
	rail, _ := shapes.Of("rail")
	leg, _ := shapes.Of("leg")
	for _, c := range []struct {
		s    *shape.Shape
		want float64
	}{{rail, 260*20*120 - 2*25*slot}, {leg, 40*40*600 - 2*20*slot}} {
		if v := c.s.Solid.Volume(); math.Abs(v-c.want) > 1e-6*c.want {
			t.Errorf("%s has %v mm³, by hand %v", c.s.Part.Address, v, c.want)
		}
	}
	if o := solid.Interference(rail.Placed(), leg.Placed()); o.Status != solid.Verified || o.Volume > 1e-6 {
		t.Errorf("interference: %+v", o)
	}
}

// TestTwoTenonsInALeg: aprons at right angles whose tenons meet in a leg are an
// error until one says that it goes over the other; that one stays whole, and no
// wood is left to both.
func TestTwoTenonsInALeg(t *testing.T) {
	mitred := false
	build := func(depth int64, over ...address.Address) *builder {
		b := newBuilder(t)
		b.Part("leg", upright, 0, 450, 0, 450, 0, 4000)
		b.Part("front", frontGrain, 450-300, 3000, 100, 300, 3000, 3800)
		b.Part("side", sideGrain, 100, 300, 450-depth, 3000, 3000, 3800)
		b.Joint("a", piece.TenonJoint, "front", "leg", 300, func(j *piece.Joint) { j.Tenon, j.Over = b.tenon(65, 70, 80, 100), over })
		b.Joint("b", piece.TenonJoint, "side", "leg", depth, func(j *piece.Joint) { j.Tenon = b.tenon(65, 70, 80, 100) })
		for i := range b.Piece.Joints {
			b.Piece.Joints[i].Tenon.Mitred = mitred
		}
		return b
	}
	b := build(250)
	if _, _, faults := joinery.Lower(&b.Piece, b.Ledger); len(faults) != 1 || faults[0].Code != joinery.CodeClaims {
		t.Errorf("faults: %+v", faults)
	}
	b = build(250, "b")
	cuts, _ := b.lower()
	if at := shared(b, cuts); at != "" {
		t.Errorf("two parts have wood at %s", at)
	}
	// Mitred, both give way: as solids they touch along the mitre, each short of its
	// corner (a 45 × 45 leg, tenons 7 thick at 16.5 from the front and the left).
	mitred = true
	for _, depth := range []int64{285, 250, 400} {
		b = build(depth)
		cuts, low := b.lower()
		shapes := shape.New(&b.Piece, cuts, 8)
		front, _ := shapes.Of("front")
		side, _ := shapes.Of("side")
		leg, _ := shapes.Of("leg")
		for _, p := range [][2]*shape.Shape{{front, side}, {front, leg}, {side, leg}} {
			if o := solid.Interference(p[0].Placed(), p[1].Placed()); o.Status != solid.Verified || o.Volume > 1e-6 {
				t.Errorf("%d: %s and %s share %+v", depth, p[0].Part.Address, p[1].Part.Address, o)
			}
		}
		if depth != 285 {
			continue
		}
		// The tenons reach to 15 and 16.5 of the leg; they meet over 7 × 7 × 62, of which
		// each loses half; the front's loses what is beyond, 1.5 × 7 × 62, as well.
		body := 285*20*80 - mm3(low[0].KeptB)
		if v, want := front.Solid.Volume(), body-62*(49.0/2+1.5*7); math.Abs(v-want) > 1e-6*want {
			t.Errorf("the front rail has %v mm³, by hand %v", v, want)
		}
	}
	mitred = false
	// A tenon that goes on beyond the other would be cut in two.
	b = build(400, "b")
	if _, _, faults := joinery.Lower(&b.Piece, b.Ledger); !coded(faults, joinery.CodeTenon, diag.Error) {
		t.Errorf("faults: %+v", faults)
	}
}

func coded(faults diag.List, code diag.Code, severity diag.Severity) bool {
	for _, f := range faults {
		if f.Code == code && f.Severity == severity {
			return true
		}
	}
	return false
}

// TestTenonFaults: one mistake each, told by its text.
func TestTenonFaults(t *testing.T) {
	tenon := func(top, depth int64, change func(b *builder, j *piece.Joint)) func(b *builder) {
		return func(b *builder) {
			tenoned(b, top, depth, func(j *piece.Joint) { j.Tenon = b.tenon(65, 70, 80, 100); change(b, j) })
		}
	}
	keep := func(*builder, *piece.Joint) {}
	bridle := func(of [6]int64, change func(b *builder, j *piece.Joint)) func(b *builder) {
		return func(b *builder) {
			b.Part("rail", frontGrain, 0, 3000, 0, 210, 0, 500)
			b.Part("stile", upright, of[:]...)
			b.Joint("j", piece.BridleJoint, "rail", "stile", 0, func(j *piece.Joint) { j.Tenon = b.tenon(70, 70, 0, 0); change(b, j) })
		}
	}
	loose := func(change func(b *builder, l *piece.Loose)) func(b *builder) {
		return func(b *builder) {
			b.Part("rail", frontGrain, 400, 3000, 100, 300, 4000, 4600)
			b.Part("leg", upright, 0, 400, 0, 400, 0, 5000)
			b.Joint("j", piece.LooseJoint, "rail", "leg", 0, func(j *piece.Joint) {
				j.Loose = &piece.Loose{Thickness: b.Fig("t", 60), Width: b.Fig("w", 240), Count: 1, InA: b.Fig("a", 250), InB: b.Fig("b", 200)}
				change(b, j.Loose)
			})
		}
	}
	screwed := func(change func(b *builder, f *piece.Fasteners)) func(b *builder) {
		return func(b *builder) {
			b.Part("upper", grainRight, 0, 2000, 0, 300, 200, 340)
			b.Part("lower", grainRight, 0, 2000, 0, 300, 0, 200)
			b.Joint("j", piece.ButtJoint, "upper", "lower", 0, func(j *piece.Joint) {
				j.Fasteners = &piece.Fasteners{
					Kind: "screw 4 x 30", Count: 2, Margin: b.Fig("m", 300), Pilot: b.Fig("p", 20), Depth: b.Fig("d", 300), Clearance: b.Fig("c", 45),
					Sink: &piece.Sink{Diameter: b.Fig("s", 90), Depth: b.Fig("s", 20)},
				}
				change(b, j.Fasteners)
			})
		}
	}
	for _, c := range []struct {
		key   string
		build func(b *builder)
	}{
		{"joint.no-tenon", tenon(200, 300, func(_ *builder, j *piece.Joint) { j.Tenon = nil })},
		{"joint.tenon-too-thick", tenon(200, 300, func(b *builder, j *piece.Joint) { j.Tenon = b.tenon(140, 70, 80, 80) })},
		{"joint.shoulders-leave-nothing", tenon(200, 300, func(b *builder, j *piece.Joint) { j.Tenon = b.tenon(65, 70, 400, 400) })},
		{"joint.haunch-too-long", tenon(0, 300, func(b *builder, j *piece.Joint) { j.Tenon.Haunch, j.Tenon.HaunchHigh = b.Fig("g", 300), true })},
		{"joint.haunch-without-shoulder", tenon(200, 300, func(b *builder, j *piece.Joint) {
			j.Tenon.High = piece.Figure{}
			j.Tenon.Haunch, j.Tenon.HaunchHigh = b.Fig("g", 70), true
		})},
		{"joint.round-tenon-narrow", tenon(200, 300, func(b *builder, j *piece.Joint) { j.Tenon = b.tenon(65, 70, 400, 340); j.Tenon.Round = true })},
		{"joint.tenon-not-through", tenon(200, 300, func(_ *builder, j *piece.Joint) { j.Tenon.Through = true })},
		{"joint.mortise-comes-out", tenon(200, 450, keep)},
		{"joint.mortise-comes-out", tenon(200, 440, func(b *builder, j *piece.Joint) { j.ClearDeep = b.Fig("c", 10) })},
		{"joint.too-deep", tenon(200, 500, keep)},
		{"joint.tenon-clear-across", tenon(200, 300, func(b *builder, j *piece.Joint) { j.ClearAcross = b.Fig("c", 2) })},
		{"joint.mortise-runs-out", tenon(0, 300, func(b *builder, j *piece.Joint) { j.Tenon = b.tenon(65, 70, 80, 0) })},
		{"joint.mortise-near-end", tenon(0, 300, func(b *builder, j *piece.Joint) { j.Tenon = b.tenon(65, 70, 80, 50) })},
		{"joint.mortise-deep", tenon(200, 430, keep)},
		{"joint.mortise-across", func(b *builder) {
			b.Part("side", grainUp, 0, 180, 0, 2000, 0, 4000)
			b.Part("shelf", grainRight, 60, 3000, 500, 1500, 2000, 2180)
			b.Joint("j", piece.TenonJoint, "shelf", "side", 120, func(j *piece.Joint) { j.Tenon = b.tenon(60, 60, 100, 100) })
		}},
		{"joint.mortise-open", func(b *builder) {
			b.Part("leg", upright, 0, 450, 0, 450, 0, 4000)
			b.Part("rail", frontGrain, 150, 3000, 0, 200, 3000, 3800)
			b.Joint("j", piece.TenonJoint, "rail", "leg", 300, func(j *piece.Joint) { j.Tenon = b.tenon(0, 70, 80, 80) })
		}},
		{"joint.mortise-thin", func(b *builder) {
			b.Part("leg", upright, 0, 450, 0, 450, 0, 4000)
			b.Part("rail", frontGrain, 150, 3000, 0, 200, 3000, 3800)
			b.Joint("j", piece.TenonJoint, "rail", "leg", 300, func(j *piece.Joint) { j.Tenon = b.tenon(40, 70, 80, 80) })
		}},
		{"joint.tenon-overhangs", func(b *builder) {
			b.Part("leg", upright, 0, 450, 0, 450, 0, 4000)
			b.Part("rail", frontGrain, 150, 3000, 300, 500, 3000, 3800)
			b.Joint("j", piece.TenonJoint, "rail", "leg", 300, func(j *piece.Joint) { j.Tenon = b.tenon(65, 70, 80, 80) })
		}},
		{"joint.tenon-needs-end-grain", func(b *builder) {
			b.Part("leg", upright, 0, 450, 0, 450, 0, 4000)
			b.Part("panel", upright, 150, 3000, 100, 300, 500, 3800)
			b.Joint("j", piece.TenonJoint, "panel", "leg", 300, func(j *piece.Joint) { j.Tenon = b.tenon(65, 70, 80, 80) })
		}},
		{"joint.no-tenon", bridle([6]int64{0, 600, 0, 210, 0, 4000}, func(_ *builder, j *piece.Joint) { j.Tenon = nil })},
		{"joint.bridle-needs-end", bridle([6]int64{0, 600, 0, 210, -500, 4000}, keep)},
		{"joint.bridle-no-fork", bridle([6]int64{0, 600, 0, 210, 0, 4000}, func(b *builder, j *piece.Joint) { j.Tenon = b.tenon(0, 70, 0, 0) })},
		{"joint.tenon-too-thick", bridle([6]int64{0, 600, 0, 210, 0, 4000}, func(b *builder, j *piece.Joint) { j.Tenon = b.tenon(70, 150, 0, 0) })},
		{"joint.tenon-overhangs", bridle([6]int64{0, 600, 0, 180, 0, 4000}, keep)},
		{"joint.no-loose", loose(func(b *builder, l *piece.Loose) { l.Width = b.Fig("w", 50) })},
		{"joint.loose-too-thick", loose(func(b *builder, l *piece.Loose) { l.Thickness = b.Fig("w", 200) })},
		{"joint.loose-too-long", loose(func(b *builder, l *piece.Loose) { l.InB = b.Fig("w", 400) })},
		{"joint.no-room-for-row", loose(func(b *builder, l *piece.Loose) { l.Width = b.Fig("w", 600) })},
		{"joint.mortise-thin", loose(func(b *builder, l *piece.Loose) { l.Thickness = b.Fig("w", 150) })},
		{"joint.sink-too-deep", screwed(func(b *builder, f *piece.Fasteners) { f.Sink.Depth = b.Fig("s", 140) })},
		{"joint.hole-too-wide", screwed(func(b *builder, f *piece.Fasteners) { f.Sink.Diameter = b.Fig("s", 310) })},
		{"joint.hole-too-wide", screwed(func(b *builder, f *piece.Fasteners) { f.Pilot = b.Fig("s", 310) })},
		{"joint.screw-comes-out", screwed(func(b *builder, f *piece.Fasteners) { f.Depth = b.Fig("s", 340) })},
		{"joint.pilot-too-short", screwed(func(b *builder, f *piece.Fasteners) { f.Depth = b.Fig("s", 140) })},
		{"joint.tilted", func(b *builder) {
			tenoned(b, 200, 300, func(j *piece.Joint) { j.Tenon = b.tenon(65, 70, 80, 100) })
			b.Find("leg").Tilt = &piece.Tilt{About: piece.Back, Degrees: 5}
		}},
	} {
		b := newBuilder(t)
		c.build(b)
		_, low, faults := joinery.Lower(&b.Piece, b.Ledger)
		if len(faults) != 1 || faults[0].Text.Key != c.key {
			t.Errorf("%s: %+v", c.key, faults)
			continue
		}
		if made := len(low) > 0; made == (faults[0].Severity == diag.Error) {
			t.Errorf("%s: %s, and %d joints made", c.key, faults[0].Severity, len(low))
		}
	}
}

// TestTiltedAlike: parts that are turned by the same angle meet as they are drawn.
func TestTiltedAlike(t *testing.T) {
	b := newBuilder(t)
	tenoned(b, 200, 300, func(j *piece.Joint) { j.Tenon = b.tenon(65, 70, 80, 100) })
	for _, name := range []string{"leg", "rail"} {
		b.Find(name).Tilt = &piece.Tilt{About: piece.Back, Degrees: 5}
	}
	cuts, low := b.lower()
	checkSolids(t, b, cuts, low[0])
}
