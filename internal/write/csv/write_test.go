package csv

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"strings"
	"testing"
)

func TestWrite(t *testing.T) {
	var out bytes.Buffer
	err := Write(&out, Table{
		Header: []string{"Mark", "Part", "Length"},
		Rows:   [][]string{{"A1", `Side, "left"`, "350"}, {"A2", "Front\nscooped", "5 3/8 in"}, {"⌀", "", "-2.5"}},
	}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	// Quoting, doubled quotes, line ends: RFC 4180 section 2, rules 1, 5, 6 and 7.
	want := "Mark,Part,Length\r\nA1,\"Side, \"\"left\"\"\",350\r\nA2,\"Front\r\nscooped\",5 3/8 in\r\n⌀,,-2.5\r\n"
	if got := out.String(); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	out.Reset()
	if err := Write(&out, Table{Header: []string{"a"}}, Options{Mark: true}); err != nil || out.String() != "\uFEFFa\r\n" {
		t.Errorf("%q, %v", out.String(), err)
	}
}

func TestHarmless(t *testing.T) {
	for in, want := range map[string]string{
		"=1+1": "'=1+1", "=cmd|' /C calc'!A0": "'=cmd|' /C calc'!A0", "@SUM(A1)": "'@SUM(A1)", "+1+1": "'+1+1", "-1+1": "'-1+1",
		"-": "'-", "--1": "'--1", "\t=1": "'\t=1", "＝1": "'＝1", "-2.5": "-2.5", "+3": "+3", "-2,5": "-2,5", "-1.2.3": "'-1.2.3", "-.5": "'-.5",
		"": "", "350": "350", "a=b": "a=b", "5 - 3": "5 - 3",
	} {
		if got := harmless(in); got != want {
			t.Errorf("harmless(%q) = %q, want %q", in, got, want)
		}
	}
}

func TestRefuses(t *testing.T) {
	var out bytes.Buffer
	err := Write(&out, Table{Header: []string{"a", "b"}, Rows: [][]string{{"1", "2"}, {"3"}}}, Options{})
	if err == nil || !strings.Contains(err.Error(), "row 2 has 1 cells, the header 2") || out.Len() != 0 {
		t.Errorf("%v, %d bytes written", err, out.Len())
	}
	full := errors.New("disk full")
	if err := Write(failing{full}, Table{Header: []string{"a"}}, Options{}); !errors.Is(err, full) {
		t.Errorf("error %v, want that of the writer", err)
	}
}

type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 0, f.err }

// FuzzReadBack reads with the library what was written: all cells come back, but
// for the apostrophe and for bytes that are no UTF-8, and none is a formula.
func FuzzReadBack(f *testing.F) {
	f.Add("a", "=b", "c\r\nd\"")
	f.Add("\ufeff", "\xff", "-1")
	f.Fuzz(func(t *testing.T, a, b, c string) {
		var out bytes.Buffer
		if err := Write(&out, Table{Header: []string{"x", "y", "z"}, Rows: [][]string{{a, b, c}}}, Options{}); err != nil {
			t.Fatal(err)
		}
		r := csv.NewReader(&out)
		r.Read()
		row, err := r.Read()
		if err != nil || len(row) != 3 {
			t.Fatalf("%q, %v", row, err)
		}
		if _, err := r.Read(); !errors.Is(err, io.EOF) {
			t.Errorf("a second row: %v", err)
		}
		fold := func(s string) string { return strings.NewReplacer("\r", "", "\n", "").Replace(s) }
		for i, in := range []string{a, b, c} {
			if want := fold(strings.ToValidUTF8(in, "\uFFFD")); fold(row[i]) != want && fold(row[i]) != "'"+want {
				t.Errorf("%q came back as %q", in, row[i])
			}
			if row[i] != "" && strings.ContainsAny(row[i][:1], "=@\t\r") {
				t.Errorf("%q stands as a formula", row[i])
			}
		}
	})
}
