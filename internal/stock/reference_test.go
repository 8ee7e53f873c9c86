package stock

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scantling/internal/figure"
	"scantling/internal/unit"
)

// TestCopiedSizes compares the merchants' sizes with the collection that they
// were copied from: the folder "reference" in $SCANTLING_SHARED, by default
// ../shared beside the repository. Without it the test is left out, or fails
// under REQUIRE=all. The collection's millimetres are rounded to 0.01.
func TestCopiedSizes(t *testing.T) {
	shared := os.Getenv("SCANTLING_SHARED")
	if shared == "" {
		shared = filepath.Join("..", "..", "..", "shared")
	}
	text, err := os.ReadFile(filepath.Join(shared, "reference", "lumber_sizes.csv"))
	if err != nil {
		if os.Getenv("REQUIRE") == "all" {
			t.Fatal(err)
		}
		t.Skip("the collection of figures is not there: ", err)
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
