package contents_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/contents"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/share"
	"scantling/internal/unit"
)

// tray is a tray with one channel to each rod: 300 long, its channels' radius and
// depth and the rods' diameters in hundredths of a millimetre.
func tray(radius, depth int64, rods ...int64) *trial.Builder {
	b := trial.New()
	b.Part("tray", trial.Tray, 0, 1760, 0, 3000, 0, 150)
	b.Piece.Contents = []piece.Contents{{Address: "contents.rods", Kind: "rod"}}
	b.Ledger.Learn(contents.Functions())
	fig := func(name string, hundredths int64) piece.Figure {
		return b.Ledger.Times(name, b.Fig(name, hundredths), 1, 10)
	}
	for i, d := range rods {
		at := int64(150 + 200*i)
		c := b.Slot("tray", fmt.Sprintf("channel[%d]", i+1), piece.Channel, piece.FaceHigh, piece.AlongLength, 0, 3000, at-30, at+30, 0, 0)
		c.Slot.Corner, c.Slot.Depth, c.Cutter = fig("radius", radius), fig("depth", depth), "round-nose"
		c.Series, c.Nth = "tray.channel", i+1
		b.Piece.Contents[0].Things = append(b.Piece.Contents[0].Things, piece.Thing{
			Key: fmt.Sprint(i + 1), Diameter: fig("rod", d), Length: b.Fig("length", 2500), In: "tray", Cut: c.Address,
		})
	}
	s := piece.Series{Address: "tray.channel", Part: "tray", Kind: piece.Channel, Across: piece.AlongWidth, Whole: b.Find("tray").Width}
	s.Terms = checktest.Terms(b, &s)
	b.Piece.Series = append(b.Piece.Series, s)
	return b
}

func derive(t testing.TB, b *trial.Builder) []plan.Held {
	t.Helper()
	held := contents.Derive(&b.Piece, b.Ledger)
	for _, h := range held {
		for _, f := range []piece.Figure{h.Depth, h.Sinks, h.Proud, h.Land, h.HeadFree} {
			if err := b.Ledger.VerifyFigure(f); err != nil {
				t.Errorf("%s: %v", h.Thing, err)
			}
		}
	}
	for _, d := range b.Ledger.Verify() {
		t.Error(d)
	}
	return held
}

// TestSeats: closed forms of the circle. A rod of the channel's own radius, or
// thinner, lies on the bottom: it sinks as deep as the channel is. One that is
// thicker rides on the edges of the mouth, at r - sqrt(r² - (m/2)²).
func TestSeats(t *testing.T) {
	for _, c := range []struct {
		name               string
		radius, depth, rod int64 // hundredths
		sinks, proud       string
	}{
		{"half of it in a channel of its own radius", 500, 500, 1000, "5", "5"},
		{"thinner: on the bottom", 500, 300, 600, "3", "3"},
		{"shallow", 500, 200, 1000, "2", "8"},
		{"deeper than the rod is thick", 500, 500, 400, "5", "-1"},
		// Radius 3, depth 1.8: the mouth is 2 sqrt(2·3·1.8 - 1.8²) = 5.4991; a rod of 5.8 rides no more.
		{"as thick as the channel is round", 300, 180, 600, "1.8", "4.2"},
		// 3-4-5: a channel of radius 3 to its full depth has a mouth of 6; a rod of 10 on it sinks 5 - 4 = 1.
		{"rides on the edges: 3, 4, 5", 300, 300, 1000, "1", "9"},
		// 5-12-13: a mouth of 10, a rod of 26 sinks 13 - 12 = 1.
		{"rides on the edges: 5, 12, 13", 500, 500, 2600, "1", "25"},
		// Handles of 25 across corners in a channel of 12.7 radius, 8 deep, stand 17 proud (common practice, no source).
		{"a handle of a gouge", 1270, 800, 2500, "8", "17"},
	} {
		held := derive(t, tray(c.radius, c.depth, c.rod))
		if len(held) != 1 {
			t.Errorf("%s: %d held", c.name, len(held))
			continue
		}
		if h := held[0]; h.Sinks.Nm != mm(c.sinks) || h.Proud.Nm != mm(c.proud) || h.Cutter != "round-nose" || h.Of != "contents.rods" {
			t.Errorf("%s: sinks %v, proud %v, want %s and %s", c.name, h.Sinks.Nm, h.Proud.Nm, c.sinks, c.proud)
		}
	}
}

func mm(s string) unit.Length {
	l, err := unit.Parse(s, unit.Millimetre)
	if err != nil {
		panic(err)
	}
	return l
}

// TestLands: the land beside a channel is the lesser of the two stretches of wood
// beside it, lands or margins.
func TestLands(t *testing.T) {
	held := derive(t, tray(300, 300, 600, 600, 600))
	// Mouths of 6 at a pitch of 20 from 15: margin 12, lands 14, margin 176 - 58.
	for i, want := range []int64{12, 14, 14} {
		if held[i].Land.Nm != unit.MM(want) {
			t.Errorf("land %d is %v, want %d", i+1, held[i].Land.Nm, want)
		}
	}
}

// TestSeatAgainstShare, over random rods and channels: the figure is that of
// package share, and it fits the circle: the rod touches the wood and does not cut
// into it, to the nanometre. The circle is checked in exact numbers.
func TestSeatAgainstShare(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 9))
		radius, rod := 50+r.Int64N(1000), 50+r.Int64N(2000)
		depth := 1 + r.Int64N(radius)
		held := derive(t, tray(radius, depth, rod))
		const hundredth = unit.Millimetre / 100
		g := share.Groove{Radius: unit.Length(radius) * hundredth, Depth: unit.Length(depth) * hundredth}
		want, err := g.Seat(unit.Length(rod) * hundredth)
		if err != nil || len(held) != 1 || held[0].Sinks.Nm != want.Sit || held[0].Proud.Nm != want.Proud {
			t.Fatalf("seed %d: %+v, want %+v (%v)", seed, held, want, err)
		}
		if !want.Rides {
			continue
		}
		// The edge of the mouth, (m/2)² = h(2R - h), lies on the rod's circle about
		// the height r - sinks: m²/4 + (r - sinks)² = r². In half nanometres.
		sq := func(x int64) *big.Int { return new(big.Int).Mul(big.NewInt(x), big.NewInt(x)) }
		h := int64(g.Depth)
		mouth := new(big.Int).Mul(big.NewInt(4*h), big.NewInt(2*int64(g.Radius)-h))
		at := func(sinks int64) int { // sign of how far the edge lies outside the circle
			up := int64(rod)*int64(hundredth) - 2*sinks
			return new(big.Int).Add(mouth, sq(up)).Cmp(sq(int64(rod) * int64(hundredth)))
		}
		if at(int64(want.Sit)+1) > 0 || at(int64(want.Sit)-1) < 0 {
			t.Errorf("seed %d: a rod of %d in a channel of %d, %d deep does not touch at %v", seed, rod, radius, depth, want.Sit)
		}
	}
}

// TestHeads: a head hangs in the trough at its end, clear by the trough's depth
// less what the rod sinks and half of what the head is thicker.
func TestHeads(t *testing.T) {
	for _, c := range []struct {
		name       string
		near, far  int64
		depth      int64
		head       int64
		low, found bool
		free       string
	}{
		{"at the low end", 0, 130, 65, 120, true, true, "0.5"}, // 6.5 - 3 - (12 - 6) / 2
		{"at the high end", 2870, 3000, 65, 120, false, true, "0.5"},
		{"too shallow a trough", 0, 130, 40, 120, true, true, "-2"},
		{"as thick as its rod", 0, 130, 65, 60, true, true, "3.5"},
		{"a hollow in the middle is no trough for heads", 1600, 2000, 65, 120, false, false, ""},
		{"no head", 0, 130, 65, 0, false, false, ""},
	} {
		b := tray(300, 300, 600)
		b.Slot("tray", "heads", piece.Trough, piece.FaceHigh, piece.AlongWidth, 0, 1760, c.near, c.far, c.depth, 0)
		thing := &b.Piece.Contents[0].Things[0]
		if c.head > 0 {
			thing.HeadWidth, thing.HeadLength = b.Fig("head", c.head), b.Fig("head length", 100)
		}
		h := derive(t, b)[0]
		if h.HeadLow != c.low || (h.HeadFree != piece.Figure{}) != c.found || c.found && h.HeadFree.Nm != mm(c.free) {
			t.Errorf("%s: low %v, free %v, want %v %s", c.name, h.HeadLow, h.HeadFree.Nm, c.low, c.free)
		}
		// The same by the formula that recipes use.
		if c.found && c.free[0] != '-' {
			need := share.TroughDepth(thing.HeadWidth.Nm, thing.Diameter.Nm, h.Sinks.Nm, h.HeadFree.Nm)
			if need != unit.Length(c.depth)*trial.Tenth {
				t.Errorf("%s: a trough of %v is wanted", c.name, need)
			}
		}
	}
}

// TestLeftOut: what has no channel is held nowhere.
func TestLeftOut(t *testing.T) {
	b := tray(300, 300, 600, 600, 600, 600)
	things := b.Piece.Contents[0].Things
	things[0].Cut = ""
	things[1].Cut = "tray.elsewhere"
	things[2].Diameter = b.Fig("none", 0)
	b.Piece.Cuts[3].Slot = nil
	if held := contents.Derive(&b.Piece, b.Ledger); len(held) != 0 {
		t.Errorf("%+v", held)
	}
}

// TestFunctions: the function behind the ledger refuses what it cannot take.
func TestFunctions(t *testing.T) {
	seat := contents.Functions()["seat of a rod"]
	l := unit.OfLength(unit.MM(3))
	for name, args := range map[string][]unit.Value{"too few": {l, l}, "a count": {l, l, unit.OfCount(2)}, "nought": {l, unit.OfLength(0), l}} {
		if v, err := seat(args); err == nil {
			t.Errorf("%s: %v", name, v)
		}
	}
}

func BenchmarkDerive(b *testing.B) {
	x := checktest.Chest()
	x.Ledger.Learn(contents.Functions())
	things := x.Piece.Contents[0].Things
	for len(x.Piece.Contents[0].Things) < 3000 {
		x.Piece.Contents[0].Things = append(x.Piece.Contents[0].Things, things...)
	}
	for b.Loop() {
		contents.Derive(&x.Piece, x.Ledger)
	}
	b.ReportMetric(float64(len(x.Piece.Contents[0].Things)), "things")
}
