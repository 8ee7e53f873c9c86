package scantling_test

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scantling/internal/accuracy"
	"scantling/internal/figure"
	"scantling/internal/mechanics"
	"scantling/internal/outside"
	"scantling/internal/stock"
	"scantling/internal/sundries"
	"scantling/internal/timber"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// worked are the inputs of one worked example.
type worked map[string]any

func (w worked) x(name string) float64 { x, _ := w[name].(float64); return x }

func (w worked) mm(name string) unit.Length { return unit.FromMillimetres(w.x(name)) }

func (w worked) in(name string) unit.Length { return unit.FromMillimetres(w.x(name) * 25.4) }

func (w worked) list(name string) []float64 {
	var out []float64
	all, _ := w[name].([]any)
	for _, v := range all {
		x, _ := v.(float64)
		out = append(out, x)
	}
	return out
}

func (w worked) lengths(name string) []unit.Length {
	var out []unit.Length
	for _, x := range w.list(name) {
		out = append(out, unit.FromMillimetres(x))
	}
	return out
}

// TestWorkedExamples recomputes every row of the collection of worked examples by
// the product's own functions. A row that no function knows fails. The log names
// each source; rows of status "computed" are arithmetic on a published formula and
// prove nothing independent.
func TestWorkedExamples(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(outside.Folder(t, "worked examples with sources", "reference"), "worked_examples.csv"))
	if err != nil {
		t.Fatal(err)
	}
	table, err := figure.ReadTable("worked_examples.csv", string(text))
	if err != nil {
		t.Fatal(err)
	}
	counts := map[string]int{}
	for _, row := range table.Rows() {
		id, status := row.Text("id"), row.Text("status")
		expected, _ := row.Number("expected")
		tolerance, _ := row.Number("tolerance")
		in := worked{}
		if err := json.Unmarshal([]byte(row.Text("inputs_json")), &in); err != nil || row.Err() != nil {
			t.Fatal(id, err, row.Err())
		}
		counts[status]++
		t.Run(id, func(t *testing.T) {
			got, err := recompute(id, in)
			if err != nil {
				t.Fatal(err)
			}
			if off := math.Abs(got - expected); !(off <= tolerance+1e-12) {
				t.Errorf("%g, want %g %s within %g (%s, %s)", got, expected, row.Text("unit"), tolerance, row.Text("source"), status)
			} else {
				t.Logf("%.7g against %g %s (%s, %s)", got, expected, row.Text("unit"), row.Text("source"), status)
			}
		})
	}
	t.Logf("%v", counts)
	if counts["published-read"] < 48 || counts["published-memory"] < 13 || counts["computed"] < 31 {
		t.Errorf("rows are missing: %v", counts)
	}
}

// recompute gives one example to the function that it belongs to: the rule with the
// longest beginning of its id.
func recompute(id string, in worked) (float64, error) {
	for _, family := range []map[string]func(worked) (float64, error){moistureExamples, shelfExamples, bowExamples, fasteningExamples, standingExamples, shopExamples} {
		best := ""
		for name := range family {
			if strings.HasPrefix(id, name) && len(name) > len(best) {
				best = name
			}
		}
		if best != "" {
			return family[best](in)
		}
	}
	return 0, figure.Refuse("no function for the example " + id)
}

var moistureExamples = map[string]func(worked) (float64, error){
	"emc-": func(w worked) (float64, error) {
		celsius := w.x("t_c")
		if _, ok := w["t_f"]; ok {
			celsius = (w.x("t_f") - 32) / 1.8
		}
		m, err := timber.EMC(timber.Air{Humidity: timber.Humidity(w.x("rh")), Temperature: timber.Temperature(celsius)})
		return float64(m), err
	},
	"mov-mesquite": func(w worked) (float64, error) {
		return timber.NarrowChange(w.in("d_in"), timber.Coefficient(w.x("c")), 8, 8+timber.Moisture(w.x("dmc"))).Millimetres() / 25.4, nil
	},
	"mov-maple-drawer": seasonExample, "mov-cherry-drawer": seasonExample,
	"mov-whitefir-13-1": func(w worked) (float64, error) {
		return timber.NarrowChange(w.mm("d_mm"), timber.Coefficient(w.x("c")), 8, 8+timber.Moisture(w.x("dmc"))).Millimetres(), nil
	},
	"mov-whitefir-13-2": func(w worked) (float64, error) {
		l, err := timber.WideChange(w.mm("d_mm"), timber.Shrinkage(w.x("s")), timber.Moisture(w.x("fsp")), timber.Moisture(w.x("mi")), timber.Moisture(w.x("mf")))
		return l.Millimetres(), err
	},
	"coef-": func(w worked) (float64, error) {
		c, err := timber.CoefficientOf(timber.Shrinkage(w.x("s")), timber.Moisture(w.x("fsp")))
		return float64(c), err
	},
	"size-1313": func(w worked) (float64, error) {
		l, err := timber.SizeAt(w.mm("nominal_mm"), timber.Moisture(w.x("mc")))
		return l.Millimetres(), err
	},
	"density-": func(w worked) (float64, error) {
		return float64(timber.DensityAt(timber.Gravity(w.x("g")), timber.Moisture(w.x("mc")))), nil
	},
	"drying-tau": func(w worked) (float64, error) {
		return float64(mechanics.TimeConstant(w.mm("h"), mechanics.Diffusivity(w.x("d")))) / 24, nil
	},
}

func seasonExample(w worked) (float64, error) {
	rh := w.list("rh")
	at := func(h float64) timber.Air { return timber.Air{Humidity: timber.Humidity(h), Temperature: 21.11} }
	s, err := timber.SeasonOf(at(rh[0]), at(rh[0]), at(rh[1]))
	return timber.NarrowChange(w.in("d_in"), timber.Coefficient(w.x("c")), s.Dry, s.Wet).Millimetres() / 25.4, err
}

var shelfExamples = map[string]func(worked) (float64, error){
	"aws-": func(w worked) (float64, error) {
		l, err := mechanics.SpanFor(mechanics.PSI(w.x("e_psi")), w.in("t_in"), mechanics.PSF(w.x("psf")), 144)
		return l.Millimetres() / 25.4, err
	},
	"shelf-redoak": func(w worked) (float64, error) {
		b := mechanics.Beam{Span: w.mm("l"), Width: w.mm("depth"), Thickness: w.mm("t"), Stiff: mechanics.Stress(w.x("e_mpa")), Loading: mechanics.Spread, Ends: mechanics.Supported}
		s, err := b.Sag(mechanics.Pressure(w.x("kpa")).On(b.Span, b.Width))
		return s.Whole().Millimetres(), err
	},
	"shelf-clamped-ratio": func(worked) (float64, error) {
		return constantsRatio(mechanics.Spread, mechanics.Supported, mechanics.Spread, mechanics.Clamped)
	},
	"shelf-point-vs-uniform": func(worked) (float64, error) {
		return constantsRatio(mechanics.Centre, mechanics.Supported, mechanics.Spread, mechanics.Supported)
	},
	"shelf-shear-share": func(w worked) (float64, error) {
		return float64(mechanics.ShearShare(mechanics.Ratio(w.x("e_over_g")), mechanics.Ratio(w.x("l_over_h")))), nil
	},
	"shelf-creep": func(w worked) (float64, error) {
		k, err := mechanics.Creep(mechanics.CreepSolid, mechanics.Dry)
		if float64(k.Value) != w.x("kdef") {
			return 0, figure.Refuse("the table's creep is another")
		}
		return mechanics.Lasting(w.mm("inst"), k.Value, 1).Millimetres(), err
	},
	"shelf-inverse-E": func(w worked) (float64, error) {
		return float64(mechanics.StiffnessOf(mechanics.Force(w.x("p")), w.mm("d"), w.mm("l"), w.mm("b"), w.mm("h"))), nil
	},
}

func constantsRatio(l mechanics.Loading, e mechanics.Ends, l2 mechanics.Loading, e2 mechanics.Ends) (float64, error) {
	a, _, err := mechanics.BeamConstants(l, e)
	if err != nil {
		return 0, err
	}
	b, _, err := mechanics.BeamConstants(l2, e2)
	return float64(a / b), err
}

var bowExamples = map[string]func(worked) (float64, error){
	"bow-equal": twoLayerExample, "bow-third": twoLayerExample, "bow-veneer": twoLayerExample,
	"bow-sag": func(w worked) (float64, error) {
		return mechanics.Curvature(w.x("kappa")).Rise(w.mm("w")).Millimetres(), nil
	},
	"bow-gradient": func(w worked) (float64, error) {
		return float64(mechanics.EvenBow(mechanics.Strain(w.x("eps")), w.mm("h"))), nil
	},
}

func twoLayerExample(w worked) (float64, error) {
	m, n := 1.0, 1.0
	if _, ok := w["m"]; ok {
		m, n = w.x("m"), w.x("n")
	}
	second := w.x("h") / (1 + m)
	k, err := mechanics.TwoLayer{
		First: unit.FromMillimetres(w.x("h") - second), Second: unit.FromMillimetres(second),
		StiffFirst: mechanics.Stress(1000 * n), StiffSecond: 1000, Apart: mechanics.Strain(w.x("eps")),
	}.Bow()
	return float64(k), err
}

var fasteningExamples = map[string]func(worked) (float64, error){
	"nail6d-": func(w worked) (float64, error) {
		return mechanics.NailWithdrawal(mechanics.Gravity(w.x("g")), w.in("d_in"), unit.Inch).Pounds(), nil
	},
	"nail-metric": func(w worked) (float64, error) {
		return float64(mechanics.NailWithdrawal(mechanics.Gravity(w.x("g")), w.mm("d"), w.mm("l"))), nil
	},
	"nail-fpl236": func(w worked) (float64, error) {
		return mechanics.OldNailWithdrawal(mechanics.Gravity(w.x("g")), w.in("d_in"), unit.Inch).Pounds(), nil
	},
	"screw-withdraw": func(w worked) (float64, error) {
		return float64(mechanics.ScrewWithdrawal(mechanics.Gravity(w.x("g")), w.mm("d"), w.mm("l"))), nil
	},
	"nail-lateral": func(w worked) (float64, error) {
		return float64(mechanics.NailLateral(mechanics.Ratio(w.x("k")), w.mm("d"))), nil
	},
	// With K for pounds and inches the same power law holds for the bare numbers.
	"nail-lateral-inch": func(w worked) (float64, error) {
		return float64(mechanics.NailLateral(mechanics.Ratio(w.x("k")), w.mm("d_in"))), nil
	},
	"screw-lateral": func(w worked) (float64, error) {
		return float64(mechanics.ScrewLateral(mechanics.Ratio(w.x("k")), w.mm("d"))), nil
	},
	"dowel-eckelman": func(w worked) (float64, error) {
		return mechanics.DowelWithdrawal(w.in("d_in"), w.in("l_in"), mechanics.PSI(w.x("s1_psi")), mechanics.PSI(w.x("s2_psi"))).Pounds(), nil
	},
	"tenon-cheek": func(w worked) (float64, error) {
		return float64(mechanics.TenonMoment(w.mm("b"), w.mm("l"), mechanics.Stress(w.x("tau")))), nil
	},
}

var standingExamples = map[string]func(worked) (float64, error){
	"tip-pull": func(w worked) (float64, error) {
		s := mechanics.Stand([]mechanics.Load{{Mass: mechanics.Mass(w.x("m")), Behind: unit.FromMillimetres(1000 * w.x("x"))}})
		return float64(s.Pull(unit.FromMillimetres(1000 * w.x("h")))), nil
	},
	"tip-child": func(w worked) (float64, error) {
		return float64(mechanics.NeedToBear(mechanics.Child.Value, unit.FromMillimetres(1000*w.x("a")))), nil
	},
	"tip-carpet": func(w worked) (float64, error) {
		return mechanics.Carpet(mechanics.CarpetStrip.Value, w.mm("depth"), w.mm("h")).Millimetres(), nil
	},
	"drawer-jam": func(w worked) (float64, error) {
		return mechanics.JamsBeyond(w.mm("l"), mechanics.Friction(w.x("mu"))).Millimetres(), nil
	},
	"drawer-wobble": func(w worked) (float64, error) {
		return mechanics.Wobble(w.mm("c"), w.mm("l"), w.mm("proj")).Millimetres(), nil
	},
}

var shopExamples = map[string]func(worked) (float64, error){
	"bf-": func(w worked) (float64, error) {
		f := func(name string, of unit.Length) unit.Length {
			return unit.FromMillimetres(w.x(name) * of.Millimetres())
		}
		bf, err := stock.BoardFeetOf(w.in("w_in"), f("l_ft", unit.Foot), w.in("t_in"))
		return float64(bf) / float64(stock.BoardFoot), err
	},
	"ply-18-plus": func(w worked) (float64, error) {
		f := stock.UsualThickness("plywood", w.mm("t"))
		return (f.High - f.Value).Millimetres(), nil
	},
	"ply-18-minus": func(w worked) (float64, error) {
		f := stock.UsualThickness("plywood", w.mm("t"))
		return (f.Value - f.Low).Millimetres(), nil
	},
	"rim-3in": func(w worked) (float64, error) {
		return float64(tool.RimSpeedOf(w.in("d_in"), tool.Speed(w.x("rpm")))) * 60 / 0.3048, nil
	},
	"rim-889": func(w worked) (float64, error) {
		return float64(tool.RimSpeedOf(w.mm("d"), tool.Speed(w.x("rpm")))), nil
	},
	"feed-tooth": func(w worked) (float64, error) {
		return tool.FeedPerTooth(tool.FeedRate(unit.FromMillimetres(1000*w.x("v_m_min"))), tool.Speed(w.x("rpm")), int(w.x("z"))).Millimetres(), nil
	},
	"clamp-": func(w worked) (float64, error) {
		m, err := sundries.ClampTime(timber.Temperature((w.x("t_f") - 32) / 1.8))
		return float64(m.Value) / 60, err
	},
	"clamp-force": func(w worked) (float64, error) {
		a := w.lengths("a")
		return float64(sundries.ClampForce(mechanics.Stress(w.x("p_mpa")), a[0], a[1])), nil
	},
	"finish-500": func(w worked) (float64, error) { return float64(sundries.CoverageOf(w.x("ft2_gal"))), nil },
	"finish-film": func(w worked) (float64, error) {
		return 1000 * sundries.WetFilm(sundries.Coverage(w.x("m2_l"))).Millimetres(), nil
	},
	"wc-":  func(w worked) (float64, error) { return accuracy.Worst(w.lengths("t")...).Millimetres(), nil },
	"rss-": func(w worked) (float64, error) { return accuracy.Statistical(w.lengths("t")...).Millimetres(), nil },
	"it11-": func(w worked) (float64, error) {
		low, high, _ := strings.Cut(w["range"].(string), "-")
		a, err := unit.Parse(low, unit.Millimetre)
		if err != nil {
			return 0, err
		}
		b, err := unit.Parse(high, unit.Millimetre)
		if err != nil {
			return 0, err
		}
		l, err := accuracy.Grade(11, a, b)
		return 1000 * l.Millimetres(), err
	},
}

// TestAnotherExampleIsNotPassedOver: an id that no function knows is an error.
func TestAnotherExampleIsNotPassedOver(t *testing.T) {
	for _, id := range []string{"", "shelf-marble", "nothing"} {
		if _, err := recompute(id, worked{}); err == nil {
			t.Errorf("%q is passed over", id)
		}
	}
}
