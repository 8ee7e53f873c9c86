package reading

import (
	_ "embed" // the help

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeUneven: two ends of an opening differ by more than its fit allows.
	//
	// Example: 381.4 in front, 382.6 behind, with 0.8 from side to side.
	CodeUneven diag.Code = "opening-uneven"
	// CodeSquare: the diagonals of an opening differ by more than its fit allows.
	//
	// Example: diagonals that differ by 2, with 0.8 from side to side.
	CodeSquare diag.Code = "opening-not-square"
	// CodeTooLarge: what must fit leaves less than its clearance at the smallest
	// reading.
	//
	// Example: a drawer of 381 for an opening that reads 381.4, with 0.8 of clearance.
	CodeTooLarge diag.Code = "larger-than-reading"
	// CodeOneEnd: one end of an opening was read, the other was not.
	//
	// Example: a record with "width front" alone.
	CodeOneEnd diag.Code = "reading-of-one-end"
	// CodeFar: a reading is so far from what is planned that it is a slip, or of
	// another opening or part.
	//
	// Example: 318.4 written down for 381.4.
	CodeFar diag.Code = "reading-far-from-plan"
	// CodeAgree: the readings agree with what is made from them, or there are none.
	//
	// Example: 381.4 in front, 381.5 behind, and a drawer of 380.6.
	CodeAgree diag.Code = "readings-agree"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "reading", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("reading", c), read: readings(c.Ledger)}
	for _, m := range j.index.Moves() {
		if m.Fit == nil || m.Space == nil {
			continue
		}
		j.pair(m, "width front", "width back", m.Fit.Sides, piece.Right)
		j.pair(m, "height left", "height right", m.Fit.Above, piece.Up)
		j.square(m)
	}
	for _, x := range c.Piece.InPlace {
		j.inPlace(x)
	}
	return j.out.Done(CodeAgree, message.New("check.reading.agree")), nil
})

type judge struct {
	*analysis.Context
	index *bodies.Index
	out   *verdict.Findings
	read  map[string]piece.Figure
}

const practice = "check.reading (practice)"

// readings returns what was measured, by "address.reading", as the ledger has it.
func readings(l *ledger.Ledger) map[string]piece.Figure {
	out := map[string]piece.Figure{}
	for _, e := range l.Entries() {
		if e.Op == ledger.OpGiven && e.Origin == ledger.Measured {
			if nm, ok := e.Value.Length(); ok {
				out[e.Name] = piece.Figure{Nm: nm, Entry: e.ID}
			}
		}
	}
	return out
}

// of returns a reading of a space.
func (j *judge) of(space address.Address, what string) (piece.Figure, bool) {
	f, ok := j.read[string(space)+"."+what]
	return f, ok
}

// pair judges the readings at two ends against each other and against what moves.
func (j *judge) pair(m bodies.Move, first, second string, clearance piece.Figure, axis piece.Axis) {
	space := m.Space.Address
	a, okA := j.of(space, first)
	b, okB := j.of(space, second)
	args := []message.Arg{message.Address("space", space), message.Word("first", "reading."+first), message.Word("second", "reading."+second)}
	switch {
	case !okA && !okB:
		return
	case okA != okB:
		missing := first
		if okA {
			missing = second
			b = a
		} else {
			a = b
		}
		j.out.Unknown(CodeOneEnd, message.New("check.reading.one-end", message.Address("space", space), message.Word("missing", "reading."+missing)), space.Keyed("reading", missing), m.Space.Where)
	case j.far(m, first, a, axis) || j.far(m, second, b, axis):
		// what is a slip says nothing of how even the opening is
	default:
		low, high := a, b
		if low.Nm > high.Nm {
			low, high = b, a
		}
		if off := j.Ledger.Less(string(space)+".uneven", high, low); off.Nm > clearance.Nm {
			j.add(m, CodeUneven, diag.Warning, message.New("check.reading.uneven", append(args, message.Length("is", off.Nm), message.Length("limit", clearance.Nm),
				message.Length("low", low.Nm), message.Length("high", high.Nm))...), off, clearance)
		}
	}
	j.out.Judged()
	least := j.Ledger.Least(string(space)+".least "+first, a, b)
	size := j.Ledger.Less(string(m.Group.Address)+"."+first, m.Extent[axis].High, m.Extent[axis].Low)
	most := j.Ledger.Less(string(space)+".most "+first, least, clearance)
	if size.Nm <= most.Nm {
		return
	}
	severity := diag.Warning
	if size.Nm > least.Nm {
		severity = diag.Error
	}
	j.add(m, CodeTooLarge, severity, message.New("check.reading.too-large", message.Address("group", m.Group.Address), message.Address("space", space),
		message.Length("is", size.Nm), message.Length("limit", most.Nm), message.Length("least", least.Nm), message.Length("clearance", clearance.Nm)), size, most)
}

// far judges whether a reading is anywhere near what is planned.
func (j *judge) far(m bodies.Move, what string, is piece.Figure, axis piece.Axis) bool {
	planned, ok := j.planned(m.Space, axis)
	if !ok {
		return false
	}
	off := j.Ledger.Less(string(m.Space.Address)+"."+what+" off plan", is, planned)
	if off.Nm < 0 {
		off = j.Ledger.Less(string(m.Space.Address)+"."+what+" off plan", planned, is)
	}
	limit := j.out.Limit("reading off plan", verdict.Practice("check.reading-off-plan", unit.MM(5)))
	if off.Nm <= limit.Nm {
		return false
	}
	j.add(m, CodeFar, diag.Warning, message.New("check.reading.far", message.Address("space", m.Space.Address), message.Word("reading", "reading."+what),
		message.Length("read", is.Nm), message.Length("planned", planned.Nm), message.Length("is", off.Nm), message.Length("limit", limit.Nm)), off, limit.Figure)
	return true
}

// inPlace judges whether what was read where a part goes is anywhere near what is drawn.
func (j *judge) inPlace(x piece.InPlace) {
	what := [2]string{"length", "width"}[x.Along]
	read, ok := j.of(x.Part, what)
	p := j.index.Part(x.Part)
	if !ok || p == nil {
		return
	}
	limit := j.out.Limit("reading off plan", verdict.Practice("check.reading-off-plan", unit.MM(5)))
	off := j.Ledger.Less(string(x.Part)+"."+what+" off plan", read, x.Drawn)
	if off.Nm < 0 {
		off = j.Ledger.Less(string(x.Part)+"."+what+" off plan", x.Drawn, read)
	}
	if off.Nm > limit.Nm {
		j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeFar, Address: x.Part, Where: p.Where, Is: &off, Limit: &limit.Figure, Source: practice,
			Text: message.New("check.reading.far", message.Address("space", x.Part), message.Word("reading", "reading."+what),
				message.Length("read", read.Nm), message.Length("planned", x.Drawn.Nm), message.Length("is", off.Nm), message.Length("limit", limit.Nm))}, x.Part)
	}
}

// planned is how far apart the parts that bound a space stand as planned; false where
// not both bounds are faces of parts.
func (j *judge) planned(s *piece.Space, axis piece.Axis) (piece.Figure, bool) {
	low, okLow := j.face(s.Bounds[2*axis], axis)
	high, okHigh := j.face(s.Bounds[2*axis+1], axis)
	if !okLow || !okHigh || high.Nm <= low.Nm {
		return piece.Figure{}, false
	}
	return j.Ledger.Less(string(s.Address)+".planned", high, low), true
}

// face is where a face of an upright part lies along an axis.
func (j *judge) face(bound string, axis piece.Axis) (piece.Figure, bool) {
	a := address.Address(bound)
	p := j.index.Part(a.Parent())
	if p == nil || p.Tilt != nil {
		return piece.Figure{}, false
	}
	switch a.Last().Name {
	case "right", "back", "top":
		return p.Extent[axis].High, true
	case "left", "front", "bottom":
		return p.Extent[axis].Low, true
	}
	return piece.Figure{}, false
}

// square judges the diagonals, where their difference was recorded.
func (j *judge) square(m bodies.Move) {
	off, ok := j.of(m.Space.Address, "diagonals")
	limit := j.out.Limit("square", verdict.Practice("check.reading", max(m.Fit.Sides.Nm, unit.Millimetre/2)))
	if ok {
		j.out.Judged()
	}
	if !ok || off.Nm.Abs() <= limit.Nm {
		return
	}
	j.add(m, CodeSquare, diag.Warning, message.New("check.reading.square", message.Address("space", m.Space.Address), message.Length("is", off.Nm.Abs()), message.Length("limit", limit.Nm)), off, limit.Figure)
}

func (j *judge) add(m bodies.Move, code diag.Code, severity diag.Severity, text message.Message, is, limit piece.Figure) {
	x := plan.Finding{Status: plan.Fail, Severity: severity, Code: code, Text: text, Address: m.Space.Address, Where: m.Space.Where, Is: &is, Limit: &limit, Source: practice}
	if f := m.Fronts(); len(f) > 0 {
		j.out.Add(x, f[0].Address)
		return
	}
	j.out.Add(x)
}
