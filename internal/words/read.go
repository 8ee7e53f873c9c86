package words

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// What says in one word what is wrong with a catalogue or a message.
type What string

// What can be wrong.
const (
	NoEntry    What = "no entry"              // the key is not in the catalogue
	NoArgument What = "no argument"           // the text wants Name, the message has none
	NoCount    What = "no count"              // Name chooses a plural and is no count
	BadLine    What = "bad line"              // neither key = text nor a comment
	BadText    What = "bad text"              // a brace that is not closed, a wrong name
	Twice      What = "key stands twice"      // in one catalogue
	TooDeep    What = "entries nest too deep" // an entry that holds itself
)

// Fault is one thing that is wrong with a message or with a line of a catalogue.
type Fault struct {
	Key  string
	Name string // of the argument, if it is about one
	What What
	File string // and line, if it is about a catalogue
	Line int
}

// String describes the fault for logs and tests.
func (f Fault) String() string {
	s := fmt.Sprintf("%s: %s", f.Key, f.What)
	if f.Name != "" {
		s += " " + f.Name
	}
	if f.File != "" {
		s = fmt.Sprintf("%s:%d: %s", f.File, f.Line, s)
	}
	return s
}

// Limits on a catalogue file.
const (
	maxLine  = 4096
	maxLines = 20_000
	maxNest  = 8 // entries in entries, forms in forms
)

type entry struct {
	key  string
	text template
	line int
}

type catalogueFile struct {
	entries []entry
	built   []string
	faults  []Fault
}

// read reads a catalogue file. It never fails: lines that it cannot read are
// faults.
func read(name, text string) catalogueFile {
	var file catalogueFile
	number := 0
	for line := range strings.Lines(text) {
		number++
		bad := func(what What, key string) {
			file.faults = append(file.faults, Fault{Key: key, What: what, File: name, Line: number})
		}
		if number > maxLines || len(line) > maxLine || !utf8.ValidString(line) {
			bad(BadLine, "")
			break
		}
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		if prefix, ok := strings.CutPrefix(line, "@built "); ok {
			file.built = append(file.built, strings.TrimSpace(prefix))
			continue
		}
		key, rest, ok := strings.Cut(line, " = ")
		key = strings.TrimSpace(key)
		if !ok || !isKey(key) {
			bad(BadLine, key)
			continue
		}
		t, ok := parse(strings.TrimSpace(rest))
		if !ok {
			bad(BadText, key)
			continue
		}
		file.entries = append(file.entries, entry{key, t, number})
	}
	return file
}

// isKey reports whether s may be a key: letters, digits, spaces, points,
// hyphens, beginning with a letter.
func isKey(s string) bool {
	for i, r := range s {
		letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
		if !letter && (i == 0 || !strings.ContainsRune("0123456789 .-_", r)) {
			return false
		}
	}
	return s != ""
}
