package document

import (
	"math/big"
	"regexp"
	"sort"

	"github.com/hashicorp/hcl/v2"

	"scantling/internal/diag"
	"scantling/internal/message"
)

// header is how an outermost block, or the version line, starts.
var header = regexp.MustCompile(`^(scantling[ \t]*=|[a-z][a-z_]*([ \t]+"[^"\n]*")*[ \t]*\{)`)

// heredoc is a text over several lines, which the language leaves out; one may
// stand in a comment.
var heredoc = regexp.MustCompile(`(?m)^[^#"\n]*?(<<)-?[\pL_][^\s"]*[ \t]*\r?$`)

func ratOf(n int64) *big.Rat { return new(big.Rat).SetInt64(n) }

func lineStarts(text []byte) []int {
	starts := []int{0}
	for i, c := range text {
		if c == '\n' {
			starts = append(starts, i+1)
		}
	}
	return starts
}

// place is the stretch from start to end.
func (r *reader) place(start, end int) diag.Place {
	line := sort.Search(len(r.lines), func(i int) bool { return r.lines[i] > start })
	return diag.Place{File: r.file.Name, Start: start, End: end, Line: line, Column: start - r.lines[line-1] + 1}
}

func (r *reader) placeOf(g hcl.Range) diag.Place {
	start := min(max(g.Start.Byte, 0), len(r.text))
	return r.place(start, min(max(g.End.Byte, start), len(r.text)))
}

func (r *reader) report(s diag.Severity, code diag.Code, where diag.Place, args ...message.Arg) {
	r.add(diag.Diagnostic{Severity: s, Code: code, Where: where, Text: textOf(code, args...)})
}

func (r *reader) reportWith(s diag.Severity, code diag.Code, where diag.Place, remedy diag.Remedy, args ...message.Arg) {
	r.add(diag.Diagnostic{Severity: s, Code: code, Where: where, Text: textOf(code, args...), Remedies: []diag.Remedy{remedy}})
}

func (r *reader) add(d diag.Diagnostic) {
	if len(r.diags) < r.limits.Faults {
		r.diags = append(r.diags, d)
	}
}

func textOf(code diag.Code, args ...message.Arg) message.Message {
	return message.New("diagnostic."+string(code), args...)
}

// replace is the remedy that writes text where what stands at a place is.
func (r *reader) replace(at diag.Place, text string) diag.Remedy {
	return diag.Remedy{
		Text:  message.New("remedy.write-instead", message.Text("old", string(r.text[at.Start:at.End])), message.Text("new", text)),
		Edits: []diag.Edit{{File: r.file.Name, Start: at.Start, End: at.End, Old: string(r.text[at.Start:at.End]), New: text}},
	}
}

// insert is the remedy that writes text at an offset.
func (r *reader) insert(at int, text string) diag.Remedy {
	return diag.Remedy{
		Text:  message.New("remedy.add", message.Text("new", text)),
		Edits: []diag.Edit{{File: r.file.Name, Start: at, End: at, New: text}},
	}
}

// Replace returns the remedy that writes text in the place of what stands there.
func (f *File) Replace(at diag.Place, text string) diag.Remedy {
	r := reader{file: f, text: f.Text}
	return r.replace(at, text)
}

// Insert returns the remedy that writes text at an offset in bytes.
func (f *File) Insert(at int, text string) diag.Remedy {
	r := reader{file: f, text: f.Text}
	return r.insert(at, text)
}

// Written returns the bytes of the document at a place, as text.
func (f *File) Written(at diag.Place) string {
	if at.Start < 0 || at.End > len(f.Text) || at.Start > at.End {
		return ""
	}
	return string(f.Text[at.Start:at.End])
}
