package solid

import (
	"os"
	"testing"
	"time"

	"scantling/internal/geom/vec"
)

// TestSpeedBesideReference logs times of the kernel beside manifold-3d in one
// run. It asserts nothing. The reference is single-threaded WebAssembly under
// node and the kernel native code on one goroutine: not like for like.
func TestSpeedBesideReference(t *testing.T) {
	if os.Getenv("LONG") == "" {
		t.Skip("left out: times beside the reference (LONG=1)")
	}
	reference(t)
	report := func(what string, ours, theirs float64) {
		t.Logf("%-40s kernel %8.2f ms   manifold-3d %8.2f ms   %.1f times", what, ours, theirs, theirs/ours)
	}
	for _, facets := range []int{8, 16} {
		for _, through := range []bool{false, true} {
			b, c := cradle(through)
			name := "36 channels, stopped"
			if through {
				name = "36 channels, through"
			}
			ours := best(func() { Build(b, c, Options{Facets: facets}) })
			report(name, ours, total(ask(t, []refScene{refOf(b, c, facets, vec.World)}, "time")))
		}
	}
	var scenes []refScene
	var jobs []Job
	for seed := range uint64(60) {
		b, c := mixed(seed)
		scenes = append(scenes, refOf(b, c, 8, vec.World))
		jobs = append(jobs, Job{b, c, Options{Facets: 8}})
	}
	theirs := total(ask(t, scenes, "time"))
	report("60 boards of 12 cuts, 1 worker", best(func() { new(Cache).BuildAll(jobs, 1) }), theirs)
	report("60 boards of 12 cuts, 2 workers", best(func() { new(Cache).BuildAll(jobs, 2) }), theirs)
	for i := range jobs {
		jobs[i] = jobs[i%20]
	}
	report("60 boards, 20 different, 2 workers", best(func() { new(Cache).BuildAll(jobs, 2) }), theirs)
	speedOfPairs(t, report)
}

// best returns the least of five times, in milliseconds.
func best(f func()) float64 {
	least := inf
	for range 5 {
		start := time.Now()
		f()
		least = min(least, float64(time.Since(start).Microseconds())/1000)
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
	for _, p := range pairs {
		s1 := refOf(all[p[0]].Solid.bodies, all[p[0]].Solid.cutters, 8, all[p[0]].Frame)
		s2 := refOf(all[p[1]].Solid.bodies, all[p[1]].Solid.cutters, 8, all[p[1]].Frame)
		scenes = append(scenes, refScene{Cutters: []refPrim{}, A: &s1, B: &s2})
	}
	ours := best(func() {
		for _, p := range pairs {
			a, b := all[p[0]].Solid, all[p[1]].Solid
			a, b = Build(a.bodies, a.cutters, a.options), Build(b.bodies, b.cutters, b.options)
			Interference(Placed{a, all[p[0]].Frame}, Placed{b, all[p[1]].Frame})
		}
	})
	theirs := total(ask(t, scenes, "time"))
	report("500 parts, both built for every pair", ours, theirs)
	report("500 parts, parts built once", best(func() {
		for _, p := range pairs {
			Interference(all[p[0]], all[p[1]])
		}
	}), theirs)
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
