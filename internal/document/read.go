package document

import (
	"slices"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"scantling/internal/diag"
	"scantling/internal/message"
)

// Read reads a document within limits. It always returns a file, as much of it
// as could be read, and everything that is wrong with the writing.
func Read(src Source, limits Limits) (*File, diag.List) {
	r := &reader{
		file:   &File{Name: src.Name, Text: src.Text},
		text:   src.Text,
		limits: limits.orDefault(),
		lines:  lineStarts(src.Text),
	}
	if r.measure() {
		r.body()
		r.version()
		r.kind()
		r.check()
	}
	return r.file, r.diags.Sorted()
}

// reader is one reading of one document.
type reader struct {
	file   *File
	text   []byte
	limits Limits
	lines  []int
	diags  diag.List
	top    []*Attribute // attributes at the outermost level
	full   bool         // a limit has been reported; say no more of the kind
	broken bool         // what is converted did not parse: its oddities are told already
}

// measure refuses what is too large or not text before anything is parsed, so
// that the parser's own recursion stays shallow.
func (r *reader) measure() bool {
	r.file.Work.Bytes = len(r.text)
	if len(r.text) > r.limits.Bytes {
		r.text = nil
		return r.refuse(CodeTooLong, diag.Place{File: r.file.Name, Line: 1, Column: 1}, len(r.file.Text), r.limits.Bytes)
	}
	for i := 0; i < len(r.text); {
		c, n := utf8.DecodeRune(r.text[i:])
		if (c == utf8.RuneError && n == 1) || c == 0 {
			r.report(diag.Error, CodeNotText, r.place(i, i+1))
			return false
		}
		i += n
	}
	if at := heredoc.FindSubmatchIndex(r.text); at != nil { // the parser takes them apart in square time
		r.report(diag.Error, CodeUnsupported, r.place(at[2], at[3]), message.Text("word", "<<"))
		return false
	}
	tokens, _ := hclsyntax.LexConfig(r.text, r.file.Name, hcl.InitialPos)
	r.file.Work.Tokens = len(tokens)
	depth, signs, choices := 0, 0, 0
	for _, t := range tokens {
		if t.Type == hclsyntax.TokenMinus || t.Type == hclsyntax.TokenBang {
			signs++
		} else {
			signs = 0
		}
		switch t.Type {
		case hclsyntax.TokenOBrace, hclsyntax.TokenOBrack, hclsyntax.TokenOParen, hclsyntax.TokenOQuote,
			hclsyntax.TokenOHeredoc, hclsyntax.TokenTemplateInterp, hclsyntax.TokenTemplateControl:
			depth++
		case hclsyntax.TokenCBrace, hclsyntax.TokenCBrack, hclsyntax.TokenCParen, hclsyntax.TokenCQuote,
			hclsyntax.TokenCHeredoc, hclsyntax.TokenTemplateSeqEnd:
			depth = max(0, depth-1)
		case hclsyntax.TokenQuestion:
			choices++
		case hclsyntax.TokenNewline:
			choices = 0
		}
		if most := r.limits.Depth; depth > most || signs > most || choices > most {
			return r.refuse(CodeTooDeep, r.placeOf(t.Range), max(depth, signs, choices), most)
		}
	}
	return true
}

func (r *reader) refuse(code diag.Code, where diag.Place, got, most int) bool {
	r.report(diag.Error, code, where, message.Count("got", got), message.Count("most", most))
	return false
}

// body parses the text, as a whole or, where that fails, block by block.
func (r *reader) body() {
	whole, faults := hclsyntax.ParseConfig(r.text, r.file.Name, hcl.InitialPos)
	if !faults.HasErrors() {
		r.take(whole, 0)
		return
	}
	if chunks, ok := r.chunks(); ok {
		for _, c := range chunks {
			r.take(c.parsed, r.reportSyntax(c.faults))
		}
		return
	}
	r.file.Lost = true
	r.take(whole, r.reportSyntax(faults))
}

// take converts what was parsed. Where it is broken, from the line given on, the
// attributes that stand there are not to be trusted and are left out.
func (r *reader) take(parsed *hcl.File, line int) {
	broken := line > 0
	if parsed == nil {
		r.file.Lost = r.file.Lost || broken
		return
	}
	body, ok := parsed.Body.(*hclsyntax.Body)
	if !ok {
		return
	}
	r.broken = broken
	attributes, blocks := r.convertBody(body)
	r.broken = false
	if broken {
		for _, b := range blocks {
			b.breakFrom(r.lines[line-1])
		}
		r.file.Lost = r.file.Lost || len(blocks) == 0
	}
	r.top = append(r.top, attributes...)
	r.file.Blocks = append(r.file.Blocks, blocks...)
}

// breakFrom marks a block that reaches beyond a byte as broken and drops the
// attributes that do.
func (b *Block) breakFrom(at int) {
	if b.Whole.End <= at {
		return
	}
	b.Broken = true
	b.Attributes = slices.DeleteFunc(b.Attributes, func(a *Attribute) bool { return a.Whole.End > at })
	for _, inner := range b.Blocks {
		inner.breakFrom(at)
	}
}

// chunk is one outermost block of a text that does not parse as a whole.
type chunk struct {
	parsed *hcl.File
	faults hcl.Diagnostics
}

// chunks cuts the text before every line that starts, at its very left, like a
// block, and parses each piece alone. It answers false where most pieces fail
// then, as they do in a document that is not indented.
func (r *reader) chunks() ([]chunk, bool) {
	var starts []int
	for line, at := range r.lines {
		if header.Match(r.text[at:min(len(r.text), at+512)]) || line == 0 {
			starts = append(starts, line)
		}
	}
	var out []chunk
	broken := 0
	for i, line := range starts {
		end := len(r.text)
		if i+1 < len(starts) {
			end = r.lines[starts[i+1]]
		}
		at := r.lines[line]
		parsed, faults := hclsyntax.ParseConfig(r.text[at:end], r.file.Name, hcl.Pos{Line: line + 1, Column: 1, Byte: at})
		if faults.HasErrors() {
			broken++
		}
		out = append(out, chunk{parsed, faults})
	}
	return out, len(out) > 1 && broken <= max(1, len(out)/2)
}

// version checks the line "scantling = 1".
func (r *reader) version() {
	found := false
	for _, a := range r.top {
		if a.Name != "scantling" {
			r.report(diag.Error, CodeOutside, a.Where, message.Text("name", a.Name))
			continue
		}
		found = true
		n, ok := a.Value.(*Number)
		switch {
		case !ok || !n.Value.IsInt() || n.Value.Sign() <= 0:
			r.reportWith(diag.Error, CodeVersionUnreadable, a.Value.Place(), r.replace(a.Value.Place(), "1"))
		case n.Value.Cmp(ratOf(Version)) > 0:
			r.report(diag.Error, CodeVersionNewer, a.Value.Place(),
				message.Text("got", n.Value.RatString()), message.Count("known", Version))
		}
	}
	if !found && !r.file.Lost {
		start := r.place(0, 0)
		r.reportWith(diag.Error, CodeVersionMissing, start, r.insert(0, "scantling = 1\n\n"))
	}
}

// kind finds the block that says what the document is.
func (r *reader) kind() {
	for _, b := range r.file.Blocks {
		kind := Kind(b.Type)
		if _, known := schema[kind]; !known {
			continue
		}
		if r.file.Head != nil {
			r.report(diag.Error, CodeTwoHeads, b.Where, message.Text("first", r.file.Head.Type), message.Text("second", b.Type))
			continue
		}
		r.file.Head, r.file.Kind = b, kind
	}
	if r.file.Head == nil && !r.file.Lost {
		r.report(diag.Error, CodeNoHead, r.place(0, 0))
	}
}
