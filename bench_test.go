package scantling_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"scantling"
	"scantling/internal/build"
	"scantling/internal/evaluate"
	"scantling/internal/world"
)

// grown returns the demonstration piece with so many drawers that it has about
// the given number of parts: longer boards, more needles, the same rules.
func grown(b *testing.B, parts int) world.World {
	b.Helper()
	w := exampleWorld(b, "needle-chest")
	edit := func(name string, changes ...string) {
		text, err := w.Read(name)
		if err != nil {
			b.Fatal(err)
		}
		s := string(text)
		for i := 0; i < len(changes); i += 2 {
			if !strings.Contains(s, changes[i]) {
				b.Fatalf("%s has no %q", name, changes[i])
			}
			s = strings.ReplaceAll(s, changes[i], changes[i+1])
		}
		if err := w.Write(name, []byte(s)); err != nil {
			b.Fatal(err)
		}
	}
	drawers := max(2, (parts-5)/12)
	edit(demo, "length = 220\n", "length = 560\n", "to     = 420\n", "to     = 900\n")
	edit(demo, "count = 3\n", fmt.Sprintf("count = %d\n", drawers), "to    = 5\n", "to    = 1000\n", "each   = 2\n", fmt.Sprintf("each   = %d\n", max(2, drawers/2)))
	edit("shop.hcl", "length    = 2400\n", "length    = 19900\n", "length    = 1800\n", "length    = 19900\n", "length    = 2100\n", "length    = 19900\n", "length    = 1220\n", "length    = 19900\n")
	return w
}

// BenchmarkPlan evaluates documents and runs every analysis.
func BenchmarkPlan(b *testing.B) {
	for _, parts := range []int{0, 300, 3000} {
		name := fmt.Sprintf("parts=%d", parts)
		var w world.World = exampleWorld(b, "needle-chest")
		if parts == 0 {
			name = "demonstration"
		} else {
			w = grown(b, parts)
		}
		src, err := scantling.Load(w, demo, scantling.Options{})
		if err != nil {
			b.Fatal(err)
		}
		b.Run(name, func(b *testing.B) { benchmarkPlan(b, src) })
	}
}

func benchmarkPlan(b *testing.B, src evaluate.Sources) {
	b.ReportAllocs()
	n, entries := 0, 0
	for b.Loop() {
		r, err := build.Run(src)
		if err != nil {
			b.Fatal(err)
		}
		n, entries = len(r.Plan.Piece.Parts), len(r.Plan.Ledger.Entries())
	}
	b.ReportMetric(float64(n), "parts")
	b.ReportMetric(float64(entries), "entries")
}

// BenchmarkEvaluate evaluates documents only.
func BenchmarkEvaluate(b *testing.B) {
	for _, parts := range []int{300, 3000} {
		src, err := scantling.Load(grown(b, parts), demo, scantling.Options{})
		if err != nil {
			b.Fatal(err)
		}
		b.Run(fmt.Sprintf("parts=%d", parts), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				evaluate.Piece(src)
			}
		})
	}
}

// BenchmarkFiles writes every output of the demonstration piece.
func BenchmarkFiles(b *testing.B) {
	src := exampleWorld(b, "needle-chest")
	for b.Loop() {
		r, err := scantling.Plan(context.Background(), src, demo, scantling.Options{})
		if err != nil {
			b.Fatal(err)
		}
		if _, err := r.Files(); err != nil {
			b.Fatal(err)
		}
	}
}
