package scantling_test

import (
	"context"
	"strings"
	"testing"

	"scantling"
	"scantling/internal/analysis/check"
	"scantling/internal/diag"
	"scantling/internal/edit"
	"scantling/internal/plan"
	"scantling/internal/world"
)

// remedied are the checks, by the folder of their documents, whose failing document
// has remedies with edits.
var remedied = []string{"racking"}

// TestRemediesApply applies, one at a time, every remedy of the demonstration
// piece over some of its inputs and of a tray with too thin a floor: what it
// mends must be gone, and no new error may come of it.
func TestRemediesApply(t *testing.T) {
	applied := 0
	try := func(world func() world.World, name string, inputs map[string]string) {
		for _, f := range planNamed(t, world(), name, inputs).Plan.Findings {
			for _, r := range f.Remedy {
				if len(r.Edits) > 0 {
					applied++
					applyRemedy(t, world(), name, r, inputs, f)
				}
			}
		}
	}
	for _, inputs := range []map[string]string{{"head_diameter": "16"}, {"head_diameter": "8"}, {"least_width": "420"}} {
		try(func() world.World { return exampleWorld(t, "needle-chest") }, demo, inputs)
	}
	try(func() world.World { return folderWorld(t, "testdata/remedy") }, "tray.piece.hcl", nil)
	try(func() world.World { return folderWorld(t, "testdata/remedy") }, "jars.piece.hcl", nil)
	for _, name := range remedied {
		before := applied
		try(func() world.World { return checkWorld(t, name) }, "fails.piece.hcl", nil)
		if applied == before {
			t.Errorf("%s: the document that fails has no remedy with an edit", name)
		}
	}
	if applied == 0 {
		t.Error("no remedy with an edit was found")
	}
	t.Logf("%d remedies applied", applied)
}

func planNamed(t *testing.T, w world.World, name string, inputs map[string]string) *scantling.Result {
	t.Helper()
	r, err := scantling.Plan(context.Background(), w, name, scantling.Options{Inputs: inputs})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// applyRemedy applies a remedy to a fresh copy of the documents and plans it.
func applyRemedy(t *testing.T, w world.World, name string, r diag.Remedy, inputs map[string]string, f plan.Finding) *plan.Plan {
	t.Helper()
	for _, e := range r.Edits {
		text, err := w.Read(e.File)
		if err != nil {
			t.Fatal(err)
		}
		mended, err := edit.Apply(text, e)
		if err != nil {
			t.Fatalf("%v: %v", r.Text, err)
		}
		if err := w.Write(e.File, mended); err != nil {
			t.Fatal(err)
		}
	}
	after := planNamed(t, w, name, inputs)
	if hasFinding(after.Plan, f) {
		t.Errorf("the remedy %v leaves %s standing", r.Text, f.Code)
	}
	if after.Plan.Diagnostics.HasErrors() {
		t.Errorf("the remedy %v breaks the document: %v", r.Text, after.Plan.Diagnostics)
	}
	return after.Plan
}

func hasFinding(p *plan.Plan, f plan.Finding) bool {
	for _, g := range p.Findings {
		if g.Check == f.Check && g.Code == f.Code && g.Address == f.Address && g.Status == f.Status {
			return true
		}
	}
	return false
}

// TestRemediesOfTheChecks applies, one at a time, every remedy with an edit of every
// check's document that fails by a hair, and that alone: the check then has nothing
// against the piece, and no check that was silent fails by an error. A check whose document
// has no such remedy gives its reason in the table.
func TestRemediesOfTheChecks(t *testing.T) {
	for _, a := range check.All() {
		name := a.Info().Name
		want := inDocuments[name]
		if want.fails == "" {
			continue
		}
		folder, tried := strings.ReplaceAll(name, " ", "-"), 0
		before := planNamed(t, checkWorld(t, folder), "fails.piece.hcl", nil).Plan
		for _, f := range before.Findings {
			for _, r := range f.Remedy {
				if f.Check != name || len(r.Edits) == 0 {
					continue
				}
				tried++
				for _, g := range applyRemedy(t, checkWorld(t, folder), "fails.piece.hcl", r, nil, f).Findings {
					if g.Check == name && g.Status != plan.Pass {
						t.Errorf("%s: the remedy %v leaves %s standing", name, r.Text, g.Code)
					}
					if g.Severity == diag.Error && g.Status != plan.Pass && !hasFinding(before, g) {
						t.Errorf("%s: the remedy %v brings %s", name, r.Text, g.Code)
					}
				}
			}
		}
		if (tried == 0) != (want.noEdit != "") {
			t.Errorf("%s: %d remedies with an edit, and the reason %q", name, tried, want.noEdit)
		}
	}
}
