package analysis_test

import (
	"slices"
	"testing"

	"scantling/internal/analysis"
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Sources are taken apart, and lengths get the source of their entry.
func TestExplain(t *testing.T) {
	for text, want := range map[string][]figure.Source{
		"":                                  nil,
		"check.least-land (practice)":       {{Key: "check.least-land", Status: figure.Practice}},
		"house.cross grain: habit (stated)": {{Key: "house.cross grain", Title: "habit", Status: figure.Stated}},
		"a.b: Wood Handbook (2010), Table 13-5 (read); c (memory)": {
			{Key: "a.b", Title: "Wood Handbook (2010), Table 13-5", Status: figure.Read}, {Key: "c", Status: figure.Memory}},
		"the shop's rack (stated)": {{Title: "the shop's rack", Status: figure.Stated}},
		"16 CFR 1219 (cited)":      {{Title: "16 CFR 1219 (cited)"}},
	} {
		list := []plan.Finding{{Source: text}}
		analysis.Explain(ledger.New(nil), list)
		if !slices.Equal(list[0].Sources, want) {
			t.Errorf("%q: %+v", text, list[0].Sources)
		}
	}
	l := ledger.New(nil)
	is := l.Leaf("is", unit.MM(7), ledger.Document, "")
	limit := l.Leaf("limit", unit.MM(8), ledger.HouseRule, "check.x (practice)")
	sum := l.Sum("sum", is, limit)
	list := []plan.Finding{{Is: &is, Limit: &limit}, {Is: &sum, Figures: []plan.Quantity{{Role: plan.RoleIs}}}, {Is: &sum}}
	analysis.Explain(l, list)
	f := list[0].Figures
	if len(f) != 2 || f[0].Role != plan.RoleIs || f[0].Source.Status != figure.Stated || f[1].Role != plan.RoleLimit || f[1].Source.Key != "check.x" || f[1].Figure() != limit {
		t.Errorf("%+v", f)
	}
	if len(list[1].Figures) != 1 || len(list[2].Figures) != 1 || list[2].Figures[0].Source.Status != figure.Computed {
		t.Errorf("%+v", list[1:])
	}
}
