package apart_test

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/apart"
	"scantling/internal/document"
	"scantling/internal/evaluate"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/joinery"
	"scantling/internal/outside"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shape"
)

// scene is a piece taken apart, with its shapes.
type scene struct {
	piece  *piece.Piece
	shapes *shape.Shapes
	apart.Taken
}

func taken(b *trial.Builder) scene {
	cuts, lowered, _ := joinery.Lower(&b.Piece, b.Ledger)
	s := shape.New(&b.Piece, cuts, shape.DrawingFacets)
	return scene{&b.Piece, s, apart.Of(&b.Piece, lowered, s, b.Ledger)}
}

func read(t testing.TB, folder, name, shop string) scene {
	t.Helper()
	source := func(name string) document.Source {
		text, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		return document.Source{Name: name, Text: text}
	}
	src := evaluate.Sources{Document: source(name)}
	if shop != "" {
		src.Shop = source(shop)
	}
	r := evaluate.Piece(src)
	cuts, lowered, faults := joinery.Lower(r.Piece, r.Ledger)
	for _, d := range append(r.Diagnostics, faults...) {
		t.Errorf("%s %v", d.Code, d.Text)
	}
	s := shape.New(r.Piece, cuts, shape.DrawingFacets)
	return scene{r.Piece, s, apart.Of(r.Piece, lowered, s, r.Ledger)}
}

// open reports that all of the scene comes apart for certain.
func (s scene) open(t *testing.T) {
	t.Helper()
	for _, g := range s.Groups {
		for _, r := range g.Locked {
			t.Errorf("%q: %v lock each other (sure %v): %v", g.Address, r.Members, r.Sure, r.Blocks)
		}
		if len(g.Unsure) > 0 || g.TooMany || g.TooMuch {
			t.Errorf("%q: %+v", g.Address, g)
		}
	}
}

func (s scene) under(a address.Address) []int {
	var out []int
	for i := range s.piece.Parts {
		if a.Has(s.piece.Parts[i].Address) || a == s.piece.Parts[i].Address {
			out = append(out, i)
		}
	}
	return out
}

// together puts every group together again, backwards through its removals: it
// places what is taken where it was taken to, and moves it home in steps; nothing
// may be deeper in what is there than it is at home.
func (s scene) together(t *testing.T, steps int) {
	t.Helper()
	for _, r := range s.Removals {
		moved := map[int]bool{}
		for _, a := range r.Taken {
			for _, i := range s.under(a) {
				moved[i] = true
			}
		}
		for _, k := range s.restOf(r) {
			for i := range moved {
				s.slide(t, r, i, k, steps)
			}
		}
	}
}

// restOf returns the parts from which a removal takes: those in the same
// gathering that are not yet taken.
func (s scene) restOf(r plan.Removal) []int {
	block := map[address.Address]int{}
	next := 0
	for _, x := range s.Removals {
		if x.Group != r.Group {
			continue
		}
		next++
		from := -1
		if len(x.Taken) > 0 {
			from = block[x.Taken[0]]
		}
		if slices.Equal(x.Taken, r.Taken) && x.Along == r.Along && x.Far == r.Far {
			var rest []int
			for i := range s.piece.Parts {
				m, ok := s.memberOf(r.Group, i)
				if ok && block[m] == from && !slices.Contains(r.Taken, m) {
					rest = append(rest, i)
				}
			}
			return rest
		}
		for _, a := range x.Taken {
			block[a] = next
		}
	}
	return nil
}

func (s scene) memberOf(group address.Address, part int) (address.Address, bool) {
	p := &s.piece.Parts[part]
	if p.Group == group {
		return p.Address, true
	}
	for g := p.Group; g != ""; {
		up, found := address.Address(""), false
		for i := range s.piece.Groups {
			if s.piece.Groups[i].Address == g {
				up, found = s.piece.Groups[i].Parent, true
			}
		}
		if found && up == group {
			return g, true
		}
		if !found {
			break
		}
		g = up
	}
	return "", false
}

func (s scene) slide(t *testing.T, r plan.Removal, i, k, steps int) {
	t.Helper()
	a, b := s.shapes.At(i).Placed(), s.shapes.At(k).Placed()
	along := vec.V3{X: r.Along[0], Y: r.Along[1], Z: r.Along[2]}
	home := solid.Interference(a, b).Depth
	for n := 1; n <= steps; n++ {
		at := a
		at.Frame.Origin = a.Frame.Origin.Add(along.Mul(float64(r.Far.Nm.Millimetres() * float64(n) / float64(steps))))
		o := solid.Interference(at, b)
		if o.Status == solid.Verified && o.Depth > home+2e-3 && o.Volume > 1e-6 {
			t.Errorf("%v towards %v by %v: at %d/%d %s is %.4g mm in %s", r.Taken, r.Along, r.Far.Nm, n, steps, s.piece.Parts[i].Address, o.Depth, s.piece.Parts[k].Address)
			return
		}
	}
}

// TestEveryJointComesApart: each document of a joint, and of every cut, slides apart
// and together again without wood in wood.
func TestEveryJointComesApart(t *testing.T) {
	folder := filepath.Join(outside.Root(), "docs", "joints")
	names, err := filepath.Glob(filepath.Join(folder, "*.piece.hcl"))
	if err != nil || len(names) < 30 {
		t.Fatal(names, err)
	}
	for _, path := range names {
		name := filepath.Base(path)
		t.Run(strings.TrimSuffix(name, ".piece.hcl"), func(t *testing.T) {
			s := read(t, folder, name, "")
			s.open(t)
			s.together(t, 7)
			for _, r := range s.Removals {
				t.Logf("%v %s %v by %v", r.Taken, r.Way, r.Along, r.Far.Nm)
			}
		})
	}
}

// TestWays: which way joints let go, by the joiner's rule and not by the kernel: a
// dovetail along the thickness of the pins' board, dowels along themselves, a
// dovetailed shelf stopped at the front to the back, or its side to the front.
func TestWays(t *testing.T) {
	folder := filepath.Join(outside.Root(), "docs", "joints")
	for name, want := range map[string][]piece.Direction{
		"sliding": {piece.ToBack, piece.ToFront},
		"dowel":   {piece.ToRight, piece.ToLeft},
		"loose":   {piece.ToRight, piece.ToLeft},
		"tenon":   {piece.ToRight, piece.ToLeft},
	} {
		s := read(t, folder, name+".piece.hcl", "")
		if len(s.Removals) != 1 || !slices.Contains(want, s.Removals[0].Way) {
			t.Errorf("%s: %+v, want one of %v", name, s.Removals, want)
		}
	}
}

// TestPieces: drawers, a carcase, a chest, a rack and the demonstration piece.
func TestPieces(t *testing.T) {
	scenes := map[string]scene{
		"drawer": taken(trial.Drawer(80, 50, 40)), "carcase": taken(trial.Carcase(70, 70, 47)), "chest": taken(trial.Chest()),
		"demonstration": read(t, filepath.Join(outside.Root(), "examples", "needle-chest"), "needle-chest.piece.hcl", "shop.hcl"),
	}
	for name, s := range scenes {
		t.Run(name, func(t *testing.T) {
			s.open(t)
			s.together(t, 5)
			t.Logf("%d looks, %d sweeps, %d removals", s.Looks, s.Sweeps, len(s.Removals))
		})
	}
}

// tray is a bottom in grooves of all four sides; closed holds the sides together
// as one group, so that the bottom would have to come out of a closed ring.
func tray(closed bool) *trial.Builder {
	b := trial.New()
	b.Part("left", trial.LeftSide, 0, 100, 0, 1000, 0, 500)
	b.Part("right", trial.RightSide, 900, 1000, 0, 1000, 0, 500)
	b.Part("front", trial.Front, 100, 900, 0, 100, 0, 500)
	b.Part("back", trial.BackPanel, 100, 900, 900, 1000, 0, 500)
	b.Part("bottom", trial.GrainRight, 60, 940, 60, 940, 50, 100)
	for _, side := range []string{"left", "right", "front", "back"} {
		b.Joint("joint."+side, piece.GrooveJoint, "bottom", side, 40, nil)
	}
	if closed {
		b.Group("frame", "")
		for i := range b.Piece.Parts {
			if p := &b.Piece.Parts[i]; p.Address != "bottom" {
				p.Group = "frame"
			}
		}
	}
	return b
}

// TestTrapped: a bottom in grooves goes in before the last side, and never into
// four that are already joined.
func TestTrapped(t *testing.T) {
	taken(tray(false)).open(t)
	s := taken(tray(true))
	var locked []apart.Ring
	for _, g := range s.Groups {
		locked = append(locked, g.Locked...)
	}
	if len(locked) != 1 || len(locked[0].Members) != 2 || !locked[0].Sure || len(locked[0].Blocks) != 6 {
		t.Fatalf("%+v", locked)
	}
}

// TestSmallest: of a plate, a bar through it that is thicker at both ends, and three
// loose boards, only the first two lock each other.
func TestSmallest(t *testing.T) {
	b := trial.New()
	for i, name := range []string{"one", "two", "three"} {
		b.Part(name, trial.GrainRight, 0, 1000, 0, 1000, 2000+int64(i)*100, 2100+int64(i)*100)
	}
	b.Part("plate", trial.GrainRight, 0, 1000, 0, 1000, 400, 600)
	b.Slot("plate", "hole", piece.Recess, piece.FaceHigh, piece.AlongLength, 400, 600, 400, 600, 200, 0)
	b.Part("bar", trial.BackPanel, 300, 700, 300, 700, 0, 1000)
	for i, s := range []piece.Side{piece.EdgeLow, piece.EdgeHigh, piece.FaceLow, piece.FaceHigh} {
		b.Slot("bar", string(rune('a'+i)), piece.Notch, s, piece.AlongLength, 400, 600, 0, 400, 100, 0)
	}
	s := taken(b)
	if g := s.Groups[0]; len(g.Locked) != 1 || len(g.Locked[0].Members) != 2 || g.Locked[0].Members[0].Name != "plate" {
		t.Errorf("%+v", g)
	}
}

// TestSeededLaw: racks and carcases of random sizes, put together backwards, never
// have wood in wood on the way.
func TestSeededLaw(t *testing.T) {
	const seed = 31
	random := rand.New(rand.NewPCG(seed, 2))
	for range 6 {
		corner, back, housing := 40+random.Int64N(50), 40+random.Int64N(40), 30+random.Int64N(30)
		t.Logf("seed %d: carcase %d %d %d", seed, corner, back, housing)
		s := taken(trial.Carcase(corner, back, housing))
		s.open(t)
		s.together(t, 4)
	}
}

// TestBounded: 500 parts take some twenty looks for every two of them, and no sweep.
func TestBounded(t *testing.T) {
	b := trial.New()
	for i := range int64(500) {
		x, y, z := i%10*300, i/10%10*300, i/100*300
		b.Part("stick"+string(rune('a'+i%26))+string(rune('a'+i/26)), trial.GrainRight, x, x+300, y, y+300, z, z+300)
	}
	s := taken(b)
	s.open(t)
	if s.Looks > 20*500*500 || s.Sweeps != 0 || len(s.Removals) != 499 {
		t.Errorf("%d looks, %d sweeps, %d removals", s.Looks, s.Sweeps, len(s.Removals))
	}
}

func BenchmarkDemonstration(b *testing.B) {
	s := read(b, filepath.Join(outside.Root(), "examples", "needle-chest"), "needle-chest.piece.hcl", "shop.hcl")
	s.shapes.All()
	l := trial.New().Ledger
	for b.Loop() {
		apart.Of(s.piece, nil, s.shapes, l)
	}
}

// locks returns the rings that a scene has.
func (s scene) locks() []apart.Ring {
	var out []apart.Ring
	for _, g := range s.Groups {
		out = append(out, g.Locked...)
	}
	return out
}

// crossed is a shelf dovetailed into two sides, stopped at the front in one and at
// the back in the other. The sides are one group, or not.
func crossed(one bool) *trial.Builder {
	b := trial.New()
	b.Part("left", trial.LeftSide, 0, 150, 0, 900, 0, 800)
	b.Part("right", trial.RightSide, 850, 1000, 0, 900, 0, 800)
	b.Part("shelf", trial.GrainRight, 100, 900, 0, 900, 300, 480)
	for _, side := range []string{"left", "right"} {
		b.Joint("joint."+side, piece.SlidingJoint, "shelf", side, 50, func(j *piece.Joint) {
			j.Slide = &piece.Slide{Neck: b.Fig("neck", 120), Lean: b.Fig("lean", 10)}
			if side == "left" {
				j.StopLow = b.Fig("stop", 150)
			} else {
				j.StopHigh = b.Fig("stop", 150)
			}
		})
	}
	if one {
		b.Group("case", "")
		for i := range b.Piece.Parts {
			if p := &b.Piece.Parts[i]; p.Address != "shelf" {
				p.Group = "case"
			}
		}
	}
	return b
}

// TestCrossed: such a shelf goes into one side after the other, from behind and
// from the front, and never into both when they are already joined.
func TestCrossed(t *testing.T) {
	b := crossed(false)
	if _, lowered, faults := joinery.Lower(&b.Piece, b.Ledger); len(lowered) != 2 {
		t.Fatalf("%v", faults)
	}
	s := taken(b)
	s.open(t)
	s.together(t, 9)
	for _, r := range s.Removals {
		if r.Way != piece.ToFront && r.Way != piece.ToBack {
			t.Errorf("%v goes to the %s", r.Taken, r.Way)
		}
	}
	if l := taken(crossed(true)).locks(); len(l) != 1 || len(l[0].Members) != 2 || !l[0].Sure {
		t.Fatalf("%+v", l)
	}
}
