package reference

import (
	"bytes"
	"os"
	"testing"
)

// TestPlanIsCurrent holds that docs/PLAN.md says what the types say.
func TestPlanIsCurrent(t *testing.T) {
	want, err := Plan("../../..")
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile("../../../docs/PLAN.md")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Error("docs/PLAN.md is out of date: go run ./tools/plandoc")
	}
}
