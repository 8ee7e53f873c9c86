package stock

import (
	_ "embed" // the help

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/cost"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/plan"
)

// Codes of the findings.
const (
	// CodeNoPrice: something must be bought that has no price.
	//
	// Example: two boards more than the rack holds, of a board without price.
	CodeNoPrice diag.Code = "bought-without-price"
	// CodeNothing: nothing in the rack or on the list answers to a material.
	//
	// Example: material of ebony in a shop without it.
	CodeNothing diag.Code = "material-not-to-be-had"
	// CodeThere: all is in the rack, or on the list with its price.
	//
	// Example: eight boards in the rack and six needed.
	CodeThere diag.Code = "stock-to-be-had"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "stock", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, cost.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	out := verdict.Of("stock", c)
	used := map[string]bool{}
	for _, p := range c.Piece.Parts {
		used[p.Material] = true
	}
	for _, m := range c.Piece.Materials {
		if !used[m.Name] {
			continue
		}
		out.Judged()
		if m.Stock == "" {
			out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Error, Code: CodeNothing, Address: address.Address("material").Child(m.Name), Where: m.Where,
				Source: "the shop's rack (stated)", Text: message.New("check.stock.nothing", message.Text("asks", m.Asks))})
		}
	}
	for _, b := range cost.Analysis.Get(c).Buying {
		if b.Get > 0 && b.Price == 0 {
			out.Add(plan.Finding{Status: plan.Unknown, Severity: diag.Note, Code: CodeNoPrice, Address: address.Address("shop").Keyed("stock", b.Stock), Marks: b.For,
				Source: "the shop's list (stated)",
				Text:   message.New("check.stock.no-price", message.Text("label", b.Label), message.Count("need", b.Need), message.Count("have", b.Have), message.Count("get", b.Get))})
		}
	}
	return out.Done(CodeThere, message.New("check.stock.there")), nil
})
