package solid

import (
	"os"
	"runtime"
	"testing"
	"time"

	"scantling/internal/geom/vec"
)

// TestSpeedBesideReference logs times of the kernel beside manifold-3d in one
// run: make bench-kernel. It asserts nothing. The reference is single-threaded
// WebAssembly under node and the kernel native code: not like for like. Either
// side counts the best of five for every board and every pair.
func TestSpeedBesideReference(t *testing.T) {
	if os.Getenv("LONG") == "" && os.Getenv("BENCH") == "" {
		t.Skip("left out: times beside the reference (make bench-kernel)")
	}
	reference(t)
	t.Logf("%s/%s, %d processors for Go", runtime.GOOS, runtime.GOARCH, runtime.GOMAXPROCS(0))
	report := func(what string, ours, theirs float64) {
		t.Logf("%-44s kernel %9.2f ms   manifold-3d %9.2f ms   %5.1f times", what, ours, theirs, theirs/ours)
	}
	for _, facets := range []int{8, 16} {
		for _, through := range []bool{false, true} {
			b, c := cradle(through)
			name := "36 channels, stopped"
			if through {
				name = "36 channels, through"
			}
			ours := best(20, func() { Build(b, c, Options{Facets: facets}) })
			report(name, ours, total(ask(t, []refScene{refOf(b, c, facets, vec.World)}, "time")))
		}
	}
	var scenes []refScene
	var jobs []Job
	alone := 0.0
	for seed := range uint64(60) {
		b, c := mixed(seed)
		scenes = append(scenes, refOf(b, c, 8, vec.World))
		jobs = append(jobs, Job{b, c, Options{Facets: 8}})
		alone += best(5, func() { Build(b, c, Options{Facets: 8}) })
	}
	theirs := total(ask(t, scenes, "time"))
	report("60 boards of 12 cuts, all different", alone, theirs)
	onTwo := func(what string, n int) {
		spent := inf
		report(what, best(n, func() {
			before := processor()
			new(Cache).BuildAll(jobs, 2)
			spent = min(spent, processor()-before)
		}), theirs)
		t.Logf("%-44s %.2f ms on both together", "  of processor time", spent)
	}
	onTwo("the same on 2 workers", 20)
	for i := range jobs {
		jobs[i] = jobs[i%20]
	}
	onTwo("60 boards, 20 of them different, 2 workers", 20)
	manyBoards(t)
	speedOfPairs(t, report)
}

// manyBoards times 3 000 boards, and one that is edited among them.
func manyBoards(t *testing.T) {
	var jobs []Job
	alone := 0.0
	for i := range uint64(3000) {
		b, c := mixed(i)
		jobs = append(jobs, Job{b, c, Options{Facets: 8}})
		alone += best(2, func() { Build(b, c, Options{Facets: 8}) })
	}
	t.Logf("%-44s kernel %9.2f ms", "3 000 boards of 12 cuts, all different", alone)
	var c Cache
	spent := inf
	t.Logf("%-44s kernel %9.2f ms", "the same on 2 workers", best(2, func() {
		before := processor()
		c = Cache{}
		c.BuildAll(jobs, 2)
		spent = min(spent, processor()-before)
	}))
	t.Logf("%-44s %.2f ms on both together", "  of processor time", spent)
	k := 0
	t.Logf("%-44s kernel %9.2f ms", "one of them edited, all asked for again", best(5, func() {
		k++
		b, cuts := mixed(uint64(5000 + k))
		jobs[k] = Job{b, cuts, Options{Facets: 8}}
		c.BuildAll(jobs[:60], 2)
	}))
}

// best returns the least of n times, in milliseconds.
func best(n int, f func()) float64 {
	least := inf
	for range n {
		start := time.Now()
		f()
		least = min(least, float64(time.Since(start).Nanoseconds())/1e6)
	}
	return least
}

func total(as []refAnswer) (ms float64) {
	for _, a := range as {
		ms += a.Ms
	}
	return ms
}

func speedOfPairs(t *testing.T, report func(what string, ours, theirs float64)) {
	var scenes []refScene
	all := scatter(500)
	pairs := Pairs(all, 0)
	both, once := 0.0, 0.0
	for _, p := range pairs {
		x, y := all[p[0]], all[p[1]]
		s1 := refOf(x.Solid.bodies, x.Solid.cutters, 8, x.Frame)
		s2 := refOf(y.Solid.bodies, y.Solid.cutters, 8, y.Frame)
		scenes = append(scenes, refScene{Cutters: []refPrim{}, A: &s1, B: &s2})
		both += best(3, func() {
			a, b := Build(x.Solid.bodies, x.Solid.cutters, x.Solid.options), Build(y.Solid.bodies, y.Solid.cutters, y.Solid.options)
			Interference(Placed{a, x.Frame}, Placed{b, y.Frame})
		})
		once += best(5, func() { Interference(x, y) })
	}
	theirs := total(ask(t, scenes, "time"))
	t.Logf("%-44s %d pairs; broad phase %.2f ms", "a scene of 500 parts", len(pairs), best(20, func() { Pairs(all, 0) }))
	report("overlap of every pair, both built for it", both, theirs)
	report("overlap of every pair, parts built once", once, theirs)
}

// BenchmarkThreeThousand builds 3 000 different boards of 12 cuts with mesh on
// two workers.
func BenchmarkThreeThousand(b *testing.B) {
	var jobs []Job
	for i := range uint64(3000) {
		bo, c := mixed(i)
		jobs = append(jobs, Job{bo, c, Options{Facets: 8}})
	}
	for b.Loop() {
		new(Cache).BuildAll(jobs, 2)
	}
}
