package rehearsal_test

import (
	"fmt"
	"os"
	"slices"
	"testing"

	"scantling/internal/analysis/operations"
	"scantling/internal/analysis/rehearsal"
	"scantling/internal/build"
	"scantling/internal/document"
	"scantling/internal/evaluate"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

const folder = "../../../examples/needle-chest/"

func sources(t testing.TB) evaluate.Sources {
	t.Helper()
	read := func(name string) document.Source {
		text, err := os.ReadFile(folder + name)
		if err != nil {
			t.Fatal(err)
		}
		return document.Source{Name: name, Text: text}
	}
	return evaluate.Sources{Document: read("needle-chest.piece.hcl"), Shop: read("shop.hcl")}
}

func planned(t testing.TB, inputs map[string]string) (*plan.Plan, rehearsal.Input) {
	t.Helper()
	src := sources(t)
	src.Inputs = inputs
	res, err := build.Run(src)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range res.Plan.Diagnostics {
		if d.Severity == "error" {
			t.Fatalf("%v: %s %v", inputs, d.Code, d.Text)
		}
	}
	shop := operations.Of(res.Shop)
	return res.Plan, rehearsal.Input{Plan: res.Plan, Cuts: res.Plan.Piece.Cuts, Machines: shop.Machines, Cutters: shop.Cutters}
}

// TestNeedleChest: the demonstration piece is carried out, over its inputs; every
// cut of every unique part is made.
func TestNeedleChest(t *testing.T) {
	for i, inputs := range []map[string]string{
		nil,
		{"drawers": "2", "needle_length": "250", "side_thickness": "12"},
		{"drawers": "5", "needle_length": "400", "side_thickness": "18", "least_width": "420"},
		{"drawers": "4", "head_diameter": "16", "timber": `"hard maple"`},
		{"drawers": "2", "needle_length": "300", "head_diameter": "8"},
	} {
		if i > 0 && os.Getenv("LONG") == "" {
			break // the long tier does them all
		}
		p, in := planned(t, inputs)
		findings, report := rehearsal.Check(in)
		for _, f := range findings {
			if f.Status != plan.Pass {
				t.Errorf("%v: %s %s %v", inputs, f.Code, f.Address, f.Text)
			}
		}
		hand := 0
		for _, c := range p.Setups {
			if c.Machine == "hand" {
				hand += len(c.Placements)
			}
		}
		t.Logf("%v: %+v, %d cards, %d placements by hand", inputs, report, len(p.Setups), hand)
		order(t, p)
	}
}

// order checks that what waits for a measure comes after it, and that every mark
// stands in a step.
func order(t *testing.T, p *plan.Plan) {
	t.Helper()
	measured := map[string]int{}
	for _, s := range p.Steps {
		for _, m := range s.Measures {
			measured[string(m)] = s.N
		}
	}
	kind := map[string]plan.OperationKind{}
	for _, op := range p.Operations {
		kind[op.ID] = op.Kind
	}
	for _, m := range p.Piece.Measures {
		if measured[string(m.Address)] == 0 {
			t.Errorf("%s is never taken", m.Address)
		}
	}
	for _, row := range p.Parts {
		waits := 0
		for _, part := range p.Piece.Parts {
			if slices.Contains(row.Members, part.Address) {
				for _, a := range part.CutAfter {
					waits = max(waits, measured[string(a)])
				}
			}
		}
		seen := false
		for _, s := range p.Steps {
			if !slices.Contains(s.Marks, row.Mark) {
				continue
			}
			seen = true
			for _, id := range s.Operations {
				cuts := kind[id] == plan.CutToLength || kind[id] == plan.RipToWidth || kind[id] == plan.MakeCut
				if cuts && s.N < waits {
					t.Errorf("%s is cut in step %d, before the measure in step %d", row.Mark, s.N, waits)
				}
			}
		}
		if !seen {
			t.Errorf("%s stands in no step", row.Mark)
		}
	}
}

// TestNeedleChestMutants changes every figure of the printed cards by a tenth of
// a millimetre; each must be found out.
func TestNeedleChestMutants(t *testing.T) {
	p, in := quick(t, sources(t))
	tried, survivors := 0, []string{}
	try := func(where string, f *plan.Figure) {
		tried++
		f.Nm += 100 * unit.Micrometre
		findings, _ := rehearsal.Check(in)
		if len(findings) == 1 && findings[0].Status == plan.Pass {
			survivors = append(survivors, where)
		}
		f.Nm -= 100 * unit.Micrometre
	}
	settings := func(where string, list []plan.Setting) {
		for i := range list {
			try(where+list[i].Word, &list[i].Figure)
			for k := range list[i].Passes {
				try(where+list[i].Word+" pass", &list[i].Passes[k])
			}
		}
	}
	for i := range p.Setups {
		c := &p.Setups[i]
		settings(c.ID+": ", c.Settings)
		for k := range c.Placements {
			settings(fmt.Sprintf("%s: %s ", c.ID, c.Placements[k].Mark), c.Placements[k].Settings)
			for m := range c.Placements[k].Sums {
				try(c.ID+": total", &c.Placements[k].Sums[m].Total)
			}
		}
	}
	t.Logf("%d figures changed, %d survive", tried, len(survivors))
	for _, s := range survivors {
		t.Error("survives: " + s)
	}
}
