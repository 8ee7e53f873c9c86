package formula

import (
	"errors"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/unit"
)

func (m *Maker) unary(x *document.Unary, s Scope, name string) Value {
	v := m.Eval(x.X, s, "")
	if !v.OK() {
		return v
	}
	if x.Sign == "not" {
		t, ok := m.Truth(v)
		if !ok {
			return Value{}
		}
		return m.make(t, name, x.Place(), ledger.OpCall, "not", t)
	}
	v, ok := m.textAsQuantity(v)
	if !ok {
		return Value{}
	}
	if v.Kind != Quantity {
		return m.fault(CodeKinds, x.Place(), message.Text("sign", "-"), message.Word("left", v.Word()), message.Word("right", v.Word()))
	}
	return m.make(v.plainly(), name, x.Place(), ledger.OpNeg, "", v)
}

func (m *Maker) binary(x *document.Binary, s Scope, name string) Value {
	if x.Sign == "and" || x.Sign == "or" {
		return m.junction(x, s, name)
	}
	a, b := m.Eval(x.X, s, ""), m.Eval(x.Y, s, "")
	if !a.OK() || !b.OK() {
		return Value{}
	}
	switch x.Sign {
	case "+", "-":
		return m.sum(x, a, b, name)
	case "*", "/":
		return m.product(x, a, b, name)
	}
	return m.comparison(x, a, b, name)
}

// junction works the second side out only where it matters.
func (m *Maker) junction(x *document.Binary, s Scope, name string) Value {
	a, ok := m.Truth(m.Eval(x.X, s, ""))
	if !ok {
		return Value{}
	}
	if a.Is.Truth() == (x.Sign == "or") {
		return m.named(a, name)
	}
	b, ok := m.Truth(m.Eval(x.Y, s, ""))
	if !ok {
		return Value{}
	}
	return m.make(b, name, x.Place(), ledger.OpCall, x.Sign, a, b)
}

// sum adds or subtracts two quantities of one dimension.
func (m *Maker) sum(x *document.Binary, a, b Value, name string) Value {
	bareA, bareB := isBare(a), isBare(b)
	a, b, ok := m.beside(x, a, b)
	if !ok {
		return Value{}
	}
	op := ledger.OpAdd
	if x.Sign == "-" {
		op = ledger.OpSub
	}
	like := Value{Kind: Quantity, Loose: a.Loose && (b.Loose || bareB) || b.Loose && bareA}
	switch {
	case a.Position != nil && b.Position == nil:
		like.Position = &Position{Axis: a.Position.Axis, Frame: a.Position.Frame}
	case a.Position == nil && b.Position != nil && op == ledger.OpAdd:
		like.Position = &Position{Axis: b.Position.Axis, Frame: b.Position.Frame}
	}
	return m.make(like, name, x.Place(), op, "", a, b)
}

// beside brings two quantities to one dimension, or reports that they have none
// in common.
func (m *Maker) beside(x *document.Binary, a, b Value) (Value, Value, bool) {
	a, b, ok := m.matched(a, b)
	if !ok {
		return Value{}, Value{}, false
	}
	if a.Kind != Quantity || b.Kind != Quantity || a.Is.Dim() != b.Is.Dim() {
		m.fault(CodeKinds, x.Place(), message.Text("sign", x.Sign), message.Word("left", a.Word()), message.Word("right", b.Word()))
		return Value{}, Value{}, false
	}
	return a, b, true
}

// matched gives a bare number or a text the dimension of what it stands beside.
// Where that is impossible the values come back as they were.
func (m *Maker) matched(a, b Value) (Value, Value, bool) {
	text := a.Kind == Text || b.Kind == Text
	for _, v := range []Value{a, b} {
		if v.Kind != Text && v.Kind != Quantity {
			return a, b, true
		}
	}
	if text { // a text beside a quantity is a length or an angle, and so is the bare number beside it
		var okA, okB bool
		a, okA = m.textAsQuantity(a)
		b, okB = m.textAsQuantity(b)
		if !okA || !okB {
			return a, b, false
		}
	}
	a, b = m.like(a, b), m.like(b, a)
	if da, db := a.Is.Dim(), b.Is.Dim(); da != db && number(da) && number(db) {
		var okA, okB bool
		a, okA = m.Number(a, unit.DimRatio, "")
		b, okB = m.Number(b, unit.DimRatio, "")
		return a, b, okA && okB
	}
	return a, b, true
}

// textAsQuantity reads a text in a sum: an angle if it is one, else a length.
func (m *Maker) textAsQuantity(v Value) (Value, bool) {
	if v.Kind != Text {
		return v, true
	}
	if is, err := unit.ParseValue(v.Is.Text(), 0); err == nil && is.Dim() == unit.DimAngle {
		return m.entered(Value{Kind: Quantity, Is: is, Where: v.Where}, ""), true
	}
	return m.Length(v, "")
}

// like gives an untyped number the dimension of its neighbour.
func (m *Maker) like(v, beside Value) Value {
	if v.Loose && beside.Is.Dim() == unit.DimLength {
		return m.times(v, "")
	}
	if v.Is.Dim() != unit.DimUntyped || beside.Is.Dim() == unit.DimUntyped {
		return v
	}
	if to, err := v.Is.As(beside.Is.Dim(), m.Bare); err == nil {
		return m.converted(v, to)
	}
	return v
}

// number reports a dimension that counts or compares without a unit.
func number(d unit.Dim) bool {
	return d == unit.DimUntyped || d == unit.DimCount || d == unit.DimRatio
}

// converted enters an untyped number as a quantity: a literal directly, a
// computed one as so many of its unit.
func (m *Maker) converted(v Value, to unit.Value) Value {
	if v.Entry == 0 {
		v.Is = to
		return m.entered(v, "")
	}
	return m.as(v, to.Dim(), "")
}

// times enters a count as so many of the document's unit.
func (m *Maker) times(v Value, name string) Value {
	of := m.Ledger.Given(ledger.Entry{Name: "unit", Value: unit.OfLength(m.Bare), Origin: ledger.Document})
	return m.makeFrom(Value{Kind: Quantity}, name, v.Where, ledger.OpMul, "", v.Entry, of)
}

// as enters a quantity as one of another dimension.
func (m *Maker) as(v Value, dim unit.Dim, name string) Value {
	ids := []ledger.ID{v.Entry}
	if dim == unit.DimLength {
		ids = append(ids, m.Ledger.Given(ledger.Entry{Name: "unit", Value: unit.OfLength(m.Bare), Origin: ledger.Document}))
	}
	return m.makeFrom(Value{Kind: Quantity}, name, v.Where, ledger.OpAs, string(dim), ids...)
}

func (m *Maker) product(x *document.Binary, a, b Value, name string) Value {
	for _, v := range []*Value{&a, &b} {
		read, ok := m.textAsQuantity(*v)
		if !ok {
			return Value{}
		}
		*v = read
	}
	if a.Kind != Quantity || b.Kind != Quantity {
		return m.fault(CodeKinds, x.Place(), message.Text("sign", x.Sign), message.Word("left", a.Word()), message.Word("right", b.Word()))
	}
	op, tried := ledger.OpMul, unit.Value.Mul
	if x.Sign == "/" {
		op, tried = ledger.OpDiv, unit.Value.Div
	}
	if _, err := tried(a.Is, b.Is, 0); err != nil {
		return m.sumFault(x, err, a, b)
	}
	loose := op == ledger.OpMul && (isCount(a) && isBare(b) || isBare(a) && isCount(b))
	return m.make(Value{Kind: Quantity, Loose: loose}, name, x.Place(), op, "", a, b)
}

func isCount(v Value) bool { return v.Is.Dim() == unit.DimCount }

func isBare(v Value) bool { return v.Is.Dim() == unit.DimUntyped }

// sumFault turns what the arithmetic refuses into a diagnostic.
func (m *Maker) sumFault(x *document.Binary, err error, a, b Value) Value {
	var op *unit.OpError
	if errors.As(err, &op) {
		switch op.Fault {
		case unit.FaultByNought:
			return m.fault(CodeByNought, x.Place())
		case unit.FaultTooLarge:
			return m.fault(CodeTooLarge, x.Place())
		}
	}
	return m.fault(CodeKinds, x.Place(), message.Text("sign", x.Sign), message.Word("left", a.Word()), message.Word("right", b.Word()))
}

var comparisons = map[string]string{
	"==": "equal", "!=": "not_equal", "<": "less", "<=": "less_or_equal", ">": "greater", ">=": "greater_or_equal",
}

func (m *Maker) comparison(x *document.Binary, a, b Value, name string) Value {
	same := x.Sign == "==" || x.Sign == "!="
	like := Value{Kind: Truth}
	if same && a.Kind == b.Kind && (a.Kind == Text || a.Kind == Truth) {
		return m.make(like, name, x.Place(), ledger.OpCall, comparisons[x.Sign], a, b)
	}
	a, b, ok := m.beside(x, a, b)
	if !ok {
		return Value{}
	}
	return m.make(like, name, x.Place(), ledger.OpCall, comparisons[x.Sign], a, b)
}

// Truth returns the value as yes or no, or reports that it is neither.
func (m *Maker) Truth(v Value) (Value, bool) {
	if v.Kind == Truth || !v.OK() {
		return v, v.Kind == Truth
	}
	m.wants(v, "kind.truth")
	return Value{}, false
}

func (m *Maker) wants(v Value, kind string) {
	m.Report(diag.Diagnostic{Severity: diag.Error, Code: CodeWrongKind, Where: v.Where,
		Text: message.New("diagnostic."+string(CodeWrongKind), message.Word("got", v.Word()), message.Word("want", kind))})
}
