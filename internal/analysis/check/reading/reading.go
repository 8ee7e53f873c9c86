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
	j := judge{Context: c, out: verdict.Of("reading", c), read: readings(c.Ledger)}
	for _, m := range bodies.Of(c).Moves() {
		if m.Fit == nil || m.Space == nil {
			continue
		}
		j.pair(m, "width front", "width back", m.Fit.Sides, piece.Right)
		j.pair(m, "height left", "height right", m.Fit.Above, piece.Up)
		j.square(m)
	}
	return j.out.Done(CodeAgree, message.New("check.reading.agree")), nil
})

type judge struct {
	*analysis.Context
	out  *verdict.Findings
	read map[string]piece.Figure
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

// square judges the diagonals, where their difference was recorded.
func (j *judge) square(m bodies.Move) {
	off, ok := j.of(m.Space.Address, "diagonals")
	limit := j.out.Limit("square", verdict.Practice("check.reading", max(m.Fit.Sides.Nm, unit.Millimetre/2)))
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
