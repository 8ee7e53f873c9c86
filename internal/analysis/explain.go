package analysis

import (
	"slices"
	"strings"

	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Explain gives findings what a reader asks next: the lengths that clash as quantities
// with where they come from, and the sources taken apart. What a check already gave
// stays.
func Explain(l *ledger.Ledger, list []plan.Finding) {
	for i := range list {
		f := &list[i]
		if len(f.Sources) == 0 {
			f.Sources = sources(f.Source)
		}
		if f.Limit != nil && !has(f.Figures, plan.RoleLimit) {
			f.Figures = slices.Insert(f.Figures, 0, quantity(l, plan.RoleLimit, *f.Limit))
		}
		if f.Is != nil && !has(f.Figures, plan.RoleIs) {
			f.Figures = slices.Insert(f.Figures, 0, quantity(l, plan.RoleIs, *f.Is))
		}
	}
}

func has(list []plan.Quantity, role string) bool {
	return slices.ContainsFunc(list, func(q plan.Quantity) bool { return q.Role == role })
}

func quantity(l *ledger.Ledger, role string, f plan.Figure) plan.Quantity {
	out := plan.Quantity{Role: role, Estimate: plan.Estimate{Value: unit.OfLength(f.Nm), Entry: f.Entry}}
	e, ok := l.Entry(f.Entry)
	switch {
	case !ok:
	case e.Op != ledger.OpGiven:
		out.Source.Status = figure.Computed
	case len(sources(e.Source)) > 0:
		out.Source = sources(e.Source)[0]
	case e.Status != "":
		out.Source.Status = figure.Status(e.Status)
	case e.Origin == ledger.Document, e.Origin == ledger.Measured:
		out.Source.Status = figure.Stated
	case e.Origin == ledger.Derived:
		out.Source.Status = figure.Derived
	}
	return out
}

// sources takes apart "key (status)" and "key: work (status)", with semicolons between
// several; what reads otherwise is a work without a status.
func sources(text string) []figure.Source {
	var out []figure.Source
	for one := range strings.SplitSeq(text, "; ") {
		rest, status := one, figure.Status("")
		if at := strings.LastIndex(one, " ("); at >= 0 && strings.HasSuffix(one, ")") {
			if s, ok := figure.ParseStatus(one[at+2 : len(one)-1]); ok {
				rest, status = one[:at], s
			}
		}
		key, title, named := strings.Cut(rest, ": ")
		switch {
		case rest == "":
			continue
		case named:
			out = append(out, figure.Source{Key: key, Title: title, Status: status})
		case strings.Contains(rest, " ") && !strings.HasPrefix(rest, "house."):
			out = append(out, figure.Source{Title: rest, Status: status})
		default:
			out = append(out, figure.Source{Key: rest, Status: status})
		}
	}
	return out
}
