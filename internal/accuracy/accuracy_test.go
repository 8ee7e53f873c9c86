package accuracy_test

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scantling/internal/accuracy"
	"scantling/internal/figure"
	"scantling/internal/outside"
	"scantling/internal/unit"
)

// TestStack: three errors whose squares add up by hand: 0.3, 0.4 and 1.2 make 1.9 at
// worst and 1.3 by chance (3-4-5 and 5-12-13).
func TestStack(t *testing.T) {
	each := []unit.Length{300 * unit.Micrometre, -400 * unit.Micrometre, 1200 * unit.Micrometre}
	if got := accuracy.Worst(each...); got != 1900*unit.Micrometre {
		t.Errorf("worst %v", got)
	}
	if got := accuracy.Statistical(each...); got < 1300*unit.Micrometre || got > 1300*unit.Micrometre+1 {
		t.Errorf("by chance %v", got)
	}
}

// TestGrades holds the formula against the table of ISO 286-1 (from memory). The
// standard rounds each figure by rules of its own, by up to 8 %.
func TestGrades(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(outside.Folder(t, "grades of tolerance", "reference"), "it_grades.csv"))
	if err != nil {
		t.Fatal(err)
	}
	table, err := figure.ReadTable("it_grades.csv", string(text))
	if err != nil {
		t.Fatal(err)
	}
	worst, cells := 0.0, 0
	for _, row := range table.Rows() {
		low, high, _ := strings.Cut(row.Text("range_mm"), "-")
		a, _ := unit.Parse(low, unit.Millimetre)
		b, _ := unit.Parse(high, unit.Millimetre)
		for it := 7; it <= 14; it++ {
			want, ok := row.Number([]string{"it7_um", "it8_um", "it9_um", "it10_um", "it11_um", "it12_um", "it13_um", "it14_um"}[it-7])
			if !ok {
				continue
			}
			got, err := accuracy.Grade(it, a, b)
			if err != nil {
				t.Fatal(err)
			}
			off := math.Abs(1000*got.Millimetres()-want) / want
			worst = max(worst, off)
			cells++
			if off > 0.08 {
				t.Errorf("IT%d %s: %.1f, table %g", it, row.Text("range_mm"), 1000*got.Millimetres(), want)
			}
		}
	}
	t.Logf("%d cells, worst %.1f %%", cells, 100*worst)
	if _, err := accuracy.Grade(11, unit.MM(1), unit.MM(2)); err == nil {
		t.Error("under 3 mm")
	}
	if _, err := accuracy.Grade(2, unit.MM(3), unit.MM(6)); err == nil {
		t.Error("IT2")
	}
}
