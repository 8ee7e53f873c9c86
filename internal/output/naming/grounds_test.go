package naming

import (
	"testing"

	"scantling/internal/figure"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Quantities of every dimension are shown with their unit, sources in words.
func TestGrounds(t *testing.T) {
	n := Of(sample(), english())
	of := func(d unit.Dim, x int64, in string) plan.Estimate {
		return plan.Estimate{Value: unit.OfInt(d, x), Unit: in}
	}
	for want, e := range map[string]plan.Estimate{
		"15 mm": {Value: unit.OfLength(unit.MM(15))}, "5 kg": of(unit.DimMass, 5000, ""), "42 N": of(unit.DimForce, 42, "N"), "3°": of(unit.DimAngle, 3, ""),
		"18 °C": of(unit.DimTemp, 18, ""), "9%": of(unit.DimMoisture, 9, ""), "12%": of(unit.DimUntyped, 12, "percent"), "30 min": of(unit.DimTime, 30, ""),
		"7 N m": of(unit.DimUntyped, 7, "N m"), "2": of(unit.DimUntyped, 2, ""), "4": of(unit.DimCount, 4, ""), "": {},
		"3 mm (2 mm to 5 mm)": {Value: unit.OfLength(unit.MM(3)), Low: unit.OfLength(unit.MM(2)), High: unit.OfLength(unit.MM(5))},
		"4 mm":                {Value: unit.OfLength(unit.MM(4)), Low: unit.OfLength(unit.MM(4) - 1), High: unit.OfLength(unit.MM(4) + 1)}, // ends that look alike
	} {
		if got := n.Quantity(e); got != want {
			t.Errorf("%q, wanted %q", got, want)
		}
	}
	f := plan.Finding{Rule: "cross grain", Sources: []figure.Source{
		{Key: "check.x", Status: figure.Practice}, {Key: "check.y", Status: figure.Practice}, {Key: "tool.stated.most_width", Status: figure.Stated},
		{Key: "t", Title: "Wood Handbook", Status: figure.Read}, {Title: "16 CFR 1219 (cited)"}, {Key: "house.cross grain", Title: "habit", Status: figure.Stated},
	}, Figures: []plan.Quantity{{Role: plan.RoleIs, Estimate: of(unit.DimForce, 42, "N")}, {Role: plan.RoleLimit, Estimate: of(unit.DimForce, 50, "N")}}}
	if got, want := n.Grounds(f), `Common practice, without a published source; as stated; Wood Handbook (looked up); 16 CFR 1219 (cited); a rule of this shop: habit; the house rule "cross grain" in the shop document changes the limit`; got != want {
		t.Errorf("%q", got)
	}
	if got := n.Figures(f); got != "Here 42 N; limit 50 N" {
		t.Errorf("%q", got)
	}
}
