package reference

import (
	"bytes"
	"os"
	"testing"
)

// TestPageIsUpToDate: the page lists what the sources say.
func TestPageIsUpToDate(t *testing.T) {
	want, err := Page("../../..")
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile("../../../docs/FINDINGS.md")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Error("docs/FINDINGS.md is out of date: go run ./tools/findingsdoc")
	}
}

// TestCodesSayWhatTheyMean: every code stands once and has a meaning.
func TestCodesSayWhatTheyMean(t *testing.T) {
	codes, err := Codes("../../..")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, c := range codes {
		if seen[string(c.Code)] {
			t.Errorf("%s stands twice", c.Code)
		}
		if seen[string(c.Code)] = true; len(c.Meaning) < 10 {
			t.Errorf("%s.%s (%s) does not say what it means: %q", c.Package, c.Name, c.Code, c.Meaning)
		}
	}
	if len(codes) < 150 {
		t.Errorf("%d codes", len(codes))
	}
}
