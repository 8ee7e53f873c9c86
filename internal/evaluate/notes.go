package evaluate

import (
	"cmp"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// top is the address of something that belongs to the whole document.
func (d *decl) top() address.Address {
	return d.s.addr.Child(d.block.Type).Child(slug(d.name))
}

// collectMeasure writes a measure into the piece.
func (d *decl) collectMeasure() {
	w, e := d.s.w, env{s: d.s}
	out := piece.Measure{
		Address: d.top(), Label: cmp.Or(e.words(d.block, "label"), d.name), Of: w.addresses(e, d.block, "of"),
		After: e.words(d.block, "after"), Before: w.addresses(e, d.block, "before"), Where: d.block.Where,
	}
	for _, item := range e.value(d.block, "take", "").Items {
		if word, ok := d.s.maker.Words(item); ok {
			if !knownReading(word) {
				w.fault(CodeReading, item.Where, message.Text("word", clip(word)), message.Text("known", joinWords(readingWords)))
				return
			}
			out.Take, out.Last = append(out.Take, word), item.Where
		}
	}
	if stage := w.addresses(e, d.block, "stage"); len(stage) > 0 {
		out.Stage = stage[0]
		if len(stage) > 1 { // all of a repeated group: its family
			out.Stage = stage[0].Parent().Child(stage[0].Last().Name)
		}
	}
	for _, must := range []string{"of", "take"} {
		if !d.block.Has(must) {
			d.s.missing(d.block, must)
			return
		}
	}
	w.out.Measures = append(w.out.Measures, out)
}

// readingWords are the readings that a measure may ask for.
var readingWords = []string{
	"width", "width front", "width back", "width top", "width bottom", "height", "height left", "height right", "height front", "height back",
	"depth", "depth left", "depth right", "length", "thickness", "diagonals", "set back", "diameter",
}

func knownReading(word string) bool {
	for _, w := range readingWords {
		if w == word {
			return true
		}
	}
	return false
}

// collectFinish writes a finish into the piece.
func (d *decl) collectFinish() {
	w, e := d.s.w, env{s: d.s}
	out := piece.Finish{Address: d.top(), Kind: e.words(d.block, "kind"), Coats: 1, On: w.addresses(e, d.block, "on"), When: e.words(d.block, "when"), Where: d.block.Where}
	if d.block.Has("coats") {
		out.Coats, _, _ = d.s.maker.Count(e.value(d.block, "coats", ""), 1, 100, "")
	}
	if out.When != "" && out.When != "before assembly" && out.When != "after assembly" {
		e.reader(d.block).BadWord("when", out.When, []string{"before assembly", "after assembly"})
		return
	}
	if out.Kind == "" {
		if !d.block.Has("kind") {
			d.s.missing(d.block, "kind")
		}
		return
	}
	w.out.Finishes = append(w.out.Finishes, out)
}

// collectStep writes the author's own instruction into the piece.
func (d *decl) collectStep() {
	w, e := d.s.w, env{s: d.s}
	if !d.block.Has("text") {
		d.s.missing(d.block, "text")
		return
	}
	w.out.Steps = append(w.out.Steps, piece.Step{
		Address: d.top(), Text: e.words(d.block, "text"), After: w.addresses(e, d.block, "after"), Before: w.addresses(e, d.block, "before"),
		Caution: e.words(d.block, "caution"), Where: d.block.Where,
	})
}

// collectRequire judges the author's own rule and writes it into the piece.
func (d *decl) collectRequire() {
	w, e := d.s.w, env{s: d.s}
	for _, must := range []string{"that", "message"} {
		if !d.block.Has(must) {
			d.s.missing(d.block, must)
			return
		}
	}
	that, ok := d.s.maker.Truth(e.value(d.block, "that", string(d.top())))
	text := e.words(d.block, "message")
	if !ok {
		return
	}
	out := piece.Require{Address: d.top(), Holds: that.Is.Truth(), Text: text, Where: d.block.Where}
	if d.block.Has("warn") {
		v, _ := d.s.maker.Truth(e.value(d.block, "warn", ""))
		out.Warn = v.Is.Truth()
	}
	w.out.Requires = append(w.out.Requires, out)
}
