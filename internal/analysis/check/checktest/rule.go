package checktest

import (
	"slices"

	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/shop"
	"scantling/internal/unit"
)

// Rule sets a rule of the house.
func Rule(s *shop.Shop, name string, l unit.Length) {
	s.Rules = slices.DeleteFunc(s.Rules, func(r shop.Rule) bool { return r.Name == name })
	s.Rules = append(s.Rules, shop.Rule{Name: name, Value: unit.OfLength(l), Why: "habit"})
}

// Written makes a figure one that stands in the piece's document from start to
// end, under another name.
func Written(b *trial.Builder, f *piece.Figure, start, end int) {
	id := b.Ledger.Given(ledger.Entry{Name: "written", Value: unit.OfLength(f.Nm), Origin: ledger.Document,
		Where: diag.Place{File: b.Piece.File, Start: start, End: end}})
	*f = b.Ledger.Same("used", b.Ledger.Figure(id))
}
