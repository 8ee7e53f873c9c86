package world

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"testing"
	"time"
)

var _ World = (*Memory)(nil)

func TestMemory(t *testing.T) {
	files := map[string][]byte{"a.hcl": []byte("one"), "b/c.hcl": []byte("two")}
	m, err := NewMemory(files, Date{2026, 3, 1}, 0)
	if err != nil {
		t.Fatal(err)
	}
	files["a.hcl"][0] = 'X'
	read := func(name, want string) {
		t.Helper()
		if got, err := m.Read(name); err != nil || string(got) != want {
			t.Errorf("%s holds %q, %v; want %q", name, got, err, want)
		} else if len(got) > 0 {
			got[0] = 'Y' // the caller's own copy
		}
	}
	read("a.hcl", "one")
	read("a.hcl", "one")
	for _, step := range []error{m.Append("a.hcl", []byte(" more")), m.Append("new/log", []byte("x")), m.Write("b/c.hcl", nil)} {
		if step != nil {
			t.Error(step)
		}
	}
	read("a.hcl", "one more")
	read("new/log", "x")
	read("b/c.hcl", "")
	for folder, want := range map[string][]string{"": {"a.hcl", "b/c.hcl", "new/log"}, "b": {"b/c.hcl"}, "ne": nil} {
		if got, err := m.List(folder); err != nil || !slices.Equal(got, want) {
			t.Errorf("%q lists %v, %v; want %v", folder, got, err, want)
		}
	}
	if _, err := m.Read("gone"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("got %v", err)
	}
	for _, name := range []string{"a.hcl/x", "b"} {
		if err := m.Write(name, nil); !errors.Is(err, fs.ErrInvalid) {
			t.Errorf("%s: got %v", name, err)
		}
	}
	if m.Today().String() != "2026-03-01" {
		t.Error(m.Today())
	}
}

func TestNamesStayInside(t *testing.T) {
	m := new(Memory)
	for _, name := range []string{"", ".", "..", "../a", "/a", "a/../b", "a//b", "a/", `a\b`, "c:a", "a\x00", "a\nb", "\xff", strings.Repeat("a", MaxName+1)} {
		if err := m.Write(name, nil); !errors.Is(err, fs.ErrInvalid) {
			t.Errorf("%q was written: %v", name, err)
		}
		if _, err := m.Read(name); !errors.Is(err, fs.ErrInvalid) {
			t.Errorf("%q was read: %v", name, err)
		}
	}
}

func TestMemoryIsBounded(t *testing.T) {
	m, err := NewMemory(nil, Date{}, 10)
	if err != nil {
		t.Fatal(err)
	}
	if err := m.Write("a", make([]byte, 10)); err != nil {
		t.Error(err)
	}
	for _, err := range []error{m.Write("b", []byte{1}), m.Append("a", []byte{1})} {
		if !errors.Is(err, ErrTooLarge) {
			t.Errorf("got %v", err)
		}
	}
	if err := m.Write("a", nil); err != nil {
		t.Error(err)
	}
	if err := m.Write("b", make([]byte, 10)); err != nil {
		t.Error("room that was freed is not used: ", err)
	}
	if err := new(Memory).Write("a", make([]byte, MaxFile+1)); !errors.Is(err, ErrTooLarge) {
		t.Errorf("got %v", err)
	}
}

// Dates agree with the standard library's calendar for every day of 400 years.
func TestDates(t *testing.T) {
	before := Date{}
	for day := time.Date(1900, 1, 1, 0, 0, 0, 0, time.UTC); day.Year() < 2300; day = day.AddDate(0, 0, 1) {
		text := day.Format(time.DateOnly)
		d, err := ParseDate(text)
		if err != nil || d.String() != text || d.Compare(before) <= 0 {
			t.Fatalf("%s: %v, %v", text, d, err)
		}
		before = d
	}
	for year := 1900; year < 2300; year++ {
		for month := 0; month <= 13; month++ {
			for day := 28; day <= 32; day++ {
				text := fmt.Sprintf("%04d-%02d-%02d", year, month, day)
				_, want := time.Parse(time.DateOnly, text)
				if _, err := ParseDate(text); (err == nil) != (want == nil) {
					t.Fatalf("%s: %v, the standard library says %v", text, err, want)
				}
			}
		}
	}
	for _, bad := range []string{"", "2026-3-1", "2026/03/01", "0000-01-01", "2026-03-0x", "+026-03-01", "2026-03-011"} {
		if d, err := ParseDate(bad); err == nil {
			t.Errorf("%q is %v", bad, d)
		}
	}
}

// FuzzParseDate: what is read is a day that prints as it was written.
func FuzzParseDate(f *testing.F) {
	for _, s := range []string{"", "2026-03-01", "2024-02-29", "2026-02-30", "0000-00-00", "2026-3-1", "٢٠٢٦-03-01"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if d, err := ParseDate(s); err == nil && d.String() != s {
			t.Errorf("%q is read as %q", s, d)
		}
	})
}
