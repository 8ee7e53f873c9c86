package evaluate

import (
	"cmp"
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/record"
	"scantling/internal/unit"
)

// readings is what the as-built record says of what is there now.
type readings struct {
	placed   map[class]record.Placed
	unplaced []record.Unplaced
	again    []record.Entry
	count    int
	used     map[address.Address]ledger.ID
	// between are the readings taken where a part goes: neither they nor what such a part
	// is cut to move a drawn face.
	between map[spot]bool
}

// class tells apart what a fingerprint of a thing must hold on to: a thickness
// is the board's and outlives a change of its length; a cut part stays what it
// is whatever is planned now (a difference is a conflict); any other reading
// holds only for what was planned when it was taken.
type class string

const (
	boardClass class = "board"
	cutClass   class = "cut"
	sizeClass  class = "size"
)

func classOf(e record.Entry) class {
	switch {
	case e.Kind == record.Cut:
		return cutClass
	case e.What == "thickness":
		return boardClass
	}
	return sizeClass
}

// openRecord finds what of the record still holds, against the piece as it is
// planned without it.
func (w *world) openRecord(planned *piece.Piece) {
	w.record = &readings{placed: map[class]record.Placed{}, used: map[address.Address]ledger.ID{}}
	if planned == nil {
		return
	}
	w.record.between = readBetween(planned)
	for _, c := range []class{boardClass, cutClass, sizeClass} {
		var of record.Record
		var number []int
		for i, e := range w.src.Record {
			if e.Kind == record.Spoiled || classOf(e) == c {
				of, number = append(of, e), append(number, i+1)
			}
		}
		p := record.Place(of, fingerprints(planned, c))
		for _, u := range p.Unplaced {
			u.Number = number[u.Number-1]
			w.record.unplaced = append(w.record.unplaced, u)
		}
		w.record.again = append(w.record.again, p.Again...)
		for range p.All() {
			w.record.count++
		}
		w.record.count += len(p.Cuts)
		w.record.placed[c] = p
	}
	slices.SortFunc(w.record.unplaced, func(a, b record.Unplaced) int { return cmp.Compare(a.Number, b.Number) })
	w.tellRecord()
}

// tellRecord reports what of the record is not applied, and what applies again.
func (w *world) tellRecord() {
	for _, u := range w.record.unplaced {
		w.diags = append(w.diags, diag.Diagnostic{Severity: diag.Warning, Code: CodeUnplaced, Address: u.Entry.Address,
			Text: textOf(CodeUnplaced, message.Address("of", u.Entry.Address), message.Text("what", cmp.Or(u.Entry.What, string(u.Entry.Kind))),
				message.Count("number", u.Number), message.Word("why", "unplaced."+string(u.Why)))})
	}
	for _, e := range w.record.again {
		w.diags = append(w.diags, diag.Diagnostic{Severity: diag.Note, Code: CodeAgain, Address: e.Address,
			Text: textOf(CodeAgain, message.Address("of", e.Address), message.Text("what", cmp.Or(e.What, string(e.Kind))))})
	}
}

// leaf enters a reading in the ledger.
func (w *world) leaf(e record.Entry, name string, l unit.Length) formula.Value {
	source := "record"
	if e.Date.String() != "" {
		source += " " + e.Date.String()
	}
	id := w.ledger.Given(ledger.Entry{Name: name, Value: unit.OfLength(l), Origin: ledger.Measured, Source: source, Status: string(e.Kind)})
	w.record.used[e.Address] = id
	return quantity(w.ledger.Figure(id))
}

// thickness is the recorded thickness of a part or a material, if there is one.
func (r *readings) thickness(w *world, of address.Address, name string) (formula.Value, bool) {
	if e, ok := r.placed[cutClass].Cuts[of]; ok {
		return w.leaf(e, name, e.Sizes[2]), true
	}
	if e, ok := r.placed[boardClass].Reading(of, "thickness"); ok {
		if l, isLength := e.Value.Length(); isLength && l > 0 {
			return w.leaf(e, name, l), true
		}
	}
	return formula.Value{}, false
}

// measured is a space's clear size along an axis as read: the least of the
// readings of that direction.
func (s *space) measured(axis piece.Axis) (formula.Value, bool) {
	w := s.w()
	word := [3]string{"width", "depth", "height"}[axis]
	var ids []ledger.ID
	name := string(s.addr) + "." + sizeWords[axis]
	all := w.record.placed[sizeClass].Readings[s.addr]
	for _, what := range readingWords {
		e, ok := all[what]
		if !ok || what != word && !strings.HasPrefix(what, word+" ") {
			continue
		}
		if l, isLength := e.Value.Length(); isLength && l > 0 {
			ids = append(ids, w.leaf(e, string(s.addr)+"."+what, l).Entry)
		}
	}
	switch len(ids) {
	case 0:
		return formula.Value{}, false
	case 1:
		return quantity(w.ledger.Figure(w.make(name, ledger.OpSame, ids...))), true
	}
	return quantity(w.ledger.Figure(w.make(name, ledger.OpMin, ids...))), true
}

// compared enters how far the diagonals of a space were read to differ: no size follows
// from it, but it is judged.
func (s *space) compared() {
	w := s.w()
	if e, ok := w.record.placed[sizeClass].Reading(s.addr, "diagonals"); ok {
		if l, isLength := e.Value.Length(); isLength {
			w.leaf(e, string(s.addr)+".diagonals", l)
		}
	}
}

// asCut is the part's recorded size along an axis, length and width only: as it
// was cut, or read.
func (p *part) asCut(axis piece.Axis) (record.Entry, unit.Length, bool) {
	r := p.w().record
	if r.count == 0 {
		return record.Entry{}, 0, false
	}
	e, cut := r.placed[cutClass].Cuts[p.addr]
	length, okL := r.placed[sizeClass].Reading(p.addr, "length")
	width, okW := r.placed[sizeClass].Reading(p.addr, "width")
	if !cut && !okL && !okW {
		return record.Entry{}, 0, false
	}
	f := p.form()
	switch {
	case !f.ok || int(axis) == f.one || axis == f.thick:
	case axis == f.grain && r.between[spot{p.addr, "length"}], axis == f.wide && r.between[spot{p.addr, "width"}]:
	case cut && axis == f.grain:
		return e, e.Sizes[0], true
	case cut:
		return e, e.Sizes[1], true
	case axis == f.grain && okL:
		l, ok := length.Value.Length()
		return length, l, ok && l > 0
	case axis == f.wide && okW:
		l, ok := width.Value.Length()
		return width, l, ok && l > 0
	}
	return record.Entry{}, 0, false
}

// frozenEnd is the end of a part that is cut already, where it came out other
// than it is planned now by more than the shop's saw can tell: the low end stays
// (the high one where only that is stated), and the difference is reported.
func (p *part) frozenEnd(axis piece.Axis, high bool, name string) (formula.Value, bool) {
	e, got, ok := p.asCut(axis)
	if !ok {
		return formula.Value{}, false
	}
	b := p.decl.block
	anchored := b.Has(highWords[axis]) && !b.Has(lowWords[axis]) // that end stays
	if high == anchored {
		return formula.Value{}, false
	}
	word := lowWords[axis]
	if high {
		word = highWords[axis]
	}
	from := p.end(axis, !high)
	planned := p.plannedEnd(axis, high, word, name)
	if !from.OK() || !planned.OK() {
		return formula.Value{}, false
	}
	a, _ := from.Is.Length()
	c, _ := planned.Is.Length()
	wanted := (c - a).Abs()
	if (wanted - got).Abs() <= p.w().tolerance() {
		return formula.Value{}, false
	}
	p.conflict = true
	p.w().tellConflict(p.addr, p.decl.block.Where, axis, got, wanted)
	op := ledger.OpSub
	if high {
		op = ledger.OpAdd
	}
	return p.sum(name, op, from, p.w().leaf(e, p.name()+"."+sizeWords[axis], got)), true
}

// tellConflict reports a part that came out other than it must be now, with the
// smallest way out: trim what is too large, make again what is too small.
func (w *world) tellConflict(of address.Address, where diag.Place, axis piece.Axis, got, wanted unit.Length) {
	code, remedy := CodeCutLarge, message.New("remedy.trim", message.Length("by", got-wanted))
	severity := diag.Warning
	if got < wanted {
		code, severity = CodeCutSmall, diag.Error
		remedy = message.New("remedy.make-again", message.Address("part", of))
	}
	w.report(diag.Diagnostic{Severity: severity, Code: code, Where: where, Address: of,
		Text: textOf(code, message.Address("part", of), message.Word("axis", axisWord(axis)), message.Length("got", got), message.Length("want", wanted),
			message.Length("off", (got-wanted).Abs())),
		Remedies: []diag.Remedy{{Text: remedy}}})
}

// usualTolerance is what a cut may come out off before anything follows from it.
// Common practice, no source; the house rule "cut tolerance" goes before it.
const usualTolerance = 200 * unit.Micrometre

func (w *world) tolerance() unit.Length {
	if f := w.shop.LengthRule("cut tolerance"); f.Known() {
		return f.Value
	}
	return usualTolerance
}
