package stock

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scantling/internal/figure"
	"scantling/internal/outside"
	"scantling/internal/unit"
)

// TestCopiedSizes compares the merchants' sizes with the collection that they
// were copied from. Without it the test is left out. The collection's millimetres are rounded to 0.01.
func TestCopiedSizes(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(outside.Folder(t, "merchants' sizes beside the collection that they were copied from", "reference"), "lumber_sizes.csv"))
	if err != nil {
		t.Fatal(err)
	}
	systems := map[string]System{"PS 20": PS20, "NHLA hardwood": NHLA, "UK/Europe softwood": EN1313_1, "EN 1313-2": EN1313_2, "AU dressed": AUDressed}
	rows := 0
	for _, row := range figure.MustTable("lumber_sizes.csv", string(text)).Rows() {
		name, nominal := row.Text("system"), row.Text("nominal")
		want, ok := row.Millimetres("actual_mm")
		if row.Err() != nil || !ok {
			continue // an allowance in words, not a size
		}
		for prefix, system := range systems {
			if !strings.HasPrefix(name, prefix) {
				continue
			}
			dimension := Thickness
			if strings.Contains(name, "width") {
				dimension = Width
			}
			found := false
			for _, d := range Sizes(system, dimension) {
				if d.Name == nominal {
					found = (d.Actual.Value-want).Abs() <= 5*unit.Micrometre && string(d.Actual.Source.Status) == row.Text("status")
				}
			}
			rows++
			if !found {
				t.Errorf("%s %s %v is not as copied", name, nominal, want.Millimetres())
			}
		}
	}
	if rows != len(lumberOnce()) {
		t.Errorf("%d sizes there, %d here", rows, len(lumberOnce()))
	}
}
