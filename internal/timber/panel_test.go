package timber

import (
	"strings"
	"testing"

	"scantling/internal/figure"
	"scantling/internal/unit"
)

// TestPanels: Architectural Woodwork Standards (1st edition, 2009, 4.4.14.10) count
// Douglas-fir plywood with 950,000 psi and hardwood-veneered with 1,800,000 psi.
func TestPanels(t *testing.T) {
	for _, c := range []struct {
		name  string
		mm    int64
		along float64
		fails bool
	}{
		{"douglas-fir plywood", 19, 950000 * 0.00689475729316836 / 1000, false},
		{"hardwood-veneered plywood", 19, 1800000 * 0.00689475729316836 / 1000, false},
		{"birch plywood", 6, 12.737, false}, {"Birch ply", 18, 10.048, false}, {"birch plywood", 2, 12.737, false},
		{"plywood", 18, 7.755, false}, {"MDF", 18, 2.2, false}, {"chipboard", 16, 1.6, false}, {"cardboard", 3, 0, true},
	} {
		p, err := FindPanel(c.name, unit.MM(c.mm))
		if (err != nil) != c.fails || !c.fails && (float64(p.Along.Value) > c.along*1.001 || float64(p.Along.Value) < c.along*0.999) {
			t.Errorf("%s %d: %+v %v, want %g", c.name, c.mm, p.Along, err, c.along)
		}
	}
}

// TestElastic: cherry's own ratios of Table 5-1, and the range of hardwoods for one
// that the table lacks.
func TestElastic(t *testing.T) {
	cherry, _ := Default().Find("black cherry")
	if e := cherry.Elastic(); e.Tangential.Value != 0.086 || e.Radial.Value != 0.197 || e.Across(SawnUnknown).Low != 0.086 || e.Rigid(FlatSawn).Value != 0.147 {
		t.Errorf("%+v", e)
	}
	beech, err := Default().Find("European beech")
	if err != nil {
		t.Fatal(err)
	}
	if e := beech.Elastic(); e.Tangential.Low >= e.Tangential.Value || e.Tangential.High <= e.Tangential.Value || e.Rigid(FlatSawn).Low < 0.03 {
		t.Errorf("%+v", e)
	}
	for _, s := range Default().All() {
		if e := s.Elastic(); e.Tangential.Value <= 0 || e.RigidRadial.Value <= 0 || e.RigidTangential.Value <= 0 || e.Radial.Value <= 0 {
			t.Errorf("%s: %+v", s.Name, e)
		}
	}
}

// TestCopiedElastic compares every elastic ratio, and the birch plywood, with the
// collection that they were copied from.
func TestCopiedElastic(t *testing.T) {
	mine := figure.MustTable("elastic.csv", elasticCSV)
	var here []*figure.Row
	for _, row := range mine.Rows() {
		here = append(here, row)
	}
	n := 0
	for _, row := range referenceTable(t, "elastic_ratios.csv").Rows() {
		if row.Text("species") == "balsa" {
			continue // the catalogue of species has no balsa
		}
		for _, field := range []string{"et_el", "er_el", "glr_el", "glt_el", "status"} {
			if got, want := here[n].Text(field), row.Text(field); got != want {
				t.Errorf("%s %s: %q, want %q", here[n].Text("name"), field, got, want)
			}
		}
		if word, _, _ := strings.Cut(here[n].Text("name"), ","); !strings.Contains(strings.ToLower(row.Text("species")), strings.ToLower(strings.Fields(strings.NewReplacer("Khaya (African mahogany)", "mahogany", "Fir", "fir").Replace(word))[0])) {
			t.Errorf("%s stands beside %s", here[n].Text("name"), row.Text("species"))
		}
		n++
	}
	if n != len(here) {
		t.Errorf("%d rows here, %d there", len(here), n)
	}
	birch := map[string]string{}
	for _, row := range referenceTable(t, "panels.csv").Rows() {
		if strings.HasPrefix(row.Text("material"), "Birch plywood") {
			birch[row.Text("moe_par_gpa")] = row.Text("moe_perp_gpa")
		}
	}
	for _, row := range figure.MustTable("panels.csv", panelsCSV).Rows() {
		if row.Text("kind") == "birch plywood" && birch[row.Text("along")] != row.Text("across") {
			t.Errorf("birch plywood %s: across %s, want %s", row.Text("clause"), row.Text("across"), birch[row.Text("along")])
		}
	}
	if len(birch) != 4 {
		t.Errorf("%v", birch)
	}
}
