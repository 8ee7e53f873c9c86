package analysis

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/plan"
)

// Report is what a run did.
type Report struct {
	// Ran are the names of the analyses that ran, in order; LeftOut those that did
	// not because the piece has errors or because something that they require was
	// left out.
	Ran, LeftOut []string
	// Diagnostics are what all of them reported, in reading order.
	Diagnostics diag.List
	// Findings are those of all checks that ran, by check, place and address.
	Findings []plan.Finding
}

// Run runs the analyses in the order of their needs; results are then read
// through the analyses themselves. It returns an error only for a list that
// [Validate] refuses.
func Run(c *Context, list []Analysis) (Report, error) {
	if err := Validate(list); err != nil {
		return Report{}, err
	}
	sorted, err := order(list)
	if err != nil {
		return Report{}, err
	}
	var r Report
	if c.results == nil {
		c.results = map[Analysis]any{}
	}
	for _, a := range sorted {
		if !c.ready(a) {
			r.LeftOut = append(r.LeftOut, a.Info().Name)
			continue
		}
		c.running = a
		r.Diagnostics = append(r.Diagnostics, a.run(c)...)
		c.running = nil
		r.Ran = append(r.Ran, a.Info().Name)
		r.Findings = append(r.Findings, a.findings(c)...)
	}
	r.Diagnostics = r.Diagnostics.Sorted()
	SortFindings(r.Findings)
	Explain(c.Ledger, r.Findings)
	return r, nil
}

// ready reports whether the analysis can run on this piece.
func (c *Context) ready(a Analysis) bool {
	info := a.Info()
	if c.Broken && !info.DespiteErrors {
		return false
	}
	for _, r := range info.Requires {
		if _, ok := c.results[r]; !ok {
			return false
		}
	}
	return true
}

// SortFindings puts findings in one order: by check, then place in the document,
// then address, code and figures.
func SortFindings(list []plan.Finding) {
	figure := func(f *plan.Figure) int64 {
		if f == nil {
			return 0
		}
		return int64(f.Nm)
	}
	slices.SortStableFunc(list, func(a, b plan.Finding) int {
		return cmp.Or(
			cmp.Compare(a.Check, b.Check),
			cmp.Compare(a.Where.File, b.Where.File),
			cmp.Compare(a.Where.Start, b.Where.Start),
			address.Compare(a.Address, b.Address),
			cmp.Compare(a.Code, b.Code),
			cmp.Compare(figure(a.Is), figure(b.Is)),
		)
	})
}
