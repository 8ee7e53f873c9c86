package rules

import (
	"testing"

	"scantling/internal/unit"
)

func mm(x float64) unit.Value { return unit.OfLength(unit.FromMillimetres(x)) }

func list(vs ...unit.Value) unit.Value { return unit.OfList(vs...) }

func percent(x float64) unit.Value { return unit.OfFloat(unit.DimMoisture, x) }

// TestRules holds each function against a figure worked out by hand from the
// rule that it stands for.
func TestRules(t *testing.T) {
	rod := func(key string, d float64) unit.Value { return list(unit.OfText(key), mm(d), mm(350)) }
	headed := list(unit.OfText("h"), mm(4), mm(350), mm(12), mm(10))
	flat := list(unit.OfText("Cherry, black"), unit.OfText("flat-sawn"))
	season := list(percent(8), percent(6), percent(12))
	cutters := list(list(unit.OfText("a"), mm(6.35), mm(10)), list(unit.OfText("b"), mm(12.7), mm(12)))
	for _, c := range []struct {
		fn   string
		args []unit.Value
		want unit.Value
	}{
		{"housing_depth", []unit.Value{mm(18), mm(14), mm(0.5)}, mm(6)},         // a third
		{"rebate_depth", []unit.Value{mm(18), mm(14), mm(0.5)}, mm(12)},         // a tongue of a third
		{"back_rebate_depth", []unit.Value{mm(14), mm(6), mm(0.5)}, mm(7)},      // half
		{"groove_depth", []unit.Value{mm(10), mm(4), mm(0.5)}, mm(5)},           // half
		{"stopped_end", []unit.Value{mm(18), mm(0.5)}, mm(9)},                   // half, at least 6
		{"channel_radius", []unit.Value{mm(6), mm(20), cutters}, mm(3.175)},     // the least that takes it
		{"channel_depth", []unit.Value{mm(6), mm(20), cutters}, mm(3)},          // half the rod
		{"channel_depth", []unit.Value{mm(12.7), mm(20), cutters}, mm(6.35)},    // to its radius
		{"channel_mouth", []unit.Value{mm(12.7), mm(20), cutters}, mm(12.7)},    // twice the radius
		{"season_dry", []unit.Value{mm(0), mm(2), season, flat}, mm(2)},         // nothing moves
		{"season", []unit.Value{mm(100), mm(0.5), season}, mm(0.5)},             // no wood moves
		{"season", []unit.Value{mm(100), mm(0.5), season, flat}, mm(1.492)},     // 100 x 0.00248 x 4 = 0.992 (Wood Handbook Table 13-5), and the reserve
		{"season_dry", []unit.Value{mm(100), mm(0.5), season, flat}, mm(0.996)}, // 100 x 0.00248 x 2 = 0.496
		{"tenon_length", []unit.Value{mm(45), mm(20), mm(0.5)}, mm(30)},         // two thirds
		{"tenon_thickness", []unit.Value{mm(20), mm(0.5)}, mm(7)},               // what two cheeks of a third leave
		{"tenon_shoulder", []unit.Value{mm(80), mm(0.5)}, mm(8)},                // a tenth
		{"haunch_shoulder", []unit.Value{mm(90), mm(7), mm(0.5)}, mm(30)},       // a third
		{"loose_thickness", []unit.Value{mm(22), mm(100), mm(45), mm(0.5)}, mm(7)},
		{"loose_width", []unit.Value{mm(22), mm(100), mm(45), mm(0.5)}, mm(28)},
		{"loose_into", []unit.Value{mm(22), mm(100), mm(45), mm(0.5)}, mm(30)},
		{"loose_margin", []unit.Value{mm(22), mm(100), mm(45), mm(0.5)}, mm(21)},
		{"tongue_depth", []unit.Value{mm(18), mm(20), mm(0.5)}, mm(6)},  // a third of the thinner
		{"tongue_thickness", []unit.Value{mm(20), mm(0.5)}, mm(6.5)},    // a third
		{"slide_depth", []unit.Value{mm(18), mm(20), mm(0.5)}, mm(6)},   // a third of the side
		{"slide_neck", []unit.Value{mm(18), mm(20), mm(0.5)}, mm(13.5)}, // two thirds
		{"lap", []unit.Value{mm(20), mm(0.5)}, mm(4)},                   // a fifth
		{"lean_softwood", []unit.Value{mm(12)}, mm(2)},                  // one in six
		{"lean_hardwood", []unit.Value{mm(12)}, mm(1.5)},                // one in eight
		{"pin", []unit.Value{mm(12), mm(0.5)}, mm(6)},                   // half
		{"spline_thickness", []unit.Value{mm(18), mm(25), mm(0.5)}, mm(6)},
		{"spline_depth", []unit.Value{mm(18), mm(25), mm(0.5)}, mm(9)},
		{"spline_heel", []unit.Value{mm(18), mm(25), mm(0.5)}, mm(4)},
		{"key_thickness", []unit.Value{mm(100), mm(12), mm(17), mm(0.5)}, mm(3)},
		{"key_depth", []unit.Value{mm(100), mm(12), mm(18), mm(0.5)}, mm(12)},
		{"mitre_length", []unit.Value{mm(30), mm(40)}, mm(50)}, // 3, 4, 5
		{"mitre_along", []unit.Value{mm(10), mm(30), mm(40)}, mm(6)},
		{"mitre_leg", []unit.Value{mm(10), mm(40), mm(30)}, mm(12.5)},
		{"share", []unit.Value{list(rod("a", 2), rod("b", 2), headed), unit.OfCount(2)}, list(list(rod("a", 2), rod("b", 2)), list(headed))},
		{"share", []unit.Value{list(mm(5), mm(5), mm(5)), unit.OfCount(2)}, list(list(mm(5), mm(5)), list(mm(5)))},
	} {
		got, err := Functions()[c.fn](c.args)
		if err != nil || !got.Equal(c.want) {
			t.Errorf("%s%v = %v (%v), not %v", c.fn, c.args, got, err, c.want)
		}
	}
}

// TestRefusals gives every function what it does not take: an error, no panic.
func TestRefusals(t *testing.T) {
	odd := []unit.Value{{}, unit.OfText("x"), unit.OfCount(3), mm(-4), list(), list(unit.OfText("x")), list(list(), mm(1))}
	for name, f := range Functions() {
		for n := range 5 {
			for _, v := range odd {
				args := make([]unit.Value, n)
				for i := range args {
					args[i] = v
				}
				if got, err := f(args); err == nil && got.IsZero() {
					t.Errorf("%s of %d times %v gives nothing and no error", name, n, v)
				}
			}
		}
	}
}
