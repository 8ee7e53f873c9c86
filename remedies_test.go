package scantling_test

import (
	"context"
	"testing"

	"scantling"
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
func applyRemedy(t *testing.T, w world.World, name string, r diag.Remedy, inputs map[string]string, f plan.Finding) {
	t.Helper()
	for _, e := range r.Edits {
		text, err := w.Read(e.File)
		if err != nil {
			t.Fatal(err)
		}
		mended, err := edit.Apply(text, e)
		if err != nil {
			t.Errorf("%v: %v", r.Text, err)
			return
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
}

func hasFinding(p *plan.Plan, f plan.Finding) bool {
	for _, g := range p.Findings {
		if g.Check == f.Check && g.Code == f.Code && g.Address == f.Address && g.Status == f.Status {
			return true
		}
	}
	return false
}
