package rows_test

import (
	"maps"
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/marks"
	"scantling/internal/evaluate"
	"scantling/internal/plan"
	"scantling/internal/record"
	"scantling/internal/unit"
)

// asBuilt evaluates the chest with readings of "what" in tenths of a millimetre.
func asBuilt(t *testing.T, inputs map[string]string, of address.Address, readings map[string]int64) evaluate.Result {
	t.Helper()
	src := sources(t, inputs)
	planned := evaluate.Piece(src)
	for _, what := range slices.Sorted(maps.Keys(readings)) {
		e := record.Entry{Address: of, Kind: record.Reading, What: what, Value: unit.OfLength(unit.Length(readings[what]) * unit.Millimetre / 10)}
		var ok bool
		if e.Fingerprint, ok = planned.Fingerprint(of, e); !ok {
			t.Fatalf("%s cannot be measured", of)
		}
		src.Record = append(src.Record, e)
	}
	return evaluate.Piece(src)
}

// marksOf returns the marks of rows by member.
func marksOf(list []plan.PartRow) map[address.Address]string {
	out := map[address.Address]string{}
	for _, r := range list {
		for _, a := range r.Members {
			out[a] = r.Mark
		}
	}
	return out
}

// TestSideMeasured: one side at 17.6 where 18 was planned is a part of its own,
// and everything still goes together.
func TestSideMeasured(t *testing.T) {
	c := found(t, asBuilt(t, map[string]string{"side_thickness": "18"}, "case.side.left", map[string]int64{"thickness": 176}))
	m := marksOf(marks.Analysis.Get(c))
	if m["case.side.left"] == m["case.side.right"] || m["case.side.left"] != "A1L" {
		t.Errorf("sides are marked %s and %s", m["case.side.left"], m["case.side.right"])
	}
	if m["drawer[1].front"] != m["drawer[3].front"] {
		t.Error("the drawers' fronts differ")
	}
	holdRows(t, c, 60, 176)
}

// TestOpeningMeasured: the drawer of an opening that came out wider becomes rows
// of its own; the others stay as they are.
func TestOpeningMeasured(t *testing.T) {
	planned := asBuilt(t, map[string]string{"least_width": "410"}, "case.opening[2]", nil)
	clear := planned.Piece.Spaces[1].Clear[0].Nm / (unit.Millimetre / 10)
	c := found(t, asBuilt(t, map[string]string{"least_width": "410"}, "case.opening[2]",
		map[string]int64{"width front": int64(clear) + 20, "width back": int64(clear) + 21}))
	m := marksOf(marks.Analysis.Get(c))
	if m["drawer[1].front"] != "B1.1" || m["drawer[2].front"] != "B1.2" || m["drawer[3].front"] != "B1.1" {
		t.Errorf("fronts are marked %s, %s, %s", m["drawer[1].front"], m["drawer[2].front"], m["drawer[3].front"])
	}
	holdRows(t, c, 60, 3814)
}
