package evaluate

import (
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/shop"
	"scantling/internal/unit"
)

// world is one evaluation.
type world struct {
	src     Sources
	limits  Limits
	work    Work
	ledger  *ledger.Ledger
	shop    *shop.Shop
	out     *piece.Piece
	diags   diag.List
	told    map[toldKey]bool
	files   map[string]*document.File
	recipes map[string]*document.File
	root    *scope
	record  *readings
	// waiting are the values being worked out, outermost first.
	waiting []waiting
	steps   int
	chosen  map[string]string
	fits    map[fitKey]*cell[formula.Value]
	taken   map[address.Address]diag.Place
}

type toldKey struct {
	code diag.Code
	file string
	at   int
	end  int
	of   address.Address // only for what is told of each instance
}

type waiting struct {
	cell  any
	name  string
	where diag.Place
}

// report keeps a diagnostic, once for each code and place.
func (w *world) report(d diag.Diagnostic) {
	key := toldKey{code: d.Code, file: d.Where.File, at: d.Where.Start, end: d.Where.End}
	if d.Code == CodeCutSmall || d.Code == CodeCutLarge || d.Code == CodeCutBesideReading {
		key.of = d.Address // two parts of one block may each be cut wrongly
	}
	if w.told[key] || len(w.diags) >= w.limits.Faults {
		return
	}
	w.told[key] = true
	w.diags = append(w.diags, d)
}

func (w *world) fault(code diag.Code, where diag.Place, args ...message.Arg) {
	w.report(diag.Diagnostic{Severity: diag.Error, Code: code, Where: where, Text: textOf(code, args...)})
}

func (w *world) faultWith(code diag.Code, where diag.Place, remedies []diag.Remedy, args ...message.Arg) {
	w.report(diag.Diagnostic{Severity: diag.Error, Code: code, Where: where, Text: textOf(code, args...), Remedies: remedies})
}

func textOf(code diag.Code, args ...message.Arg) message.Message {
	return message.New("diagnostic."+string(code), args...)
}

// maker returns the maker of formulas for a document in the given unit.
func (w *world) maker(system unit.System) *formula.Maker {
	return &formula.Maker{
		Ledger: w.ledger, Bare: system.Unit(), Show: unit.Show{System: system, Denominator: 64, Resolution: unit.Millimetre / 100},
		Report: w.report, Steps: &w.steps, Most: &w.limits.Formulas,
	}
}

// cell is a value that is worked out once, when it is first asked for.
type cell[T any] struct {
	state state
	value T
}

type state uint8

const (
	untouched state = iota
	busy
	done
)

// get works a cell out. A cell that is being worked out already closes a circle:
// it is reported whole, and the zero value stands in.
func get[T any](w *world, c *cell[T], name func() string, where diag.Place, work func() T) T {
	switch c.state {
	case done:
		return c.value
	case busy:
		w.circle(c)
		var none T
		return none
	}
	if len(w.waiting) >= w.limits.Chain {
		w.fault(CodeTooDeep, where, message.Count("most", w.limits.Chain))
		var none T
		return none
	}
	c.state = busy
	w.waiting = append(w.waiting, waiting{c, "", where})
	w.waiting[len(w.waiting)-1].name = name()
	w.work.Chain = max(w.work.Chain, len(w.waiting))
	c.value = work()
	w.waiting = w.waiting[:len(w.waiting)-1]
	c.state = done
	return c.value
}

// circle reports the values that wait for each other, from the one that is asked
// for again.
func (w *world) circle(cell any) {
	from := len(w.waiting) - 1
	for from > 0 && w.waiting[from].cell != cell {
		from--
	}
	ring := w.waiting[from:]
	names := make([]message.Arg, 0, len(ring)+1)
	d := diag.Diagnostic{Severity: diag.Error, Code: CodeCircle, Where: ring[0].where}
	for i, r := range ring {
		names = append(names, message.Text("", r.name))
		if i > 0 {
			d.Related = append(d.Related, diag.Related{Text: message.New("related.needs", message.Text("name", r.name)), Where: r.where})
		}
	}
	names = append(names, message.Text("", ring[0].name))
	d.Text = textOf(CodeCircle, message.List("names", names...))
	w.report(d)
}

// take counts a thing against the limit of parts; false is one too many.
func (w *world) take(where diag.Place, n int) bool {
	w.work.Parts += n
	if w.work.Parts > w.limits.Parts {
		w.report(diag.Diagnostic{Severity: diag.Error, Code: CodeTooManyParts, Text: textOf(CodeTooManyParts, message.Count("most", w.limits.Parts))})
		return false
	}
	return true
}
