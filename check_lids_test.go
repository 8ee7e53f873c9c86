package scantling_test

import (
	"slices"
	"testing"
)

// TestLidsInDocuments: a key 15 to 21.5 below the line in its middle, 4.9 from it and in
// it; a lid of 11.9; a groove 4.5 over the line and one in 5; pins of which the middle
// one lies in it; fingers of 10 that end 1 below the line, and in the kerf.
func TestLidsInDocuments(t *testing.T) {
	for _, c := range []struct {
		file  string
		codes []string
	}{
		{"passes", nil},
		{"fails", []string{"joint-near-lid"}},
		{"through", []string{"lid-cuts-joint"}},
		{"low", []string{"joint-near-lid"}},
		{"shallow", []string{"joint-near-lid", "lid-shallow"}},
		{"groove", []string{"groove-at-lid"}},
		{"clear", nil},
		{"metal", []string{"lid-cuts-joint"}},
		{"fingers", []string{"lid-leaves-sliver"}},
		{"kerf", nil},
	} {
		var got []string
		for _, f := range findingsOf(t, "lids", c.file) {
			got = append(got, string(f.Code))
		}
		slices.Sort(got)
		if got = slices.Compact(got); !slices.Equal(got, c.codes) {
			t.Errorf("%s: %v, want %v", c.file, got, c.codes)
		}
	}
}
