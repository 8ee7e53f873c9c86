package shape_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/geom/solid"
	"scantling/internal/piece"
	"scantling/internal/shape"
)

// turner writes a part and its cuts down again as they are when it is turned end
// for end along some axes, cut by cut: the other way to the same shape.
type turner struct {
	size [3]piece.Figure
	turn shape.Turn
}

func (u turner) at(a piece.Local, f piece.Figure) piece.Figure {
	if u.turn[a] {
		f.Nm = u.size[a].Nm - f.Nm
	}
	return f
}

func (u turner) span(a piece.Local, lo, hi *piece.Figure) {
	*lo, *hi = u.at(a, *lo), u.at(a, *hi)
	if u.turn[a] {
		*lo, *hi = *hi, *lo
	}
}

func (u turner) side(s piece.Side) piece.Side {
	if a, _ := s.Axis(); u.turn[a] {
		return s.Opposite()
	}
	return s
}

func across(a piece.Local) (first, second piece.Local) {
	return [3]piece.Local{1, 0, 0}[a], [3]piece.Local{2, 2, 1}[a]
}

func (u turner) line(list []piece.OutlinePoint, first, second piece.Local) []piece.OutlinePoint {
	out := make([]piece.OutlinePoint, len(list))
	for i, v := range list {
		v.Along, v.Across = u.at(first, v.Along), u.at(second, v.Across)
		out[i] = v
	}
	if u.turn[first] == u.turn[second] {
		return out
	}
	// Mirrored: run it backwards, so that it is anticlockwise again. The arc that left
	// a corner now leaves its next.
	slices.Reverse(out)
	bulges := make([]float64, len(out))
	for i := range out {
		bulges[i] = out[(i+1)%len(out)].Bulge
	}
	for i := range out {
		out[i].Bulge = bulges[i]
	}
	return out
}

func (u turner) cut(c piece.Cut) piece.Cut {
	switch {
	case c.Slot != nil:
		s := *c.Slot
		x := s.Across()
		s.Open = u.side(s.Open)
		u.span(s.Run, &s.From, &s.To)
		u.span(x, &s.Near, &s.Far)
		if u.turn[s.Run] {
			s.StartOpen, s.EndOpen = s.EndOpen, s.StartOpen
		}
		if u.turn[x] {
			s.LeanNear, s.LeanFar = s.LeanFar, s.LeanNear
		}
		c.Slot = &s
	case c.Bore != nil:
		b := *c.Bore
		a, _ := b.Open.Axis()
		first, second := across(a)
		b.Open, b.At = u.side(b.Open), [2]piece.Figure{u.at(first, b.At[0]), u.at(second, b.At[1])}
		c.Bore = &b
	case c.Ease != nil:
		e := *c.Ease
		i, _ := e.Sides[0].Axis()
		j, _ := e.Sides[1].Axis()
		e.Sides = [2]piece.Side{u.side(e.Sides[1]), u.side(e.Sides[0])}
		if e.From.Nm != 0 || e.To.Nm != 0 {
			u.span(3-i-j, &e.From, &e.To)
		}
		c.Ease = &e
	case c.Slice != nil:
		s := *c.Slice
		a, _ := s.Off.Axis()
		first, second := across(a)
		s.Off = u.side(s.Off)
		for k, l := range [2]piece.Local{first, second} {
			s.From[k], s.To[k] = u.at(l, s.From[k]), u.at(l, s.To[k])
		}
		for k := range s.At {
			s.At[k] = u.at(a, s.At[k])
		}
		c.Slice = &s
	case c.Pocket != nil:
		k := *c.Pocket
		a, _ := k.Open.Axis()
		first, second := across(a)
		k.Open, k.Outline = u.side(k.Open), u.line(k.Outline, first, second)
		c.Pocket = &k
	}
	return c
}

func (u turner) part(p piece.Part) piece.Part {
	p.Outline = u.line(p.Outline, 0, 1)
	var holes [][]piece.OutlinePoint
	for _, h := range p.Holes {
		holes = append(holes, u.line(h, 0, 1))
	}
	p.Holes = holes
	if len(p.Profile) > 0 && u.turn[0] {
		list := slices.Clone(p.Profile)
		slices.Reverse(list)
		for i := range list {
			list[i].Along = u.at(0, list[i].Along)
			if i+1 < len(list) {
				list[i].Bulge = list[i+1].Bulge
			}
		}
		p.Profile = list
	}
	return p
}

func solidOf(t *testing.T, part piece.Part, cuts []piece.Cut) (*solid.Solid, []*piece.Cut) {
	t.Helper()
	p := piece.Piece{Parts: []piece.Part{part}}
	list := slices.Clone(cuts)
	for i := range list {
		list[i].Part = part.Address
	}
	shapes := shape.New(&p, list, 8)
	s := shapes.At(0)
	if ok, why := s.Verified(); !ok {
		t.Fatal(why)
	}
	return s.Solid, shapes.CutsOf(part.Address)
}

// TestContentOfEveryForm turns parts with every form of cut and checks that their
// contents are equal where the kernel lays one solid on the other, and that the
// mirror image is told apart where it does not.
func TestContentOfEveryForm(t *testing.T) {
	const seed = 31
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 0))
	b := board("b", 300, 100, 20)
	curved := outline(300, 100, 20, [3]float64{0, 0, 0}, [3]float64{300, 0, 0.3}, [3]float64{250, 100, 0}, [3]float64{0, 60, 0})
	curved.Holes = [][]piece.OutlinePoint{points([3]float64{40, 30, -1}, [3]float64{20, 30, -1})}
	round := board("r", 300, 100, 100)
	round.Form = piece.Round
	round.Profile = []piece.ProfilePoint{{Along: mm(0), Radius: mm(50), Bulge: 0.2}, {Along: mm(120), Radius: mm(50)}, {Along: mm(300), Radius: mm(20)}}
	type job struct {
		name string
		part piece.Part
		cuts []piece.Cut
	}
	jobs := []job{{"outline", curved, nil}, {"outline with a hole", curved, []piece.Cut{bore(piece.FaceHigh, 150, 30, 6, 8)}}, {"round", round, nil}}
	for _, f := range moreForms {
		jobs = append(jobs, job{f.name, b, []piece.Cut{f.cut}})
		other := moreForms[r.IntN(len(moreForms))]
		jobs = append(jobs, job{f.name + " and " + other.name, b, []piece.Cut{f.cut, other.cut}})
	}
	handed, unlike := 0, 0
	for _, j := range jobs {
		s, list := solidOf(t, j.part, j.cuts)
		for k := range 8 {
			u := turner{j.part.Sizes(), shape.Turn{k&1 != 0, k&2 != 0, k&4 != 0}}
			var cuts []piece.Cut
			for _, c := range j.cuts {
				cuts = append(cuts, u.cut(c))
			}
			part := u.part(j.part)
			o, turned := solidOf(t, part, cuts)
			mirror := u.turn[0] != u.turn[1] != u.turn[2]
			want := shape.ContentOf(&j.part, list)
			like := s
			if mirror {
				want, like = shape.MirroredContentOf(&j.part, list), s.Mirrored()
			}
			if got := shape.ContentOf(&part, turned); got != want {
				t.Errorf("%s, turned %v:\n%s\n%s", j.name, u.turn, got, want)
			}
			if _, ok := solid.Same(o, like); !ok {
				t.Errorf("%s, turned %v: the solids differ", j.name, u.turn)
			}
		}
		same := shape.ContentOf(&j.part, list) == shape.MirroredContentOf(&j.part, list)
		switch hand := s.Handed(); {
		case same && hand:
			t.Errorf("%s: equal to its mirror image by content, not by solid", j.name)
		case hand:
			handed++
		case !same:
			unlike++ // cuts that run into one another may be described in many ways
		}
	}
	t.Logf("%d parts, %d of them handed, %d equal to their mirror images in shape and not in words", len(jobs), handed, unlike)
	if handed < 10 || unlike > len(jobs)/5 {
		t.Error("the contents tell too little")
	}
}

// TestOnePlaneOnePrint: a mitre said of the end is the mitre said of the edge.
func TestOnePlaneOnePrint(t *testing.T) {
	p := board("b", 300, 100, 20)
	of := func(c piece.Cut) shape.Content { return shape.ContentOf(&p, []*piece.Cut{&c}) }
	end := slice(piece.EndHigh, [2]float64{0, 0}, [2]float64{100, 20}, [3]float64{200, 300, 200})
	edge := slice(piece.EdgeLow, [2]float64{200, 0}, [2]float64{300, 20}, [3]float64{0, 100, 0})
	if of(end) != of(edge) {
		t.Errorf("%s\n%s", of(end), of(edge))
	}
	if of(end) == of(slice(piece.EndHigh, [2]float64{0, 0}, [2]float64{100, 20}, [3]float64{200, 299, 200})) {
		t.Error("two planes with one print")
	}
}
