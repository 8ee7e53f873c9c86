package timber

import (
	"testing"

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
