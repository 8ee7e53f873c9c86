package document

import (
	"bytes"
	"regexp"
	"strings"

	"github.com/hashicorp/hcl/v2"

	"scantling/internal/diag"
	"scantling/internal/message"
)

// bareUnit is a number with a unit that stands without quotes: 18mm, 3/4 in.
var bareUnit = regexp.MustCompile(`(?:^|[=\[,(+\-*\s])(\d+(?:[.,]\d+)?(?:[ -]\d+/\d+|/\d+)?[ \t]*(?:mm|cm|in|ft|m|"|'))[ \t]*(?:[,\])#]|//|$)`)

// reportSyntax puts the parser's first complaint into our own words: the others
// mostly follow from it. It returns the line from which on the parser had lost
// its way, 0 if there is no complaint.
func (r *reader) reportSyntax(faults hcl.Diagnostics) int {
	for _, f := range faults {
		if f.Severity != hcl.DiagError {
			continue
		}
		where := diag.Place{File: r.file.Name, Line: 1, Column: 1}
		if f.Subject != nil {
			where = r.placeOf(*f.Subject)
		}
		code := syntaxCode(f.Summary)
		if code == CodeNotClosed && f.Context != nil {
			where = r.placeOf(*f.Context) // from what is opened
			where.End = min(where.End, where.Start+1)
		}
		if at, ok := r.unitOn(where.Line); ok {
			written := string(r.text[at.Start:at.End])
			quoted := `"` + strings.ReplaceAll(written, `"`, `\"`) + `"`
			r.reportWith(diag.Error, CodeBareUnit, at, r.replace(at, quoted), message.Text("written", written))
			return at.Line
		}
		if code == CodeTwice {
			r.report(diag.Error, code, where, message.Text("name", string(r.text[where.Start:where.End])))
			return where.Line
		}
		r.report(diag.Error, code, where)
		return where.Line
	}
	return 0
}

// unitOn finds a length that lacks its quotes on a line.
func (r *reader) unitOn(line int) (diag.Place, bool) {
	if line < 1 || line > len(r.lines) {
		return diag.Place{}, false
	}
	start := r.lines[line-1]
	text := r.text[start:]
	if end := bytes.IndexByte(text, '\n'); end >= 0 {
		text = text[:end]
	}
	if len(text) > 1000 || bytes.Count(text, []byte(`"`)) > 1 {
		return diag.Place{}, false
	}
	m := bareUnit.FindSubmatchIndex(bytes.TrimRight(text, "\r"))
	if m == nil {
		return diag.Place{}, false
	}
	return r.place(start+m[2], start+m[3]), true
}

// syntaxCode sorts the parser's complaints, which are known by their titles.
func syntaxCode(title string) diag.Code {
	switch {
	case title == "Attribute redefined":
		return CodeTwice
	case strings.Contains(title, "nclosed") || strings.Contains(title, "nterminated") ||
		strings.Contains(title, "nbalanced") || strings.Contains(title, "Missing clos"):
		return CodeNotClosed
	case strings.Contains(title, "block definition") || strings.Contains(title, "Argument"):
		return CodeNotABlock
	}
	return CodeNotAFormula
}
