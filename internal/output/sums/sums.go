package sums

import (
	"cmp"

	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/words"
)

// Line is one figure with its sum.
type Line struct {
	// Depth is 0 for the figure asked for, one more for what its sum is made of.
	Depth int
	// Name is an address or a dotted key.
	Name string
	// Value is the figure with its unit.
	Value string
	// Sum is what it was made from; empty for what was written, bought or measured.
	Sum string
	// Origin, Source and Status are those of the ledger's entry.
	Origin ledger.Origin
	Source string
	Status string
	Where  diag.Place
	// Above says that the sum was told further up already and is left out here,
	// Below that its own parts are too deep to be told.
	Above, Below bool
}

// Options bound what is written.
type Options struct {
	// Depth is how many steps down are told; 0 counts as 12.
	Depth int
	// Lines is how many lines are written at most; 0 counts as 200.
	Lines int
}

// Of returns the lines of an entry, and whether lines were left out for their
// number. It returns none if the ledger has no such entry.
func Of(l *ledger.Ledger, id ledger.ID, w *words.Words, o Options) (lines []Line, more bool) {
	t := teller{
		ledger: l, words: w, told: map[ledger.ID]bool{},
		depth: cmp.Or(max(o.Depth, 0), 12), most: cmp.Or(max(o.Lines, 0), 200),
	}
	if e, ok := l.Entry(id); ok {
		t.tell(e, 0)
	}
	return t.lines, t.more
}

type teller struct {
	ledger *ledger.Ledger
	words  *words.Words
	told   map[ledger.ID]bool
	depth  int
	most   int
	lines  []Line
	more   bool
}

// tell writes the line of a named entry and, below it, those of its sum.
func (t *teller) tell(e ledger.Entry, depth int) {
	if len(t.lines) == t.most {
		t.more = true
		return
	}
	end, where := t.head(e)
	line := Line{
		Depth: depth, Name: e.Name, Value: t.value(e.Value, true),
		Origin: end.Origin, Source: end.Source, Status: end.Status, Where: where,
	}
	sum := expression{teller: t}
	switch {
	case end.Name != "" && end.Name != e.Name:
		sum.parts = []ledger.Entry{end}
		line.Sum = end.Name
	case len(end.Args) > 0 && end.Func != "list":
		line.Sum = sum.of(end).text
	}
	line.Above = len(sum.parts) > 0 && t.told[e.ID]
	line.Below = len(sum.parts) > 0 && !line.Above && depth >= t.depth
	if line.Above {
		line.Sum = ""
	}
	t.lines = append(t.lines, line)
	if line.Above || line.Below {
		return
	}
	t.told[e.ID] = true
	for _, part := range sum.parts {
		t.tell(part, depth+1)
	}
}

// head follows an entry through those that are the same under its own name or
// none, to the one that it is made as, or to the next name, and says where it was
// written.
func (t *teller) head(e ledger.Entry) (ledger.Entry, diag.Place) {
	name, where := e.Name, e.Where
	for {
		next, ok := t.same(e)
		switch {
		case !ok:
			return e, where
		case next.Name != "" && next.Name != name:
			return next, where
		}
		e = next
		if !e.Where.IsZero() {
			where = e.Where
		}
	}
}

// same returns the one entry that e is the same as, if there is one: another
// name for it, a bare number that has found its unit, or a face less the face
// that it was measured from.
func (t *teller) same(e ledger.Entry) (ledger.Entry, bool) {
	switch {
	case e.Op == ledger.OpSame, e.Op == ledger.OpAs && len(e.Args) > 0:
		return t.ledger.Entry(e.Args[0])
	case e.Op == ledger.OpSub && len(e.Args) == 2:
		to, from := t.apart(e.Args[0], e.Args[1])
		face, ok := t.ledger.Entry(to)
		if ok && face.Op == ledger.OpAdd && len(face.Args) == 2 && face.Args[0] == from {
			return t.ledger.Entry(face.Args[1])
		}
	}
	return ledger.Entry{}, false
}

// apart takes off two places what both have added to them, unnamed: the place of
// the group that they are in, which does not matter for the distance.
func (t *teller) apart(to, from ledger.ID) (ledger.ID, ledger.ID) {
	for {
		a, okA := t.moved(to)
		b, okB := t.moved(from)
		if !okA || !okB || a.Args[1] != b.Args[1] {
			return to, from
		}
		to, from = a.Args[0], b.Args[0]
	}
}

// moved returns an unnamed sum of two.
func (t *teller) moved(id ledger.ID) (ledger.Entry, bool) {
	e, ok := t.ledger.Entry(id)
	return e, ok && e.Name == "" && e.Op == ledger.OpAdd && len(e.Args) == 2
}
