package document

import (
	"maps"
	"slices"
	"strings"

	"scantling/internal/diag"
	"scantling/internal/message"
)

// check holds the tree against the schema of its kind.
func (r *reader) check() {
	allowed, ok := schema[r.file.Kind]
	if !ok {
		return
	}
	r.checkBlocks(r.file.Blocks, allowed)
}

func (r *reader) checkBlocks(blocks []*Block, allowed map[string]shape) {
	first := map[string]*Block{}
	for _, b := range blocks {
		s, ok := allowed[b.Type]
		if !ok {
			r.unknown(CodeUnknownBlock, b.Type, diag.Place{File: b.Where.File, Start: b.Where.Start, End: b.Where.Start + len(b.Type), Line: b.Where.Line, Column: b.Where.Column},
				slices.Sorted(maps.Keys(allowed)))
			r.file.Misread = append(r.file.Misread, b.Labels...)
			continue
		}
		if len(b.Labels) != s.labels {
			r.report(diag.Error, CodeLabels, b.Where, message.Text("block", b.Type), message.Count("got", len(b.Labels)), message.Count("want", s.labels))
			b.Broken = true
		}
		r.checkTwice(first, b)
		r.checkBody(b, s)
	}
}

// checkTwice reports a block of the same type and name, but for "use", whose
// label names the recipe, and for "defect", of which a board has as many as it has.
func (r *reader) checkTwice(first map[string]*Block, b *Block) {
	if b.Type == "use" || b.Type == "defect" || b.Type == string(r.file.Kind) {
		return
	}
	key := strings.Join(append([]string{b.Type}, b.Labels...), " ")
	if was := first[key]; was != nil {
		r.add(diag.Diagnostic{Severity: diag.Error, Code: CodeTwice, Where: b.Where, Text: textOf(CodeTwice, message.Text("name", key)),
			Related: []diag.Related{{Text: message.New("related.first-here"), Where: was.Where}}})
		return
	}
	first[key] = b
}

func (r *reader) checkBody(b *Block, s shape) {
	if !s.free {
		for _, a := range b.Attributes {
			if !slices.Contains(s.attributes, a.Name) {
				b.Unsure = true
				r.unknown(CodeUnknownAttribute, a.Name, a.Where, s.attributes, message.Text("block", b.Type))
			}
		}
	}
	if !b.Broken { // otherwise blocks may stand in it that were meant to follow it
		r.checkBlocks(b.Blocks, s.blocks)
	}
}

// unknown reports an unknown word, with the nearest known one as a remedy.
func (r *reader) unknown(code diag.Code, word string, where diag.Place, known []string, args ...message.Arg) {
	args = append([]message.Arg{message.Text("word", word)}, args...)
	if near := Nearest(word, known); near != "" {
		r.reportWith(diag.Error, code, where, r.replace(where, near), args...)
		return
	}
	r.report(diag.Error, code, where, args...)
}

// Nearest returns the word that was probably meant: one that differs by at most
// a third of its letters. It is empty where none is near.
func Nearest(word string, known []string) string {
	best, least := "", len(word)/3+1
	if len(word) > 64 {
		return ""
	}
	for _, k := range known {
		if d := letters(word, k); d < least || (d == least && len(word) > 1 && best == "") {
			best, least = k, d
		}
	}
	if least > (len(word)+2)/3 {
		return ""
	}
	return best
}

// letters counts the letters to change, add, drop or swap to make b of a.
func letters(a, b string) int {
	before, row := make([]int, len(b)+1), make([]int, len(b)+1)
	var swapped []int
	for j := range before {
		before[j] = j
	}
	for i := range len(a) {
		row[0] = i + 1
		for j := range len(b) {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			row[j+1] = min(before[j]+cost, before[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], swapped[j-1]+1)
			}
		}
		swapped, before, row = before, row, make([]int, len(b)+1)
	}
	return before[len(b)]
}
