package sundries_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"scantling/internal/figure"
	"scantling/internal/outside"
	"scantling/internal/sundries"
	"scantling/internal/timber"
)

// TestGlues: every glue can be found by all its names, and every figure has a
// status and lies within its range.
func TestGlues(t *testing.T) {
	if len(sundries.Glues()) < 10 {
		t.Errorf("%d glues", len(sundries.Glues()))
	}
	for _, g := range sundries.Glues() {
		for _, n := range append([]string{g.Name, strings.ToUpper(g.Name)}, g.Also...) {
			if found, err := sundries.FindGlue(n); err != nil || found.Name != g.Name {
				t.Errorf("%s: %v %v", n, found.Name, err)
			}
		}
		for _, f := range []figure.Of[sundries.Minutes]{g.Open, g.Closed, g.Clamp, g.Cure} {
			if f.Known() && (f.Low > f.Value || f.Value > f.High || f.Source.Status == "" || f.Source.Title == "") {
				t.Errorf("%s: %+v", g.Name, f)
			}
		}
		if g.Coldest.Low > g.Coldest.Value || g.Coldest.Value > g.Coldest.High || g.Light.Low > g.Light.Value || g.Dense.Value > g.Dense.High || g.Check() != nil {
			t.Errorf("%+v", g)
		}
	}
	_, err := sundries.FindGlue("fish paste " + strings.Repeat("x", 200))
	if err == nil || !strings.Contains(err.Error(), "unknown-glue") || len(err.Error()) > 500 {
		t.Errorf("%v", err)
	}
}

// TestClampAt: by hand, the time doubles for every 15 °F below 70 °F: at 40 °F
// (4.44 °C) an hour becomes four, where yellow glue still sets at 4; at 70 and 90
// it stays an hour; polyurethane's four hours become eight at 55 °F (12.78 °C).
func TestClampAt(t *testing.T) {
	f := func(fahrenheit float64) timber.Temperature { return timber.Temperature((fahrenheit - 32) / 1.8) }
	pva, _ := sundries.FindGlue("pva")
	pva.Coldest.Value = 4
	pu, _ := sundries.FindGlue("polyurethane")
	for _, c := range []struct {
		glue sundries.Glue
		at   timber.Temperature
		want float64
	}{{pva, f(40), 240}, {pva, f(55), 120}, {pva, f(70), 60}, {pva, f(90), 60}, {pu, f(55), 480}} {
		if got, err := c.glue.ClampAt(c.at); err != nil || math.Abs(float64(got.Value)-c.want) > 1e-6 {
			t.Errorf("%s at %.1f: %v %v", c.glue.Name, float64(c.at), got.Value, err)
		}
	}
	pva, _ = sundries.FindGlue("yellow PVA")
	if _, err := pva.ClampAt(6.9); err == nil || !strings.Contains(err.Error(), "too-cold") {
		t.Errorf("too cold: %v", err)
	}
	if _, err := pva.ClampAt(7); err != nil {
		t.Error(err)
	}
	if _, err := pva.ClampAt(timber.Temperature(math.NaN())); err == nil {
		t.Error("no temperature is taken")
	}
	if _, err := (sundries.Glue{}).ClampAt(20); err == nil {
		t.Error("an unknown clamp time is taken")
	}
}

// TestFinishes: as for glues; rags of drying oils heat up, shellac's do not.
func TestFinishes(t *testing.T) {
	for _, f := range sundries.Finishes() {
		for _, n := range append([]string{f.Name}, f.Also...) {
			if found, err := sundries.FindFinish(n); err != nil || found.Name != f.Name {
				t.Errorf("%s: %v", n, err)
			}
		}
		if !f.Recoat.Known() || !f.Cure.Known() || !f.Coverage.Known() || f.Coverage.Low > f.Coverage.Value || f.Coverage.Value > f.Coverage.High || f.Check() != nil {
			t.Errorf("%+v", f)
		}
		if f.Oil && !f.Rags || f.Oil && f.Film {
			t.Errorf("%s: oil %v, film %v, rags %v", f.Name, f.Oil, f.Film, f.Rags)
		}
	}
	for name, rags := range map[string]bool{"Danish oil": true, "linseed oil": true, "wiping varnish": true, "shellac": false, "wax": false} {
		if f, err := sundries.FindFinish(name); err != nil || f.Rags != rags {
			t.Errorf("%s: %v %v", name, f.Rags, err)
		}
	}
	if _, err := sundries.FindFinish("soap"); err == nil {
		t.Error("soap is known")
	}
	shellac, _ := sundries.FindFinish("shellac")
	oil, _ := sundries.FindFinish("tung oil")
	if sundries.LastGrit(shellac) != 180 || sundries.LastGrit(oil) != 220 {
		t.Error("grits before finishes")
	}
}

// TestLadder: steps of no more than one and a half.
func TestLadder(t *testing.T) {
	for _, c := range []struct {
		first, last int
		have, want  []int
		steep       bool
	}{
		{80, 220, nil, []int{80, 120, 180, 220}, false},
		{120, 180, nil, []int{120, 180}, false},
		{120, 220, []int{80, 150, 240}, []int{120, 150, 220}, false},
		{80, 240, []int{80, 180, 240}, []int{80, 180, 240}, true},
		{100, 100, nil, []int{100}, false},
	} {
		got, steep := sundries.Ladder(c.first, c.last, c.have)
		if !slices.Equal(got, c.want) || steep != c.steep {
			t.Errorf("%d to %d: %v %v", c.first, c.last, got, steep)
		}
	}
	if len(sundries.Grits()) < 8 {
		t.Error("few grits")
	}
}

// TestAgainstReference holds the catalogue against the table that it was made
// from, where that is at hand: every figure lies in the range given there.
func TestAgainstReference(t *testing.T) {
	folder := outside.Folder(t, "glues and finishes by the reference tables", "reference")
	rows := func(name string) figure.Table {
		text, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		return figure.MustTable(name, string(text))
	}
	inRange := func(what, text string, factor, got float64) {
		if i := strings.IndexAny(text, " ("); i > 0 {
			text = text[:i]
		}
		low, high, both := strings.Cut(text, "-")
		if !both {
			high = low
		}
		a, errA := strconv.ParseFloat(low, 64)
		b, errB := strconv.ParseFloat(high, 64)
		if errA != nil || errB != nil {
			return // words
		}
		if got < a*factor*0.999 || got > b*factor*1.001 {
			t.Errorf("%s: %v, the table has %s", what, got, text)
		}
	}
	names := map[string]string{"yellow PVA (aliphatic)": "pva", "white PVA": "white pva", "cross-linking PVA (type II/D3)": "cross-linking pva", "cross-linking PVA (type I/D4)": "D4 pva",
		"polyurethane one-part": "polyurethane", "epoxy laminating": "epoxy", "urea-formaldehyde powder": "uf", "hot hide glue": "hide", "liquid hide glue": "liquid hide"}
	seen := 0
	for _, row := range rows("adhesives.csv").Rows() {
		n, ok := names[row.Text("adhesive")]
		if !ok {
			continue
		}
		seen++
		g, err := sundries.FindGlue(n)
		if err != nil {
			t.Fatal(err)
		}
		inRange(n+" open", row.Text("open_min"), 1, float64(g.Open.Value))
		inRange(n+" closed", row.Text("closed_total_min"), 1, float64(g.Closed.Value))
		inRange(n+" clamp", row.Text("clamp_h"), 60, float64(g.Clamp.Value))
		inRange(n+" cure", row.Text("full_cure_h"), 60, float64(g.Cure.Value))
		inRange(n+" coldest", row.Text("min_temp_c"), 1, float64(g.Coldest.Value))
		inRange(n+" spread", row.Text("spread_g_m2"), 1, float64(g.Spread.Value))
	}
	finishes := map[string]string{"oil-modified polyurethane varnish": "varnish", "pure tung oil": "tung oil", "Danish oil": "danish oil", "hardwax oil": "hardwax oil", "boiled linseed oil": "linseed oil",
		"shellac 2 lb cut": "shellac", "nitrocellulose lacquer (spray)": "lacquer", "paste wax": "wax", "wiping/brushing tung-oil varnish, brushed or padded": "wiping varnish", "water-borne polycarbonate/acrylic topcoat": "water varnish"}
	for _, row := range rows("finishes.csv").Rows() {
		n, ok := finishes[row.Text("finish")]
		if !ok {
			continue
		}
		seen++
		f, err := sundries.FindFinish(n)
		if err != nil {
			t.Fatal(err)
		}
		if n != "wax" { // 0.3 h there is 18 minutes; 20 are told
			inRange(n+" recoat", row.Text("recoat_h"), 60, float64(f.Recoat.Value))
		}
		inRange(n+" coverage", row.Text("coverage_m2_per_l_per_coat"), 1, float64(f.Coverage.Value))
		inRange(n+" cure", row.Text("full_cure_days"), 1440, float64(f.Cure.Value))
		inRange(n+" coats", row.Text("coats"), 1, f.Coats.Value)
	}
	if seen != len(names)+len(finishes) {
		t.Errorf("%d rows of the tables were found", seen)
	}
}
