package scantling_test

import (
	"context"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"scantling"
	"scantling/internal/diag"
	"scantling/internal/outside"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/unit"
)

// TestJointDocuments plans a small document for each joint and for bought fittings,
// from the document to the rehearsal: no error, the plan sound, no two parts and no
// fitting in each other, every file written.
func TestJointDocuments(t *testing.T) {
	w := folderWorld(t, "testdata/joints")
	_, builtIn := shop.Default(unit.Metric)
	rack, err := w.Read("rack.hcl")
	if err == nil {
		err = w.Write("shop.hcl", slices.Concat(builtIn, []byte("\n"), rack))
	}
	if err != nil {
		t.Fatal(err)
	}
	names, err := filepath.Glob(filepath.Join(outside.Root(), "testdata", "joints", "*.piece.hcl"))
	if err != nil || len(names) < 7 {
		t.Fatal(names, err)
	}
	for _, path := range names {
		name := filepath.Base(path)
		t.Run(strings.TrimSuffix(name, ".piece.hcl"), func(t *testing.T) {
			r, err := scantling.Plan(context.Background(), w, name, scantling.Options{})
			if err != nil {
				t.Fatal(err)
			}
			for _, d := range r.Plan.Diagnostics {
				if d.Severity == diag.Error {
					t.Errorf("%s: %v", d.Code, d.Text)
				}
			}
			clear := false
			for _, f := range r.Plan.Findings {
				if f.Severity == diag.Error && f.Status != plan.Pass {
					t.Errorf("%s %s: %v", f.Code, f.Address, f.Text)
				}
				clear = clear || f.Check == "collision" && f.Status == plan.Pass
			}
			if !clear {
				t.Error("nobody says that the parts are clear of each other")
			}
			for _, fault := range r.Plan.Unsound() {
				t.Error(fault)
			}
			if files, err := r.Files(); err != nil || len(files) < 5 {
				t.Errorf("%d files, %v", len(files), err)
			}
		})
	}
}
