package evaluate

import (
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// spot is one reading of one part.
type spot struct {
	of   address.Address
	what string
}

// readBetween lists the readings that are taken where a part goes, between the parts
// that it is let into, before it is cut.
func readBetween(planned *piece.Piece) map[spot]bool {
	out := map[spot]bool{}
	for i := range planned.Measures {
		m := &planned.Measures[i]
		for _, a := range planned.Between(m) {
			for _, what := range m.Take {
				if piece.TakenBetween(what) {
					out[spot{a, what}] = true
				}
			}
		}
	}
	return out
}

// lengthRead is a reading of a part's length or width, if there is one.
func (r *readings) lengthRead(of address.Address, what string) (unit.Length, bool) {
	e, ok := r.placed[sizeClass].Reading(of, what)
	if !ok {
		return 0, false
	}
	l, isLength := e.Value.Length()
	return l, isLength && l > 0
}

// tellBetween enters what was read where parts go, and says to what a part is cut where
// that is another size than planned: the partners stay as drawn, and so does the part.
func (w *world) tellBetween() {
	if len(w.record.between) == 0 {
		return
	}
	for i := range w.out.Parts {
		p := &w.out.Parts[i]
		w.tellOneBetween(p, "length", p.Length.Nm)
		w.tellOneBetween(p, "width", p.Width.Nm)
	}
}

func (w *world) tellOneBetween(p *piece.Part, what string, planned unit.Length) {
	if !w.record.between[spot{p.Address, what}] {
		return
	}
	got, ok := w.record.lengthRead(p.Address, what)
	if !ok {
		return
	}
	e, _ := w.record.placed[sizeClass].Reading(p.Address, what)
	w.leaf(e, string(p.Address)+"."+what, got)
	if (got - planned).Abs() <= w.tolerance() {
		return
	}
	w.report(diag.Diagnostic{Severity: diag.Warning, Code: CodeReadBetween, Where: p.Where, Address: p.Address,
		Text: textOf(CodeReadBetween, message.Address("part", p.Address), message.Word("what", "reading."+what),
			message.Length("got", got), message.Length("want", planned))})
}
