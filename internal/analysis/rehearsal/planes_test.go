package rehearsal

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// plane adds a plane over the whole section: how much it leaves less of the part at
// the low corner, and how much more of that it takes over the other two axes.
func (b *bench) plane(on address.Address, kind piece.CutKind, off piece.Side, less, first, second unit.Length) {
	r := b.row(on)
	sizes := [3]piece.Figure{r.Length, r.Width, r.Thickness}
	axis, high := off.Axis()
	at := func(l unit.Length) piece.Figure {
		if high {
			l = sizes[axis].Nm - l
		}
		return b.fig(l)
	}
	s := piece.Slice{Off: off, At: [3]piece.Figure{at(less), at(less + first), at(less + second)}}
	k := 0
	for a := range piece.Local(3) {
		if a != axis {
			s.From[k], s.To[k] = b.fig(0), sizes[a]
			k++
		}
	}
	b.add(on, piece.Cut{Kind: kind, Slice: &s})
}

// leaningOn lists the placements that saw a plane by stop or fence.
func leaningOn(p *plan.Plan) []*plan.Placement {
	var out []*plan.Placement
	for i := range p.Setups {
		for j := range p.Setups[i].Placements {
			if q := &p.Setups[i].Placements[j]; isLeaning(*q) {
				out = append(out, q)
			}
		}
	}
	return out
}

// TestMitres: a frame's rail, a case's side, a compound angle. The settings of a 38
// degree moulding laid flat for a square corner are 31.6 and 33.9 degrees (tables of
// makers of saws; common practice).
func TestMitres(t *testing.T) {
	sin38, cos38 := math.Sin(38*math.Pi/180), math.Cos(38*math.Pi/180)
	for _, c := range []struct {
		name          string
		width         unit.Length
		first, second unit.Length
		swing, tilt   float64
		key           string
		stop          unit.Length
	}{
		{"frame", unit.MM(60), unit.MM(60), 0, 45, 0, "setups.lean.swing", unit.MM(400)},
		{"case", unit.MM(120), 0, unit.MM(20), 0, 45, "setups.lean.tilt", unit.MM(380)},
		{"moulding", unit.MM(100), unit.FromMillimetres(100 * sin38), unit.FromMillimetres(20 * cos38), 31.6, 33.9, "setups.lean.both-trails", 0},
	} {
		b := newBench()
		b.part("Z", 1, unit.MM(400), unit.MM(60), unit.MM(20))
		rail := b.part("A", 2, unit.MM(400), c.width, unit.MM(20))
		b.plane(rail, piece.Mitre, piece.EndHigh, 0, c.first, c.second)
		if c.first == 0 || c.second == 0 {
			b.plane(rail, piece.Mitre, piece.EndLow, 0, c.first, c.second)
		}
		p := b.plan(t)
		if findings, _ := b.rehearse(p); !passed(findings) {
			t.Errorf("%s: %s", c.name, say(findings))
		}
		list := leaningOn(p)
		if len(list) == 0 {
			t.Fatalf("%s: by hand", c.name)
		}
		for _, q := range list {
			swing, _ := q.Note.Arg("swing")
			tilt, _ := q.Note.Arg("tilt")
			if swing.X != c.swing || tilt.X != c.tilt {
				t.Errorf("%s: %s swing %v tilt %v, want %v and %v", c.name, q.Note.Key, swing.X, tilt.X, c.swing, c.tilt)
			}
			if stop, ok := setting(q.Settings, stopBlade); c.stop > 0 && (!ok || stop.Figure.Nm != c.stop || q.Note.Key != c.key) {
				t.Errorf("%s: stop %v, want %v; %s", c.name, stop.Figure.Nm, c.stop, q.Note.Key)
			}
		}
	}
}

// TestMitreSaw: without a table saw a frame's end goes to the mitre saw, an edge that
// leans to the hand; a blade that does not reach through at that tilt is not taken.
func TestMitreSaw(t *testing.T) {
	for most, want := range map[unit.Length]string{unit.MM(60): "mitre saw ", unit.MM(25): "hand "} {
		b := newBench()
		b.shop.Machines = slices.Clone(b.shop.Machines)
		b.shop.Machines[0] = tool.Machine{
			Name: "mitre saw", Kind: tool.MitreSaw, Kerf: tool.Stated("kerf", unit.MM(2)), Greatest: tool.Limits{Thickness: tool.Stated("most", most)},
		}
		b.part("Z", 1, unit.MM(400), unit.MM(60), unit.MM(20))
		a := b.part("A", 1, unit.MM(400), unit.MM(60), unit.MM(20))
		b.plane(a, piece.Mitre, piece.EndHigh, 0, 0, unit.MM(20)) // through 28.3
		b.plane(a, piece.Bevel, piece.EdgeHigh, 0, 0, unit.MM(5))
		p := b.plan(t)
		if findings, _ := b.rehearse(p); !passed(findings) {
			t.Error(say(findings))
		}
		got := machines(b, p)
		if !slices.Equal(got[piece.Mitre], []string{want}) || !slices.Equal(got[piece.Bevel], []string{"hand "}) {
			t.Errorf("reaching %d: %v", most, got)
		}
	}
}

// TestPlanesLaw: random planes off ends and edges are carried out, by saw or marked
// out; and no figure or angle of a card may be wrong by a tenth.
func TestPlanesLaw(t *testing.T) {
	const seed = 11
	rng := rand.New(rand.NewPCG(seed, 1))
	sawn, mutants := 0, 0
	for round := range 60 {
		b := newBench()
		b.part("Z", 1, unit.MM(400), unit.MM(60), unit.MM(20))
		width := unit.MM(40 + int64(rng.IntN(90)))
		a := b.part("A", 1, unit.MM(310+int64(rng.IntN(200))), width, unit.MM(14+int64(rng.IntN(8))))
		for _, off := range []piece.Side{piece.EndLow, piece.EndHigh} {
			less := unit.MM(70)
			first := unit.MM(int64(rng.IntN(120)) - 60)
			second := unit.MM(int64(rng.IntN(20)) - 10)
			switch rng.IntN(3) {
			case 0:
				first = 0
			case 1:
				second = 0
			}
			if least := min(0, first) + min(0, second); rng.IntN(2) == 0 {
				less = -least // up to the very corner
			}
			if first == 0 && second == 0 {
				second = unit.MM(5)
				less = 0
			}
			b.plane(a, piece.Compound, off, less, first, second)
		}
		if lean := unit.MM(int64(rng.IntN(16)) - 8); lean != 0 {
			b.plane(a, piece.Bevel, piece.EdgeHigh, max(0, -lean), 0, lean)
		}
		p := b.plan(t)
		if findings, _ := b.rehearse(p); !passed(findings) {
			t.Fatalf("seed %d round %d: %s", seed, round, say(findings))
		}
		for _, q := range leaningOn(p) {
			sawn++
			for i := range q.Settings {
				q.Settings[i].Figure.Nm += unit.Millimetre / 10
				if findings, _ := b.rehearse(p); passed(findings) {
					t.Errorf("seed %d round %d: %s may be wrong by 0.1", seed, round, q.Settings[i].Word)
				}
				q.Settings[i].Figure.Nm -= unit.Millimetre / 10
				mutants++
			}
			for i := range q.Note.Args {
				q.Note.Args[i].X += 0.1
				if findings, _ := b.rehearse(p); passed(findings) {
					t.Errorf("seed %d round %d: %s may be wrong by 0.1", seed, round, q.Note.Args[i].Name)
				}
				q.Note.Args[i].X -= 0.1
				mutants++
			}
			q.Down = q.Down.Opposite()
			if findings, _ := b.rehearse(p); passed(findings) {
				t.Errorf("seed %d round %d: the work may lie upside down", seed, round)
			}
			q.Down = q.Down.Opposite()
		}
	}
	if sawn < 40 {
		t.Errorf("only %d planes sawn", sawn)
	}
	t.Logf("%d planes sawn, %d mutants", sawn, mutants)
}

// TestTaper: a leg that loses 20 of 40 over its lower 140 goes to the band saw, to a
// line and a sled's two figures; none may be wrong by a tenth.
func TestTaper(t *testing.T) {
	b := newBench()
	b.part("Z", 1, unit.MM(400), unit.MM(60), unit.MM(20))
	leg := b.part("A", 4, unit.MM(400), unit.MM(40), unit.MM(20))
	row := b.row(leg)
	b.add(leg, piece.Cut{Kind: piece.Taper, Slice: &piece.Slice{
		Off: piece.EdgeHigh, From: [2]piece.Figure{b.fig(unit.MM(140)), b.fig(0)}, To: [2]piece.Figure{b.fig(0), row.Thickness},
		At: [3]piece.Figure{b.fig(unit.MM(40)), b.fig(unit.MM(20)), b.fig(unit.MM(40))},
	}})
	p := b.plan(t)
	if findings, _ := b.rehearse(p); !passed(findings) {
		t.Fatal(say(findings))
	}
	if got := machines(b, p)[piece.Taper]; len(got) != 1 || got[0] != "band saw " {
		t.Errorf("made by %q", got)
	}
	n := 0
	for i := range p.Setups {
		for k := range p.Setups[i].Placements {
			q := &p.Setups[i].Placements[k]
			if len(q.Cuts) == 0 {
				continue
			}
			for _, nm := range append(lengths(q.Note.Args), settingsOf(q.Settings)...) {
				*nm += unit.Millimetre / 10
				if findings, _ := b.rehearse(p); passed(findings) {
					t.Errorf("a figure may be wrong by 0.1: %v %v", q.Settings, q.Note)
				}
				*nm -= unit.Millimetre / 10
				n++
			}
		}
	}
	if n != 6 {
		t.Errorf("%d figures, want a line of four and a sled of two", n)
	}
}

func lengths(args []message.Arg) []*unit.Length {
	var out []*unit.Length
	for i := range args {
		out = append(out, &args[i].Nm)
	}
	return out
}

func settingsOf(list []plan.Setting) []*unit.Length {
	var out []*unit.Length
	for i := range list {
		out = append(out, &list[i].Figure.Nm)
	}
	return out
}
