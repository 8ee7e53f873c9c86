package shape_test

import (
	"testing"

	"scantling/internal/geom/solid"
	"scantling/internal/piece"
	"scantling/internal/shape"
)

// BenchmarkEveryCut solves a board for every form of cut, at the facets of
// drawings.
func BenchmarkEveryCut(b *testing.B) {
	var p piece.Piece
	for i, f := range moreForms {
		part := board(string(rune('a'+i)), 300, 100, 20)
		f.cut.Part = part.Address
		p.Parts, p.Cuts = append(p.Parts, part), append(p.Cuts, f.cut)
	}
	b.ReportAllocs()
	for b.Loop() {
		shape.New(&p, nil, shape.DrawingFacets).All()
	}
	b.ReportMetric(float64(len(p.Parts)), "parts")
}

// BenchmarkContent tells equal parts and mirror images apart, a hundred random
// parts.
func BenchmarkContent(b *testing.B) {
	var parts []piece.Part
	var cuts [][]*piece.Cut
	for seed := range uint64(100) {
		part, list := randomPart(seed)
		var ptrs []*piece.Cut
		for i := range list {
			ptrs = append(ptrs, &list[i])
		}
		parts, cuts = append(parts, part), append(cuts, ptrs)
	}
	for b.Loop() {
		for i := range parts {
			if shape.ContentOf(&parts[i], cuts[i]) == "" {
				b.Fatal("no content")
			}
		}
	}
}

// BenchmarkRandomParts solves a hundred random parts with every form of cut.
func BenchmarkRandomParts(b *testing.B) {
	for b.Loop() {
		for seed := range uint64(100) {
			part, cuts := randomPart(seed)
			if st, why := solidAsIs(part, cuts, shape.ScreenFacets).Status(); st != solid.Verified {
				b.Fatal(why)
			}
		}
	}
}
