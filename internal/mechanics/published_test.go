package mechanics_test

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"scantling/internal/figure"
	"scantling/internal/mechanics"
	"scantling/internal/outside"
	"scantling/internal/unit"
)

func reference(t *testing.T, name string) figure.Table {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(outside.Folder(t, "mechanics beside published tables", "reference"), name))
	if err != nil {
		t.Fatal(err)
	}
	table, err := figure.ReadTable(name, string(text))
	if err != nil {
		t.Fatal(err)
	}
	return table
}

// TestShelfSpans reproduces the table of shelf spans of the Architectural Woodwork
// Standards (1st edition, 2009, 4.4.14.10.11-13; read): simply supported, L/144.
// The table is cut to whole inches, so that ours lies up to an inch above.
func TestShelfSpans(t *testing.T) {
	table := reference(t, "aws_shelf_spans.csv")
	for _, row := range table.Rows() {
		moe, _ := row.Number("moe_psi")
		thick, _ := row.Inches("thickness_in")
		load, _ := row.Number("load_psf")
		want, _ := row.Number("max_length_in")
		got, err := mechanics.SpanFor(mechanics.PSI(moe), thick, mechanics.PSF(load), 144)
		if err != nil || row.Err() != nil {
			t.Fatal(err, row.Err())
		}
		inches := got.Millimetres() / 25.4
		if off := inches - want; off < -0.05 || off > 0.75 {
			t.Errorf("%g psi, %v, %g psf: %.2f in, table %g", moe, thick, load, inches, want)
		}
		if math.Round(inches) != want {
			t.Logf("deviates by cutting to whole inches: %g psi, %v, %g psf: %.2f in, table %g", moe, thick, load, inches, want)
		}
		// The beam formula agrees with its inverse.
		sag, err := mechanics.Beam{Span: got, Width: unit.MM(300), Thickness: thick, Stiff: mechanics.PSI(moe), Loading: mechanics.Spread, Ends: mechanics.Supported}.
			Sag(mechanics.PSF(load).On(got, unit.MM(300)))
		if err != nil || math.Abs(sag.Whole().Millimetres()-got.Millimetres()/144) > 1e-4 {
			t.Errorf("sag %v over %v, want 1/144 (%v)", sag.Whole(), got, err)
		}
	}
	if table.Len() != 12 {
		t.Errorf("%d rows", table.Len())
	}
}

// TestNailWithdrawalTable reproduces a published table of 6d nails in nine woods
// (Wengert, quoting the Wood Handbook; read) to a pound per inch.
func TestNailWithdrawalTable(t *testing.T) {
	table := reference(t, "nail_withdrawal_check.csv")
	for _, row := range table.Rows() {
		g, _ := row.Number("sg")
		d, _ := row.Number("d_in")
		want, _ := row.Number("published_lbf_per_in")
		got := mechanics.NailWithdrawal(mechanics.Gravity(g), unit.FromMillimetres(d*25.4), unit.Inch).Pounds()
		if off := math.Abs(got - want); off > 1 {
			t.Errorf("%s: %.1f lbf/in, published %g", row.Text("species"), got, want)
		} else if off > 0.5 {
			t.Logf("deviates by rounding: %s: %.1f, published %g", row.Text("species"), got, want)
		}
	}
	if table.Len() != 9 {
		t.Errorf("%d rows", table.Len())
	}
}

// TestBeamConstants holds the constants against Wood Handbook FPL-GTR-190 (2010),
// Table 9-1 (read).
func TestBeamConstants(t *testing.T) {
	loads := map[string]mechanics.Loading{"uniform": mechanics.Spread, "concentrated midspan": mechanics.Centre, "concentrated at outer quarter points": mechanics.AtQuarters, "concentrated at free end": mechanics.AtEnd}
	ends := map[string]mechanics.Ends{"both simply supported": mechanics.Supported, "both clamped": mechanics.Clamped, "cantilever": mechanics.Cantilever}
	n := 0
	for _, row := range reference(t, "beam_constants.csv").Rows() {
		if row.Text("deflection_at") == "load point" {
			continue // not at midspan: not wanted
		}
		kb, ks, err := mechanics.BeamConstants(loads[row.Text("loading")], ends[row.Text("ends")])
		if err != nil || math.Abs(float64(kb)-fraction(t, row.Text("kb"))) > 1e-12 || math.Abs(float64(ks)-fraction(t, row.Text("ks"))) > 1e-12 {
			t.Errorf("%s, %s: %g, %g (%v)", row.Text("loading"), row.Text("ends"), kb, ks, err)
		}
		n++
	}
	if n != 7 {
		t.Errorf("%d rows", n)
	}
	if _, _, err := mechanics.BeamConstants(mechanics.AtEnd, mechanics.Clamped); err == nil {
		t.Error("a load at the end of a clamped beam")
	}
}

func fraction(t *testing.T, s string) float64 {
	t.Helper()
	v, err := unit.ParseNumber(s)
	if err == nil {
		return v.Float()
	}
	for i := range s {
		if s[i] == '/' {
			return fraction(t, s[:i]) / fraction(t, s[i+1:])
		}
	}
	t.Fatal(s, err)
	return 0
}

// TestLateralTable holds the rows of Wood Handbook Table 8-4 against their inch
// twins: K in pounds and inches times 4.448/25.4^1.5 for nails, /25.4^2 for screws.
func TestLateralTable(t *testing.T) {
	for _, row := range reference(t, "lateral_k.csv").Rows() {
		inch, _ := row.Number("k_nail_inlb")
		screw, _ := row.Number("k_screw_inlb")
		var lo, hi float64
		for i, r := range row.Text("sg_range") {
			if r == '-' {
				lo, hi = fraction(t, row.Text("sg_range")[:i]), fraction(t, row.Text("sg_range")[i+1:])
			}
		}
		l, err := mechanics.LateralOf(mechanics.Gravity((lo+hi)/2), row.Text("group") == "softwood")
		if err != nil {
			t.Fatal(err)
		}
		d := unit.FromMillimetres(0.2 * 25.4)
		if got, want := l.Nail(d).Pounds(), inch*math.Pow(0.2, 1.5); math.Abs(got-want) > 0.005*want {
			t.Errorf("%s nail: %g, want %g", row.Text("sg_range"), got, want)
		}
		if got, want := l.Screw(d).Pounds(), screw*0.04; math.Abs(got-want) > 0.005*want {
			t.Errorf("%s screw: %g, want %g", row.Text("sg_range"), got, want)
		}
	}
	if _, err := mechanics.LateralOf(0.9, false); err == nil {
		t.Error("heavier than the table")
	}
	if l, err := mechanics.LateralOf(0.475, false); err != nil || l.Nail(unit.MM(1)) > 51 {
		t.Errorf("between two rows the lighter counts: %v", err)
	}
}
