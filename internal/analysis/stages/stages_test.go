package stages_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/stages"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// waiting is a piece of parts, one a row, that wait for measures: "lid: m1 m3".
func waiting(measures []string, parts ...string) (*trial.Builder, []plan.PartRow) {
	b := trial.New()
	for _, m := range measures {
		name, of, _ := strings.Cut(m, ": ")
		measure := piece.Measure{Address: address.Address(name), Label: "label of " + name, Take: []string{"thickness"}}
		for f := range strings.FieldsSeq(of) {
			measure.Of = append(measure.Of, address.Address(f))
		}
		b.Piece.Measures = append(b.Piece.Measures, measure)
	}
	var rows []plan.PartRow
	for _, p := range parts {
		name, waits, _ := strings.Cut(p, ": ")
		part := b.Part(name, trial.GrainRight, 0, 3000, 0, 1000, 0, 180)
		for w := range strings.FieldsSeq(waits) {
			part.CutAfter = append(part.CutAfter, address.Address(w))
		}
		rows = append(rows, plan.PartRow{Mark: strings.ToUpper(name), Members: []address.Address{part.Address}})
	}
	return b, rows
}

// said prints stages: "marks < needs".
func said(list []plan.Stage) []string {
	var out []string
	for _, s := range list {
		out = append(out, strings.Join(s.Marks, " ")+" < "+fmt.Sprint(s.Needs))
	}
	return out
}

func TestStages(t *testing.T) {
	for _, c := range []struct {
		name     string
		measures []string
		parts    []string
		want     []string
	}{
		{"nothing waits", []string{"m1"}, []string{"a", "b"}, []string{"A B < []"}},
		{"no measures", nil, []string{"a"}, []string{"A < []"}},
		{"one waits", []string{"m1: a"}, []string{"a", "b: m1"}, []string{"A < []", "B < [m1]"}},
		{"a measure that nobody waits for makes no stage", []string{"m1: a", "m2: a"}, []string{"a", "b: m2"}, []string{"A < []", "B < [m2]"}},
		{"one waits for several: it is of the latest and needs both", []string{"m1: a", "m2: b", "m3: c"}, []string{"a", "b: m1", "c", "d: m3 m1"}, []string{"A C < []", "B < [m1]", "D < [m1 m3]"}},
		{"a stage needs all that any of its rows needs", []string{"m1: a", "m2: a"}, []string{"a", "b: m2", "c: m1 m2"}, []string{"A < []", "B C < [m1 m2]"}},
		{"nothing can be cut now", []string{"m1"}, []string{"a: m1"}, []string{"A < [m1]"}},
		{"a measure written first that reads what waits for the second", []string{"m1: b", "m2: a"}, []string{"a", "b: m2", "c: m1"}, []string{"A < []", "B < [m2]", "C < [m1]"}},
		{"a measure of a space reads what bounds it", []string{"m1: room", "m2: a"}, []string{"a", "b: m2", "c: m1"}, []string{"A < []", "B < [m2]", "C < [m1]"}},
		{"a measure that is not there holds nobody up", []string{"m1"}, []string{"a: m7"}, []string{"A < []"}},
		{"a circle keeps the order of the document", []string{"m1: b", "m2: a"}, []string{"a: m1", "b: m2"}, []string{"A < [m1]", "B < [m2]"}},
	} {
		b, rows := waiting(c.measures, c.parts...)
		b.Space("room", 0, 3000, 0, 2000, 0, 1000)
		b.Piece.Spaces[0].Bounds[0] = "b.right"
		got, measures, staged := stages.Derive(&b.Piece, rows, b.Ledger)
		if !slices.Equal(said(got), c.want) {
			t.Errorf("%s:\n got %q\nwant %q", c.name, said(got), c.want)
		}
		if len(measures) != len(c.measures) {
			t.Errorf("%s: %d measures of %d", c.name, len(measures), len(c.measures))
		}
		for _, r := range staged {
			i := slices.IndexFunc(got, func(s plan.Stage) bool { return s.ID == r.Stage })
			if i < 0 || !slices.Contains(got[i].Marks, r.Mark) {
				t.Errorf("%s: row %s says stage %q", c.name, r.Mark, r.Stage)
			}
		}
		for _, s := range got {
			want := "stage.now"
			if len(s.Needs) > 0 {
				want = "stage.after"
			}
			if s.Title.Key != want {
				t.Errorf("%s: stage %s with needs %v is titled %q", c.name, s.ID, s.Needs, s.Title.Key)
			}
		}
		if rows[0].Stage != "" {
			t.Errorf("%s: the rows that went in are changed", c.name)
		}
	}
}

// A row of several parts waits as its slowest member does.
func TestRowWaitsForItsSlowest(t *testing.T) {
	b, rows := waiting([]string{"m1: a"}, "a", "b", "c: m1")
	rows[1].Members = append(rows[1].Members, "c")
	got, measures, _ := stages.Derive(&b.Piece, rows[:2], b.Ledger)
	if want := []string{"A < []", "B < [m1]"}; !slices.Equal(said(got), want) {
		t.Errorf("got %q", said(got))
	}
	if !slices.Equal(measures[0].Marks, []string{"B"}) {
		t.Errorf("%v wait for the measure", measures[0].Marks)
	}
}

// Every measure names all rows that wait for it, also those that wait for a later
// one besides.
func TestMeasureNamesAllThatWait(t *testing.T) {
	b, rows := waiting([]string{"m1: a", "m2: a"}, "a", "b: m1 m2", "c: m1", "d: m2")
	_, measures, _ := stages.Derive(&b.Piece, rows, b.Ledger)
	if !slices.Equal(measures[0].Marks, []string{"B", "C"}) || !slices.Equal(measures[1].Marks, []string{"B", "D"}) {
		t.Errorf("%v and %v", measures[0].Marks, measures[1].Marks)
	}
}

// TestReadings: every thing with every reading, each with the size that is
// planned there; what compares is planned as nought.
func TestReadings(t *testing.T) {
	b, rows := waiting(nil, "a")
	b.Space("box", 0, 3000, 0, 2000, 0, 1000)
	b.Piece.Measures = []piece.Measure{
		{Address: "m1", Of: []address.Address{"box"}, Take: []string{"width front", "width back", "depth left", "height right", "diagonals"}},
		{Address: "m2", Of: []address.Address{"a", "box"}, Take: []string{"thickness", "length", "width"}},
	}
	_, measures, _ := stages.Derive(&b.Piece, rows, b.Ledger)
	for i, want := range [][]int64{{300, 300, 200, 100, 0}, {18, 300, 100, 0, 0, 300}} {
		var got []int64
		for _, r := range measures[i].Readings {
			got = append(got, int64(r.Planned.Nm/unit.Millimetre))
			if err := b.Ledger.VerifyFigure(r.Planned); err != nil {
				t.Error(err)
			}
			if r.Found != nil {
				t.Errorf("%s %s: found %v, and nothing was read", r.Of, r.What, r.Found.Nm)
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("measure %d: %v, want %v", i+1, got, want)
		}
	}
}

// A reading that the record holds is told beside what the plan rests on: the
// least of two.
func TestFound(t *testing.T) {
	b, rows := waiting(nil, "a")
	b.Space("box", 0, 3000, 0, 2000, 0, 1000)
	front := b.Ledger.Leaf("box.width front", unit.MM(301), ledger.Measured, "record")
	back := b.Ledger.Leaf("box.width back", unit.MM(299), ledger.Measured, "record")
	b.Piece.Spaces[0].Clear[piece.Right] = b.Ledger.Least("box.wide", front, back)
	b.Piece.Measures = []piece.Measure{{Address: "m1", Of: []address.Address{"box"}, Take: []string{"width front", "width back", "height left"}}}
	_, measures, _ := stages.Derive(&b.Piece, rows, b.Ledger)
	r := measures[0].Readings
	if r[0].Found == nil || r[0].Found.Nm != unit.MM(301) || r[1].Found == nil || r[1].Found.Nm != unit.MM(299) || r[2].Found != nil {
		t.Errorf("%+v", r)
	}
	if r[0].Planned.Nm != unit.MM(299) {
		t.Errorf("the plan rests on %v", r[0].Planned.Nm)
	}
}

// TestLaws, over random pieces: every row is in one stage, a stage needs no
// measure that reads what is cut in it or later, and the order of the rows within
// a stage is theirs.
func TestLaws(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 11))
		n, k := 2+r.IntN(12), r.IntN(5)
		var parts, measures []string
		for i := range n {
			parts = append(parts, fmt.Sprintf("p%d", i))
		}
		// Measure j reads parts before cut[j]; parts from there on may wait for it.
		for j := range k {
			at := r.IntN(n)
			measures = append(measures, fmt.Sprintf("m%d: p%d", j, at))
			for i := at + 1; i < n; i++ {
				if r.IntN(4) == 0 {
					sep := " "
					if !strings.Contains(parts[i], ":") {
						sep = ": "
					}
					parts[i] += sep + fmt.Sprintf("m%d", j)
				}
			}
		}
		b, rows := waiting(measures, parts...)
		got, list, staged := stages.Derive(&b.Piece, rows, b.Ledger)
		number, count := map[string]int{}, 0
		for i, s := range got {
			for _, m := range s.Marks {
				number[m] = i
				count++
			}
		}
		if count != n || len(number) != n || len(staged) != n {
			t.Fatalf("seed %d: %d rows, %d in stages", seed, n, count)
		}
		for i, s := range got {
			for _, need := range s.Needs {
				at := slices.IndexFunc(list, func(m plan.Measure) bool { return m.Address == need })
				for _, reading := range list[at].Readings {
					if of := strings.ToUpper(string(reading.Of)); number[of] >= i {
						t.Errorf("seed %d: stage %d needs %s, which reads %s of stage %d", seed, i+1, need, of, number[of]+1)
					}
				}
			}
		}
	}
}

func BenchmarkDerive(b *testing.B) {
	rack := trial.Rack(50, 60)
	var rows []plan.PartRow
	for i := range rack.Piece.Parts {
		p := &rack.Piece.Parts[i]
		if p.Name == "shelf" {
			p.CutAfter = []address.Address{"measure.bays"}
		}
		rows = append(rows, plan.PartRow{Mark: fmt.Sprint(i), Members: []address.Address{p.Address}})
	}
	m := piece.Measure{Address: "measure.bays", Take: []string{"width", "height"}}
	for _, s := range rack.Piece.Spaces {
		m.Of = append(m.Of, s.Address)
	}
	rack.Piece.Measures = []piece.Measure{m}
	for b.Loop() {
		stages.Derive(&rack.Piece, rows, rack.Ledger)
	}
	b.ReportMetric(float64(len(rows)), "parts")
}
