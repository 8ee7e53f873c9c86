package scantling_test

import (
	"bytes"
	"fmt"
	"maps"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"scantling"
	"scantling/internal/ledger"
	"scantling/internal/recipe"
	"scantling/internal/unit"
)

// TestLeavesStandInTheDocuments reads the bytes again at the place of every leaf
// of the ledger that a document or the shop answers for, and compares. What is not
// written as a value at its place is listed with the reason; nothing else may be.
func TestLeavesStandInTheDocuments(t *testing.T) {
	for _, inputs := range []map[string]string{nil, {"edition": `"in"`}, {"drawers": "5"}} {
		l := readLeaves(planDemo(t, inputs), documents(t), inputs != nil)
		for _, f := range l.faults {
			t.Error(f)
		}
		t.Logf("%v: %d leaves read again", inputs, len(l.again))
		for _, why := range slices.Sorted(maps.Keys(l.reasons)) {
			t.Logf("  %d not: %s", l.reasons[why], why)
		}
		if len(l.again) < 200 {
			t.Errorf("only %d leaves could be read again", len(l.again))
		}
	}
}

// TestLeavesNoticeAnotherDocument changes a digit of a document at the place of a
// leaf: the leaf then does not stand there any more.
func TestLeavesNoticeAnotherDocument(t *testing.T) {
	r := planDemo(t, nil)
	texts := documents(t)
	leaves := readLeaves(r, texts, false).again
	const seed = 21
	random := rand.New(rand.NewPCG(seed, 1))
	for range 40 {
		e := leaves[random.IntN(len(leaves))]
		text := []byte(texts[e.Where.File])
		at := e.Where.Start + bytes.IndexAny(text[e.Where.Start:e.Where.End], "0123456789")
		if at < e.Where.Start {
			continue // a text
		}
		text[at] = '0' + (text[at]-'0'+1)%10
		changed := maps.Clone(texts)
		changed[e.Where.File] = string(text)
		if len(readLeaves(r, changed, false).faults) == 0 {
			t.Errorf("seed %d: %q at %s:%d is another, and nobody notices", seed, e.Name, e.Where.File, e.Where.Line)
		}
	}
}

// leafReading is what came of reading leaves again.
type leafReading struct {
	again   []ledger.Entry
	reasons map[string]int
	faults  []string
}

// readLeaves reads the leaves of a plan's ledger again. An input that is set from
// outside leaves the document's own value unused.
func readLeaves(r *scantling.Result, texts map[string]string, set bool) leafReading {
	out := leafReading{reasons: map[string]int{}}
	fault := func(format string, args ...any) { out.faults = append(out.faults, fmt.Sprintf(format, args...)) }
	rests := map[ledger.ID]bool{}
	for _, e := range r.Plan.Ledger.Entries() {
		for _, a := range e.Args {
			rests[a] = true
		}
	}
	for _, e := range r.Plan.Ledger.Entries() {
		if e.Op != ledger.OpGiven || e.Where.IsZero() || e.Origin != ledger.Document && e.Origin != ledger.Bought {
			continue
		}
		text, ok := texts[e.Where.File]
		if !ok || e.Where.Start < 0 || e.Where.End > len(text) || e.Where.Start > e.Where.End {
			fault("%s %q: there is no %s from %d to %d", e.Origin, e.Name, e.Where.File, e.Where.Start, e.Where.End)
			continue
		}
		written := text[e.Where.Start:e.Where.End]
		if readsAs(written, e.Value) {
			out.again = append(out.again, e)
			continue
		}
		reason := whyNot(r, e, written, text[e.Where.End:])
		if reason == "" && set && !rests[e.ID] {
			reason = "an input's value as it was tried before it was entered: nothing rests on it"
		}
		if reason == "" {
			fault("%s %q is %v, at %s:%d stands %q", e.Origin, e.Name, e.Value, e.Where.File, e.Where.Line, written)
			continue
		}
		out.reasons[reason]++
	}
	return out
}

// documents are the texts that the demonstration piece is read from.
func documents(t *testing.T) map[string]string {
	t.Helper()
	w := exampleWorld(t, "needle-chest")
	out := map[string]string{}
	for _, name := range []string{demo, "shop.hcl"} {
		text, err := w.Read(name)
		if err != nil {
			t.Fatal(err)
		}
		out[name] = string(text)
	}
	for _, r := range recipe.All() {
		out[r.File] = string(r.Text)
	}
	return out
}

// readsAs reports whether a text, read with its unit or as a bare number, is the
// value: a number is a count, a ratio or so many millimetres, as the value is, for
// all documents of the piece count in millimetres.
func readsAs(written string, v unit.Value) bool {
	if n := len(written); n > 2 && written[0] == '[' && written[n-1] == ']' {
		written = written[1 : n-1] // an index
	}
	if said, err := strconv.Unquote(written); err == nil {
		if q, err := unit.ParseValue(said, unit.Millimetre); err == nil && q.Equal(v) {
			return true
		}
		return v.Dim() == unit.DimText && v.Text() == said
	}
	n, err := unit.ParseNumber(written)
	if err != nil {
		return false
	}
	if as, err := n.As(v.Dim(), unit.Millimetre); err == nil && as.Equal(v) {
		return true
	}
	return n.Equal(v)
}

var header = regexp.MustCompile(`^[a-z]+ "[^"]*"$`)

// whyNot says why a leaf does not stand as a value at its place, "" if there is no
// reason for it.
func whyNot(r *scantling.Result, e ledger.Entry, written, behind string) string {
	count, isCount := e.Value.Int()
	radius, isLength := e.Value.Length()
	size, _, isKey := strings.Cut(e.Value.Text(), " ")
	switch {
	case strings.HasPrefix(written, "nth") && isCount && count >= 1 && count <= int64(len(r.Plan.Piece.Parts)):
		return "nth is counted, not written"
	case header.MatchString(written) && inBlock(behind, e.Value):
		return "the place is the block, the value stands in it"
	case isKey && sameNumber(size, written):
		return "the key of a thing is its size and a letter"
	case isLength && strings.HasPrefix(written, "cutter ") && inBlock(behind, unit.OfLength(2*radius)):
		return "a round-nose cutter's radius is half of the diameter that stands in its block"
	case e.Name == "shop.round-nose-cutters":
		return "a list of all round-nose cutters stands nowhere"
	case strings.HasPrefix(written, "material ") && strings.HasSuffix(e.Name, ".wood"):
		return "the wood and its sawing are the rack's answer to what the material asks"
	}
	return ""
}

// sameNumber reports whether two texts are one number: 2.0 and 2.
func sameNumber(a, b string) bool {
	x, err := unit.ParseNumber(a)
	y, err2 := unit.ParseNumber(b)
	return err == nil && err2 == nil && x.Equal(y)
}

// inBlock reports whether a value is that of an attribute of the block whose text
// follows.
func inBlock(behind string, v unit.Value) bool {
	body, _, _ := strings.Cut(behind, "\n}")
	for line := range strings.Lines(body) {
		_, value, ok := strings.Cut(line, "=")
		value, _, _ = strings.Cut(value, "#")
		if ok && readsAs(strings.TrimSpace(value), v) {
			return true
		}
	}
	return false
}

// TestReadsAs: the comparison above tells what is the same from what is not.
func TestReadsAs(t *testing.T) {
	for _, c := range []struct {
		written string
		v       unit.Value
		want    bool
	}{
		{"14", unit.OfLength(unit.MM(14)), true},
		{"14", unit.OfLength(unit.MM(15)), false},
		{"14", unit.OfCount(14), true},
		{"3.8", unit.OfLength(3800 * unit.Micrometre), true},
		{`"150 mm"`, unit.OfLength(unit.MM(150)), true},
		{`"1 in"`, unit.OfLength(unit.Inch), true},
		{`"black cherry"`, unit.OfText("black cherry"), true},
		{`"black cherry"`, unit.OfText("cherry"), false},
		{"nth", unit.OfCount(1), false},
	} {
		if got := readsAs(c.written, c.v); got != c.want {
			t.Errorf("%q and %v: %v", c.written, c.v, got)
		}
	}
	if fmt.Sprint(inBlock(" {\n  kerf = 3 # from the manual\n}\n", unit.OfLength(unit.MM(3))), inBlock(" {\n}\nb {\n  kerf = 3\n}\n", unit.OfLength(unit.MM(3)))) != "true false" {
		t.Error("an attribute of the block, and of the next")
	}
}
