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

func (e env) words(b *document.Block, attribute string) string { return e.reader(b).Words(attribute) }

// length works out an attribute that holds a length; ok is false if there is
// none or it is wrong.
func (e env) length(b *document.Block, attribute, name string) (formula.Value, bool) {
	return e.reader(b).Length(attribute, name)
}

// missing reports an attribute that a block cannot do without.
func (s *scope) missing(b *document.Block, attribute string) { env{s: s}.reader(b).Missing(attribute) }

func clip(s string) string {
	if len(s) > 80 {
		return strings.ToValidUTF8(s[:80], "")
	}
	return s
}

func quoted(s string) string { return strconv.Quote(s) }

func joinWords(list []string) string { return strings.Join(list, ", ") }

func remedies(r ...diag.Remedy) []diag.Remedy { return r }
