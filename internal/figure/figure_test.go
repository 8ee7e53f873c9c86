package figure

import (
	"errors"
	"math"
	"strings"
	"testing"

	"scantling/internal/message"
	"scantling/internal/unit"
)

func TestStatus(t *testing.T) {
	for text, want := range map[string]Status{"read": Read, "read+memory": Memory, "memory": Memory, "practice": Practice} {
		if got, ok := ParseStatus(text); !ok || got != want {
			t.Errorf("ParseStatus(%q) = %q, %v; want %q", text, got, ok, want)
		}
	}
	for _, text := range []string{"", "seen", "read+seen"} {
		if got, ok := ParseStatus(text); ok {
			t.Errorf("ParseStatus(%q) = %q, want a refusal", text, got)
		}
	}
	if Weaker(Read, Memory) != Memory || Weaker(Practice, Stated) != Practice || Weaker(Read, "odd") != "odd" {
		t.Error("Weaker does not return the weaker status")
	}
}

func TestCitation(t *testing.T) {
	s := Source{"timber.movement", "Wood Handbook FPL-GTR-190", "2010", "Table 13-5", Read}
	if got, want := s.String(), "Wood Handbook FPL-GTR-190 (2010), Table 13-5"; got != want {
		t.Errorf("citation %q, want %q", got, want)
	}
	if p := PracticeSource("x"); p.Published() || p.String() != "" {
		t.Errorf("common practice is cited as %q", p)
	}
	if f := Between(unit.MM(3), unit.MM(2), unit.MM(4), s).Instead(unit.MM(5)); f.Value != unit.MM(5) || f.Low != f.High || f.Source != (Source{Key: s.Key, Status: Stated}) {
		t.Errorf("the maker's own value: %+v", f)
	}
	var none Of[unit.Length]
	if none.Known() || !Exactly(unit.MM(3), s).Known() {
		t.Error("Known confuses a figure with none")
	}
}

func TestTableLengths(t *testing.T) {
	for text, want := range map[string]unit.Length{
		"19.05": 19_050_000, "6": 6_000_000, "0.000001": 1, "14.2875": 14_287_500,
	} {
		if got, err := scaled(text, unit.Millimetre); err != nil || got != want {
			t.Errorf("%q mm = %d, %v; want %d", text, got, err, want)
		}
	}
	for text, want := range map[string]unit.Length{
		"1-1/16": 26_987_500, "5/4": 31_750_000, "3/4": 19_050_000, "2": 50_800_000, "23/32": 18_256_250,
	} {
		if got, err := scaled(text, unit.Inch); err != nil || got != want {
			t.Errorf("%q in = %d, %v; want %d", text, got, err, want)
		}
	}
	for _, text := range []string{"", "-", "x", "1-", "-3", "1e400", "1/0", "1--1", "99999999999999", "1-1-1"} {
		if got, err := scaled(text, unit.Millimetre); err == nil {
			t.Errorf("%q was read as %d", text, got)
		}
	}
}

func TestTableFaults(t *testing.T) {
	for name, text := range map[string]string{
		"no heading": "", "ragged": "a,b\n1\n", "twice": "a,a\n1,2\n", "quote": "a\n\"x\n",
		"long cell": "a\n" + strings.Repeat("x", maxCell+1) + "\n",
		"long file": "a\n" + strings.Repeat("x\n", MaxTableBytes),
	} {
		if _, err := ReadTable(name, text); err == nil {
			t.Errorf("%s: read without a fault", name)
		}
	}
	table := MustTable("t", "l,n,s,c\n1.5,x,seen,1.5\n,,read,\n")
	if table.Len() != 2 || !table.Has("l") || table.Has("z") {
		t.Error("table counts wrongly")
	}
	for i, row := range table.Rows() {
		l, ok := row.Millimetres("l")
		if ok != (i == 1) || (ok && l != 1_500_000) {
			t.Errorf("row %d: %d, %v", i, l, ok)
		}
		row.Number("n")
		row.Status("s")
		row.Count("c")
		if bad := row.Err() != nil; bad != (i == 1) {
			t.Errorf("row %d: err %v", i, row.Err())
		}
	}
}

func TestRefusal(t *testing.T) {
	if LengthRange("r", "width", 5, 1, 9) != nil || LengthRange("r", "width", 5, 1, 0) != nil {
		t.Error("a length within its limits was refused")
	}
	var r *Refusal
	if err := LengthRange("r", "width", unit.MM(10), unit.MM(1), unit.MM(9)); !errors.As(err, &r) || r.Text.Key != "figure.length-range" {
		t.Errorf("refusal %v", err)
	} else if got := r.Or("do.this").Error(); got != `figure.length-range: rule="r" quantity="width" got=10mm least=1mm greatest=9mm; do.this` {
		t.Errorf("reads %q", got)
	}
	if NumberRange("r", "humidity", math.NaN(), 0, 100) == nil || NumberRange("r", "humidity", 50.0, 0, 100) != nil {
		t.Error("number range wrong")
	}
	list := Refuse("k", message.List("which", message.Text("", "a"), message.Text("", "b")), message.Count("n", 2), message.Ratio("x", 1.5))
	if got := list.Error(); got != `k: which=["a", "b"] n=2 x=1.5` {
		t.Errorf("reads %q", got)
	}
}

func FuzzReadTable(f *testing.F) {
	f.Add("a,b\n1,2\n")
	f.Add("length\n1-1/16\n")
	f.Add("\"a\",b\n,\n")
	f.Fuzz(func(t *testing.T, text string) {
		table, err := ReadTable("fuzz", text)
		if err != nil {
			return
		}
		for _, row := range table.Rows() {
			for column := range table.head {
				if l, ok := row.Inches(column); ok && (l < 0 || l > unit.MaxLength) {
					t.Errorf("length %d out of bounds", l)
				}
				row.Number(column)
				row.Status(column)
			}
		}
	})
}
