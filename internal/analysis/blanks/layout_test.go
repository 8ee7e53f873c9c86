package blanks_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/analysis/blanks"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// widths prints sharings in tenths of a millimetre.
func widths(p blanks.Panels) string {
	var out [][]int64
	for _, s := range p.Sharings {
		var one []int64
		for _, w := range s.Widths {
			one = append(one, int64(w/tenth))
		}
		out = append(out, one)
	}
	return fmt.Sprint(out)
}

// TestSharings: how panels out of boards of 165 with a jointer of 150 may be shared
// out. 200 and twice 2.5 are 205; a board gives 148 when its strip is jointed, two
// abreast 76.5 (160 less a kerf of 3, halved, less twice 1).
func TestSharings(t *testing.T) {
	for _, c := range []struct {
		name  string
		width int64
		make  func(b *bench)
		want  string
	}{
		// 205 - 148 = 57 is left.
		{"nothing cut", 2000, func(*bench) {}, "[[1025 1025] [1480 570] [684 684 682]]"},
		// 185 - 148 = 37 is too narrow: the first gives way to 145, so that 40 are left.
		{"a rest that is too narrow", 1800, func(*bench) {}, "[[925 925] [1450 400] [617 617 616]]"},
		{"a saw that takes no less than 60", 1800, func(b *bench) { b.in.Limits.LeastRip = unit.MM(60) }, "[[925 925] [1270 580] [617 617 616]]"},
		{"two abreast, one more", 2500, func(*bench) {}, "[[1275 1275] [1480 1070] [638 638 638 636] [850 850 850]]"},
		// A rail of 30 has a blank of 35: 160 - 3 - 35 - 2 leave 120 beside it.
		{"room for a rail beside it", 2500, func(b *bench) { b.rail() }, "[[1275 1275] [1480 1070] [850 850 850] [638 638 638 636]]"},
		// From the low edge a joint at 145.5 would fall into the groove: it goes before it;
		// from the high edge nothing is in the way.
		{"a groove where the board ends", 2000, func(b *bench) { b.slot(1400, 1480) }, "[[1025 1025] [1375 675] [570 1480] [684 684 682]]"},
		// Lands in the middle at 50, 100 and 150: from either edge the widest ends at 100.
		{"a row with three lands", 2000, func(b *bench) { b.channels(4, 250, 500, 300) }, "[[1025 1025] [525 500 500 525] [525 1000 525]]"},
	} {
		b := newBench()
		b.row("A1", 1, 4000, c.width, 180)
		c.make(b)
		got := blanks.Choices(b.in)
		if len(got) != 1 || got[0].Mark != "A1" || got[0].Stock != "cherry 27" || got[0].Count != 1 {
			t.Errorf("%s: %+v", c.name, got)
			continue
		}
		if widths(got[0]) != c.want {
			t.Errorf("%s: %s, want %s", c.name, widths(got[0]), c.want)
		}
	}
}

// rail puts two blanks of 35 before the last row.
func (b *bench) rail() {
	b.row("B1", 2, 4000, 300, 180)
	slices.Reverse(b.in.Rows)
}

// TestJointsClearOfHoles: a joint keeps 5 from holes and recesses as from grooves; a
// hole into an edge or a socket in an end is no reason.
func TestJointsClearOfHoles(t *testing.T) {
	for _, c := range []struct {
		name   string
		cut    func(b *bench) piece.Cut
		joints string
	}{
		{"a hole in the face", func(b *bench) piece.Cut { return bore(b, piece.FaceHigh, 1020, 100) }, "[920]"},
		{"a dowel in the end", func(b *bench) piece.Cut { return bore(b, piece.EndLow, 980, 80) }, "[1070]"},
		{"a hole in the edge", func(b *bench) piece.Cut { return bore(b, piece.EdgeLow, 1000, 80) }, "[1000]"},
		{"a hinge's recess", func(b *bench) piece.Cut {
			return piece.Cut{Kind: piece.Recess, Slot: &piece.Slot{Open: piece.FaceHigh, Run: piece.AlongWidth, From: b.fig(900), To: b.fig(1020), Near: b.fig(0), Far: b.fig(300), Depth: b.fig(20)}}
		}, "[1070]"},
	} {
		b := newBench()
		b.row("A1", 1, 4000, 2000, 180)
		cut := c.cut(b)
		cut.Part = b.in.Rows[0].Members[0]
		b.in.Cuts = append(b.in.Cuts, cut)
		out, _ := b.derive(t)
		var joints []int64
		for _, j := range find(out, plan.PanelPiece)[0].Joints {
			joints = append(joints, tenths(j))
		}
		if fmt.Sprint(joints) != c.joints {
			t.Errorf("%s: %v, want %s", c.name, joints, c.joints)
		}
	}
}

func bore(b *bench, open piece.Side, across, diameter int64) piece.Cut {
	x := &piece.Bore{Open: open, Diameter: b.fig(diameter), Depth: b.fig(100)}
	x.At[0], x.At[1] = b.fig(across), b.fig(90)
	if axis, _ := open.Axis(); axis == piece.AlongThickness {
		x.At[0], x.At[1] = b.fig(2000), b.fig(across)
	}
	return piece.Cut{Kind: piece.Hole, Bore: x}
}

// TestLayoutLaws, over random panels in every way that they may be shared out: the laws
// of derive; joints clear of everything that is cut later, or in the middle of a land
// with none of it; strips as told, none narrower than may be, none that the boards do
// not give; and nothing entered in the ledger by asking.
func TestLayoutLaws(t *testing.T) {
	tried, full, lands := 0, 0, 0
	for seed := range uint64(300) {
		b := randomPanels(seed)
		entries := len(b.in.Ledger.Entries())
		choices := blanks.Choices(b.in)
		if n := len(b.in.Ledger.Entries()); n != entries {
			t.Errorf("seed %d: asking entered %d lines", seed, n-entries)
		}
		for _, p := range choices {
			for i, s := range p.Sharings {
				in := b.in
				in.Layouts = map[string]blanks.Layout{p.Mark: s.Layout}
				out, diags := blanks.Derive(in)
				for _, f := range b.laws(out, diags) {
					t.Errorf("seed %d, %+v: %s", seed, s.Layout, f)
				}
				tried++
				if s.Layout.Way != blanks.Equal {
					full++
				}
				for _, f := range asTold(b, out, p.Mark, s, i > 0) {
					t.Errorf("seed %d, %+v: %s", seed, s.Layout, f)
				}
				if len(b.in.Piece.Series) > 0 {
					lands++
				}
			}
		}
	}
	if tried < 400 || full < 100 || lands < 50 {
		t.Errorf("only %d ways, %d as wide as the boards give, %d on lands", tried, full, lands)
	}
}

func randomPanels(seed uint64) *bench {
	r := rand.New(rand.NewPCG(seed, 17))
	b := newBench()
	b.in.Stock[0].Width = unit.MM(80 + r.Int64N(150))
	b.in.Limits.LeastRip = unit.MM(r.Int64N(60))
	narrow := b.in.Stock[0]
	narrow.ID, narrow.Width = "cherry narrow", narrow.Width-unit.MM(10+r.Int64N(40))
	b.in.Stock = append(b.in.Stock, narrow)
	b.row("B1", 2, 4000, 300+r.Int64N(500), 150)
	width := 1000 + r.Int64N(5000)
	b.row("A1", 1+r.IntN(2), 1500+r.Int64N(8000), width, 150)
	if r.IntN(3) == 0 {
		pitch := 150 + r.Int64N(500)
		n := (width - 200) / pitch
		b.channels(n, (width-(n-1)*pitch)/2, pitch, pitch/4*2)
	}
	for range r.IntN(3) {
		at := r.Int64N(width - 60)
		b.slot(at, at+20+r.Int64N(40))
	}
	for range r.IntN(3) {
		cut := bore(b, piece.EndLow, 50+r.Int64N(width-100), 30+r.Int64N(90))
		cut.Part = b.in.Rows[1].Members[0]
		b.in.Cuts = append(b.in.Cuts, cut)
	}
	return b
}

// asTold lists what of a mark's first panel is not as its sharing says.
func asTold(b *bench, out []plan.Workpiece, mark string, s blanks.Sharing, other bool) []string {
	var faults []string
	panels := slices.DeleteFunc(find(out, plan.PanelPiece), func(w plan.Workpiece) bool { return w.Mark != mark })
	var got []unit.Length
	for _, w := range plan.StripsOf(out, panels[0]) {
		got = append(got, w.Width.Nm-2*b.in.Allowances.Strip.Nm)
	}
	if !slices.Equal(got, s.Widths) {
		faults = append(faults, fmt.Sprintf("strips of %v, told %v", got, s.Widths))
	}
	if other && slices.Min(got) < max(unit.MM(40), b.in.Limits.LeastRip-2*b.in.Allowances.Strip.Nm) {
		faults = append(faults, fmt.Sprintf("a strip of %v", slices.Min(got)))
	}
	onLands := len(b.in.Piece.Series) > 0
	for _, j := range panels[0].Joints {
		for _, c := range b.in.Cuts {
			if c.Part != panels[0].Parts[0] {
				continue
			}
			near, far := unit.Length(0), unit.Length(0)
			if c.Slot != nil {
				near, far = c.Slot.Near.Nm, c.Slot.Far.Nm
			} else {
				near, far = c.Bore.At[0].Nm-c.Bore.Diameter.Nm/2, c.Bore.At[0].Nm+c.Bore.Diameter.Nm/2
			}
			margin := unit.MM(5)
			if onLands {
				margin = 1 // a land may be narrower
			}
			if j.Nm > near-margin && j.Nm < far+margin {
				faults = append(faults, fmt.Sprintf("a joint at %v, a cut from %v to %v", j.Nm, near, far))
			}
		}
	}
	return faults
}
