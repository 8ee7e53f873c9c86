package evaluate

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"scantling/internal/document"
	"scantling/internal/unit"
	"scantling/internal/words"
)

var expected = regexp.MustCompile(`# error: ([a-z-]+)`)

// TestInvalid runs the documents of testdata/invalid: one mistake each, with the
// code expected in a comment on its line.
func TestInvalid(t *testing.T) {
	files, err := filepath.Glob("../../testdata/invalid/*.hcl")
	if err != nil || len(files) < 30 {
		t.Fatal(len(files), err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		name := filepath.Base(file)
		at := expected.FindAllSubmatchIndex(text, -1)
		if len(at) != 1 {
			t.Errorf("%s expects %d codes", name, len(at))
			continue
		}
		code := string(text[at[0][2]:at[0][3]])
		line := bytes.Count(text[:at[0][0]], []byte("\n")) + 1
		src := Sources{Document: document.Source{Name: name, Text: text}}
		r := Piece(src)
		if len(r.Diagnostics) != 1 || string(r.Diagnostics[0].Code) != code || r.Diagnostics[0].Where.Line != line {
			t.Errorf("%s: want %s at line %d", name, code, line)
			tell(t, r.Diagnostics)
			continue
		}
		for _, remedy := range r.Diagnostics[0].Remedies {
			for _, e := range remedy.Edits {
				if string(text[e.Start:e.End]) != e.Old {
					t.Errorf("%s: the remedy does not stand: %+v", name, e)
				}
			}
		}
		applyRemedies(t, name, src, r.Diagnostics[0])
	}
}

// TestWords puts every code's example into words: nothing is missing.
func TestWords(t *testing.T) {
	said := words.New(words.English, words.British, unit.Show{}, "EUR")
	for _, c := range codesOf(t) {
		if c.made {
			continue
		}
		for _, d := range Piece(c.sourcesOf(t)).Diagnostics {
			text := said.Say(d.Text)
			for _, r := range d.Remedies {
				text += " | " + said.Say(r.Text)
			}
			for _, r := range d.Related {
				text += " | " + said.Say(r.Text)
			}
			if strings.ContainsAny(text, "⟦⟧") || text == "" {
				t.Errorf("%s: %s", c.name, text)
			}
			t.Logf("%s: %s", c.code, text)
		}
	}
}
