package evaluate

import (
	"strconv"
	"strings"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/formula"
)

// words works out an attribute that holds words; empty if there is none.
func (s *scope) words(b *document.Block, attribute string) string {
	return env{s: s}.words(b, attribute)
}

func (e env) words(b *document.Block, attribute string) string {
	if !b.Has(attribute) {
		return ""
	}
	t, _ := e.s.maker.Words(e.value(b, attribute, ""))
	return t
}

// length works out an attribute that holds a length; ok is false if there is
// none or it is wrong.
func (e env) length(b *document.Block, attribute, name string) (formula.Value, bool) {
	if !b.Has(attribute) {
		return formula.Value{}, false
	}
	return e.s.maker.Length(e.value(b, attribute, name), name)
}

func clip(s string) string {
	if len(s) > 80 {
		return strings.ToValidUTF8(s[:80], "")
	}
	return s
}

func quoted(s string) string { return strconv.Quote(s) }

func splitWords(list string) []string { return strings.Split(list, ", ") }

func joinWords(list []string) string { return strings.Join(list, ", ") }

func itoa(n int) string { return strconv.Itoa(n) }

func remedies(r ...diag.Remedy) []diag.Remedy { return r }
