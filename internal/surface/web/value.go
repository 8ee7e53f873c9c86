package web

import (
	"regexp"
	"strings"
	"unicode/utf8"

	"scantling/internal/message"
)

// mostValue bounds a value in bytes: a length or a name, not an essay.
const mostValue = 200

var plainNumber = regexp.MustCompile(`^[0-9]{1,15}([.,][0-9]{1,9})?$`)

// written turns what the maker typed into document text, by the kind of the
// input. Plain numbers stay bare; all else becomes a text in quotation marks, so
// that nobody writes a formula by mistake. Whether it is a value that the input
// takes is for the evaluation to say.
func written(kind, value string) (string, error) {
	value = strings.TrimSpace(value)
	switch {
	case value == "":
		return "", refuse("server.empty")
	case len(value) > mostValue || !utf8.ValidString(value) || strings.ContainsFunc(value, func(r rune) bool { return r < ' ' || r == 0x7f }):
		return "", refuse("server.no-value", message.Text("value", strings.ToValidUTF8(value[:min(len(value), mostValue)], "\uFFFD")))
	}
	switch kind {
	case "length", "count", "angle", "number":
		if plainNumber.MatchString(value) {
			return strings.Replace(value, ",", ".", 1), nil
		}
		return quote(value), nil
	case "choice", "text":
		return quote(value), nil
	case "yes":
		if value == "true" || value == "false" {
			return value, nil
		}
	}
	return "", refuse("server.no-value", message.Text("value", value))
}

// quote writes a text as the document language quotes it.
func quote(s string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "${", "$${", "%{", "%%{").Replace(s) + `"`
}
