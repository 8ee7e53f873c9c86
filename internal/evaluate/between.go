package evaluate

import (
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/formula"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/record"
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
func (r *readings) lengthRead(of address.Address, what string) (record.Entry, unit.Length, bool) {
	e, ok := r.placed[sizeClass].Reading(of, what)
	if !ok {
		return e, 0, false
	}
	l, isLength := e.Value.Length()
	return e, l, isLength && l > 0
}

// readInPlace lists the sizes that were read where parts go, or that parts were cut to
// which are to be read there. Nothing that is drawn moves: those that the part goes into
// are made already.
func (w *world) readInPlace() {
	if len(w.record.between) == 0 {
		return
	}
	for i := range w.out.Parts {
		p := &w.out.Parts[i]
		w.oneInPlace(p, piece.AlongLength, "length", p.Length)
		w.oneInPlace(p, piece.AlongWidth, "width", p.Width)
	}
}

func (w *world) oneInPlace(p *piece.Part, along piece.Local, what string, drawn piece.Figure) {
	if !w.record.between[spot{p.Address, what}] {
		return
	}
	name := string(p.Address) + "." + what
	e, read, isRead := w.record.lengthRead(p.Address, what)
	var size formula.Value
	if isRead {
		size = w.leaf(e, name, read)
	}
	cut, isCut := w.record.placed[cutClass].Cuts[p.Address]
	if isCut {
		got := cut.Sizes[along]
		size = w.leaf(cut, name+" as cut", got)
		switch axis, _ := p.Frame.Directions()[along].Axis(); {
		case isRead && (got-read).Abs() > w.tolerance():
			w.tellBeside(p, what, got, read, drawn.Nm)
		case !isRead && (got-drawn.Nm).Abs() > w.tolerance():
			w.tellConflict(p.Address, p.Where, axis, got, drawn.Nm)
		}
	}
	if isRead || isCut {
		w.out.InPlace = append(w.out.InPlace, piece.InPlace{Part: p.Address, Along: along, Drawn: drawn, Size: w.figure(size), Far: w.out.FarEnd(p, along)})
	}
}

// tellBeside reports a part that was cut, and where it goes another size was read. It is
// in nobody's way on paper, so that the plan stands: a warning.
func (w *world) tellBeside(p *piece.Part, what string, got, read, planned unit.Length) {
	way, remedy := "beside.too-large", message.New("remedy.trim", message.Length("by", got-read))
	if got < read {
		way, remedy = "beside.too-small", message.New("remedy.make-again", message.Address("part", p.Address))
	}
	w.report(diag.Diagnostic{Severity: diag.Warning, Code: CodeCutBesideReading, Where: p.Where, Address: p.Address,
		Text: textOf(CodeCutBesideReading, message.Address("part", p.Address), message.Word("what", "reading."+what), message.Length("got", got),
			message.Length("read", read), message.Length("planned", planned), message.Length("off", (got-read).Abs()), message.Word("way", way)),
		Remedies: []diag.Remedy{{Text: remedy}}})
}
