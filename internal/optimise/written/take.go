package written

import (
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// reader takes values out of a file and gathers what is wrong.
type reader struct {
	data   []byte
	bare   unit.Length
	faults Faults
}

func (r *reader) fault(n node, path, format string, args ...any) {
	if len(r.faults) < maxFaults {
		r.faults = append(r.faults, Fault{line(r.data, n.at), path, fmt.Sprintf(format, args...)})
	}
}

// thing is an object whose fields are taken one after the other.
type thing struct {
	*reader
	node
	path string
}

// thing takes a node as an object, and faults fields that are said twice or are
// none of those known.
func (r *reader) thing(n node, path string, known ...string) thing {
	t := thing{r, n, path}
	if n.kind != object {
		r.fault(n, path, "%s is wanted here, not %s", object, n.kind)
		return t
	}
	seen := map[string]bool{}
	for _, f := range n.fields {
		switch {
		case !slices.Contains(known, f.name):
			r.fault(f.value, path, "%s is not known here; known are %s", clip(f.name), strings.Join(known, ", "))
		case seen[f.name]:
			r.fault(f.value, t.at(f.name), "this is said twice")
		}
		seen[f.name] = true
	}
	return t
}

// at returns the path of a field.
func (t thing) at(name string) string {
	if t.path == "" {
		return name
	}
	return t.path + "." + name
}

// field returns a field; null counts as not said.
func (t thing) field(name string) (node, bool) {
	for _, f := range t.fields {
		if f.name == name {
			return f.value, f.value.kind != null
		}
	}
	return node{}, false
}

// is takes a field of a kind; it is false where the field is not there or of
// another kind, which is a fault.
func (t thing) is(name string, k kind) (node, bool) {
	n, ok := t.field(name)
	if ok && n.kind != k {
		t.fault(n, t.at(name), "%s is wanted here, not %s", k, n.kind)
		return n, false
	}
	return n, ok
}

// must faults a field that is not there.
func (t thing) must(names ...string) {
	for _, name := range names {
		if _, ok := t.field(name); !ok && t.kind == object {
			t.fault(t.node, t.at(name), "this must be said")
		}
	}
}

// word takes a text that is one of a few.
func (t thing) word(name string, words ...string) string {
	n, ok := t.is(name, text)
	if ok && !slices.Contains(words, n.text) {
		t.fault(n, t.at(name), "%s is none of %s", clip(n.text), strings.Join(words, ", "))
		return ""
	}
	return n.text
}

// name takes a text that may be printed.
func (t thing) name(name string) string {
	n, ok := t.is(name, text)
	if !ok {
		return ""
	}
	control := strings.ContainsFunc(n.text, func(r rune) bool { return !unicode.IsPrint(r) })
	if len(n.text) > maxID || control {
		t.fault(n, t.at(name), "a name has at most %d bytes, all printable", maxID)
		return ""
	}
	return n.text
}

func (t thing) truth(name string) bool {
	n, _ := t.is(name, truth)
	return n.yes
}

// count takes a whole number that is not negative.
func (t thing) count(name string, absent int) int {
	n, ok := t.is(name, number)
	if !ok {
		return absent
	}
	i, err := strconv.Atoi(n.text)
	if err != nil || i < 0 || i > problem.MaxPieces {
		t.fault(n, t.at(name), "%s is no whole number from 0 to %d", clip(n.text), problem.MaxPieces)
		return absent
	}
	return i
}

// length takes a number in the file's unit or a text.
func (t thing) length(name string) unit.Length {
	n, ok := t.field(name)
	if !ok {
		return 0
	}
	l, err := unit.Length(0), error(nil)
	switch n.kind {
	case text:
		l, err = unit.Parse(n.text, t.bare)
	case number:
		l, err = numbered(n.text, t.bare)
	default:
		t.fault(n, t.at(name), "a length is wanted here: a number, or a text as \"5 3/8 in\"; not %s", n.kind)
		return 0
	}
	if err != nil {
		t.fault(n, t.at(name), "this is no length: %v", err)
	}
	return l
}

func numbered(literal string, bare unit.Length) (unit.Length, error) {
	v, err := unit.ParseNumber(literal)
	if err != nil {
		return 0, err
	}
	if v, err = v.As(unit.DimLength, bare); err != nil {
		return 0, err
	}
	l, ok := v.Length()
	if !ok || !v.Equal(unit.OfLength(l)) {
		return 0, &unit.ParseError{Fault: unit.FaultNotExact, Text: literal}
	}
	return l, nil
}

// hundredths takes an amount with at most two decimals.
func (t thing) hundredths(name string) problem.Cost {
	n, ok := t.is(name, number)
	if !ok {
		return 0
	}
	v, err := unit.ParseNumber(n.text)
	if err == nil {
		cents := new(big.Rat).Mul(v.Number(), big.NewRat(100, 1))
		if cents.Sign() >= 0 && cents.IsInt() && cents.Num().IsInt64() && cents.Num().Int64() <= problem.MaxCost {
			return problem.Cost(cents.Num().Int64())
		}
	}
	t.fault(n, t.at(name), "%s is no amount from 0 to %d with at most two decimals", clip(n.text), problem.MaxCost/100)
	return 0
}

// list takes a list of at most so many.
func (t thing) list(name string, most int) []node {
	n, ok := t.is(name, array)
	if ok && len(n.items) > most {
		t.fault(n, t.at(name), "%d stand here; at most %d are accepted", len(n.items), most)
		return nil
	}
	return n.items
}

// clip shows a stranger's text in quotation marks, shortened.
func clip(s string) string {
	const most = 40
	if len(s) > most {
		for s = s[:most]; len(s) > 0 && !utf8.ValidString(s); {
			s = s[:len(s)-1]
		}
		s += "…"
	}
	return strconv.Quote(s)
}
