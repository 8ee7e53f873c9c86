package timber

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scantling/internal/figure"
	"scantling/internal/outside"
)

// referenceTable reads a table of the collection of figures that the catalogues
// were copied from. Without it the test is left out.
func referenceTable(t *testing.T, name string) figure.Table {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(outside.Folder(t, "species beside the collection that they were copied from", "reference"), name))
	if err != nil {
		t.Fatal(err)
	}
	table, err := figure.ReadTable(name, string(text))
	if err != nil {
		t.Fatal(err)
	}
	return table
}

// TestCopiedFigures compares every figure of data/species.csv, and whether it was
// read in its source, with the collection that it was copied from.
func TestCopiedFigures(t *testing.T) {
	here := map[string]*figure.Row{}
	for _, row := range figure.MustTable("species.csv", speciesCSV).Rows() {
		here[row.Text("name")] = row
	}
	cells, table := 0, referenceTable(t, "species.csv")
	for _, row := range table.Rows() {
		mine, ok := here[row.Text("name")]
		if !ok {
			t.Errorf("%s was not copied", row.Text("name"))
			continue
		}
		for field := range strings.FieldsSeq("botanical region sg shrink_r shrink_t shrink_v shrink_basis cr ct fsp_pct moe_gpa mor_mpa shear_mpa hardness_n read_fields") {
			cells++
			if got, want := mine.Text(field), row.Text(field); got != want {
				t.Errorf("%s %s: %q, want %q", row.Text("name"), field, got, want)
			}
		}
		if row.Err() != nil || mine.Err() != nil {
			t.Fatal(row.Err(), mine.Err())
		}
	}
	if len(here) != table.Len() {
		t.Errorf("%d species here, %d there", len(here), table.Len())
	}
	t.Logf("%d cells agree", cells)
}

// TestCopiedMoistureTable compares testdata/emc_table.csv, which the formula is held
// against, with the collection: every cell of Wood Handbook FPL-GTR-190, Table 4-2.
func TestCopiedMoistureTable(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("testdata", "emc_table.csv"))
	if err != nil {
		t.Fatal(err)
	}
	type cell struct{ fahrenheit, humidity float64 }
	read := func(table figure.Table, column string) map[cell]float64 {
		out := map[cell]float64{}
		for _, row := range table.Rows() {
			f, _ := row.Number("temp_f")
			rh, _ := row.Number("rh_pct")
			out[cell{f, rh}], _ = row.Number(column)
			if row.Err() != nil {
				t.Fatal(row.Err())
			}
		}
		return out
	}
	here, there := read(figure.MustTable("emc_table.csv", string(text)), "emc_pct"), read(referenceTable(t, "emc_table.csv"), "emc_table_pct")
	for c, want := range there {
		if got, ok := here[c]; !ok || got != want {
			t.Errorf("%g F, %g %%: %g, want %g", c.fahrenheit, c.humidity, got, want)
		}
	}
	if len(here) != len(there) || len(here) != 152 {
		t.Errorf("%d cells here, %d there", len(here), len(there))
	}
}
