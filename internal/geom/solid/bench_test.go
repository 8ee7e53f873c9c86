package solid

import (
	"math/rand/v2"
	"runtime"
	"sync"
	"testing"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// cradle is a board 600 × 380 × 18 with 36 channels of 9.5, stopped 25 short of
// either end or through, eight holes and a round-over on every long corner.
func cradle(through bool) (bodies, cutters []Primitive) {
	bodies = []Primitive{Block(vec.World, vec.V3{}, at(600, 380, 18), 1)}
	from, to := 25.0, 575.0
	if through {
		from, to = 0, 600
	}
	for k := range 36 {
		f := vec.Frame{Origin: at(0, 15+float64(10*k), 18), U: at(0, 1, 0), V: at(0, 0, 1), W: at(1, 0, 0)}
		sides, caps := Whole(Tag(10 + k))
		cutters = append(cutters, Prism{Frame: f, Profile: polygon.RoundBottom(9.5, 4.75, 4.75), From: from, To: to, Sides: sides, Caps: caps})
	}
	for k := range 8 {
		f := vec.World
		f.Origin = at(12+float64(k%4)*192, 7+float64(k/4)*366, 0)
		sides, caps := Whole(Tag(60 + k))
		cutters = append(cutters, Prism{Frame: f, Profile: polygon.Circle(polygon.P2{}, 2.5), From: 0, To: 18, Sides: sides, Caps: caps})
	}
	corner := polygon.Profile{Outer: polygon.Loop{
		{P2: polygon.P2{X: 3}}, {P2: polygon.P2{X: 0, Y: 3}}, {P2: polygon.P2{}},
	}}
	corner.Outer[0].Bulge = -0.41421356237309503 // a quarter circle about (3, 3)
	for k := range 4 {
		o, u, v := at(0, 0, 0), at(0, 1, 0), at(0, 0, 1)
		if k&1 != 0 {
			o.Y, u = 380, at(0, -1, 0)
		}
		if k&2 != 0 {
			o.Z, v = 18, at(0, 0, -1)
		}
		sides, caps := Whole(Tag(80 + k))
		f := vec.Frame{Origin: o, U: u, V: v, W: u.Cross(v)}
		p := Prism{Frame: f, Profile: corner, From: 0, To: 600, Sides: sides, Caps: caps}
		if f.W.X < 0 {
			p.From, p.To = -600, 0
		}
		cutters = append(cutters, p)
	}
	return bodies, cutters
}

// mixed is an ordinary board with twelve cuts, different for each seed:
// housings, grooves, rebates, holes, mortises, channels.
func mixed(seed uint64) (bodies, cutters []Primitive) {
	r := rand.New(rand.NewPCG(seed, 5))
	l, w, t := 300+float64(r.IntN(60))*10, 80+float64(r.IntN(30))*10, 18.0
	bodies = []Primitive{Block(vec.World, vec.V3{}, at(l, w, t), 1)}
	for k := range 12 {
		tag := Tag(10 + k)
		x, y := 20+float64(r.IntN(int(l)-60)), 10+float64(r.IntN(int(w)-30))
		sides, caps := Whole(tag)
		switch k % 6 {
		case 0:
			cutters = append(cutters, Block(vec.World, at(x, 0, t-6), at(x+18, w, t), tag))
		case 1:
			cutters = append(cutters, Block(vec.World, at(0, y, t-5), at(l, y+6, t), tag))
		case 2:
			cutters = append(cutters, Block(vec.World, at(0, w-9, 0), at(l, w, 9), tag))
		case 3:
			f := vec.World
			f.Origin = at(x, y, 0)
			cutters = append(cutters, Prism{Frame: f, Profile: polygon.Circle(polygon.P2{}, 4), From: 0, To: t, Sides: sides, Caps: caps})
		case 4:
			f := vec.World
			f.Origin = at(x, y, 0)
			cutters = append(cutters, Prism{Frame: f, Profile: polygon.Stadium(polygon.P2{}, polygon.P2{X: 30}, 4), From: 6, To: t, Sides: sides, Caps: caps})
		default:
			f := vec.Frame{Origin: at(0, y, t), U: at(0, 1, 0), V: at(0, 0, 1), W: at(1, 0, 0)}
			cutters = append(cutters, Prism{Frame: f, Profile: polygon.RoundBottom(8, 4, 4), From: 0, To: l, Sides: sides, Caps: caps})
		}
	}
	return bodies, cutters
}

func benchCradle(b *testing.B, through bool, facets int) {
	bodies, cutters := cradle(through)
	b.ReportAllocs()
	for b.Loop() {
		s := Build(bodies, cutters, Options{Facets: facets})
		if st, why := s.Status(); st != Verified {
			b.Fatal(why)
		}
	}
}

func BenchmarkCradleStopped8(b *testing.B)  { benchCradle(b, false, 8) }
func BenchmarkCradleStopped16(b *testing.B) { benchCradle(b, false, 16) }
func BenchmarkCradleThrough8(b *testing.B)  { benchCradle(b, true, 8) }
func BenchmarkCradleThrough16(b *testing.B) { benchCradle(b, true, 16) }

// BenchmarkSixtyBoards builds 60 boards of 12 cuts, all different, with mesh.
func BenchmarkSixtyBoards(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		for seed := range uint64(60) {
			buildMixed(b, seed)
		}
	}
}

func buildMixed(b *testing.B, seed uint64) {
	bodies, cutters := mixed(seed)
	if st, why := Build(bodies, cutters, Options{Facets: 8}).Status(); st != Verified {
		b.Fatal(why)
	}
}

// BenchmarkSixtyBoardsTwoWorkers does the same on two goroutines.
func BenchmarkSixtyBoardsTwoWorkers(b *testing.B) {
	for b.Loop() {
		var wg sync.WaitGroup
		for w := range uint64(2) {
			wg.Go(func() {
				for seed := w; seed < 60; seed += 2 {
					buildMixed(b, seed)
				}
			})
		}
		wg.Wait()
	}
	b.ReportMetric(float64(runtime.GOMAXPROCS(0)), "procs")
}

func scatter(n int) []Placed {
	r := rand.New(rand.NewPCG(9, 9))
	var all []Placed
	for i := range n {
		b, c := randomBoard(uint64(500_000 + i))
		o := at(float64(r.IntN(240))*5, float64(r.IntN(240))*5, float64(r.IntN(120))*5)
		f := vec.World
		f.Origin = o
		if r.IntN(5) == 0 {
			f = randomFrame(r, o)
		}
		all = append(all, Placed{Build(b, c, Options{Facets: 8}), f})
	}
	return all
}

func BenchmarkPairs500(b *testing.B) {
	all := scatter(500)
	for b.Loop() {
		b.ReportMetric(float64(len(Pairs(all, 0))), "pairs")
	}
}

func BenchmarkInterference500(b *testing.B) {
	all := scatter(500)
	hits := 0
	for b.Loop() {
		hits = 0
		for _, p := range Pairs(all, 0) {
			if Interference(all[p[0]], all[p[1]]).Volume > 0 {
				hits++
			}
		}
	}
	b.ReportMetric(float64(hits), "overlaps")
}

func BenchmarkContact500(b *testing.B) {
	all := scatter(500)
	hits := 0
	for b.Loop() {
		hits = 0
		for _, p := range Pairs(all, 0) {
			if Contact(all[p[0]], all[p[1]]).Area > 0 {
				hits++
			}
		}
	}
	b.ReportMetric(float64(hits), "contacts")
}

// BenchmarkEqualBoards builds 60 boards of 12 cuts of which 20 are different,
// as a chest of drawers has them, on two workers.
func BenchmarkEqualBoards(b *testing.B) {
	var jobs []Job
	for i := range uint64(60) {
		bo, c := mixed(i % 20)
		jobs = append(jobs, Job{bo, c, Options{Facets: 8}})
	}
	for b.Loop() {
		var c Cache
		c.BuildAll(jobs, 2)
	}
}
