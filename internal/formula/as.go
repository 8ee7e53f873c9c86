package formula

import (
	"errors"
	"strings"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Length returns the value as a length with its line in the ledger: a bare
// number counts in the document's unit, a text is read. Anything else is
// reported.
func (m *Maker) Length(v Value, name string) (Value, bool) {
	switch {
	case !v.OK():
		return v, false
	case v.Kind == Text:
		return m.readLength(v, name)
	case v.Kind == Quantity && v.Is.Dim() == unit.DimLength:
		if l, ok := v.Is.Length(); !ok || l.Abs() > unit.MaxLength {
			m.fault(CodeTooLarge, v.Where)
			return Value{}, false
		}
		return m.named(v, name), true
	case v.Kind == Quantity && v.Loose && v.Is.Dim() == unit.DimCount:
		return m.Length(m.times(v, ""), name)
	case v.Kind == Quantity && v.Is.Dim() == unit.DimUntyped:
		to, err := v.Is.As(unit.DimLength, m.Bare)
		if l, ok := to.Length(); err != nil || !ok || l.Abs() > unit.MaxLength {
			m.fault(CodeTooLarge, v.Where)
			return Value{}, false
		}
		if v.Entry == 0 {
			v.Is = to
			return m.entered(v, name), true
		}
		return m.named(m.converted(v, to), name), true
	}
	m.wants(v, "kind.length")
	return Value{}, false
}

// readLength reads a text that stands where a length should.
func (m *Maker) readLength(v Value, name string) (Value, bool) {
	l, err := unit.Parse(v.Is.Text(), m.Bare)
	if err != nil {
		m.badLength(v, err)
		return Value{}, false
	}
	out := Value{Kind: Quantity, Is: unit.OfLength(l), Where: v.Where}
	return m.entered(out, name), true
}

func (m *Maker) badLength(v Value, err error) {
	d := diag.Diagnostic{Severity: diag.Error, Code: CodeNotALength, Where: v.Where,
		Text: message.New("diagnostic."+string(CodeNotALength), message.Text("text", clip(v.Is.Text())))}
	var parse *unit.ParseError
	if errors.As(err, &parse) {
		d.Text.Args = append(d.Text.Args, message.Word("why", "length-fault."+string(parse.Fault)), message.Text("word", clip(parse.Word)))
	}
	m.Report(d)
}

// Number returns the value as a quantity of a dimension other than length, or
// reports that it is none.
func (m *Maker) Number(v Value, dim unit.Dim, name string) (Value, bool) {
	if !v.OK() {
		return v, false
	}
	if v.Kind == Quantity {
		if v.Is.Dim() == dim {
			return m.named(v, name), true
		}
		if to, err := v.Is.As(dim, 0); err == nil && (v.Is.Dim() == unit.DimUntyped || v.Is.Dim() == unit.DimRatio || v.Is.Dim() == unit.DimCount) {
			if v.Entry == 0 {
				v.Is = to
				return m.entered(v, name), true
			}
			return m.as(v, dim, name), true
		}
	}
	m.wants(v, "kind."+string(dim))
	return Value{}, false
}

// Count returns the value as a whole number from least to most, or reports that
// it is not one.
func (m *Maker) Count(v Value, least, most int, name string) (int, Value, bool) {
	if d := v.Is.Dim(); v.Kind == Quantity && number(d) {
		if _, err := v.Is.As(unit.DimCount, 0); err != nil {
			return 0, m.fault(CodeCountRange, v.Where, message.Text("got", v.Is.Number().RatString()), message.Count("least", least), message.Count("most", most)), false
		}
	}
	c, ok := m.Number(v, unit.DimCount, name)
	if !ok {
		return 0, c, false
	}
	n, whole := c.Is.Int()
	if !whole || n < int64(least) || n > int64(most) {
		m.fault(CodeCountRange, v.Where, message.Text("got", c.Is.Number().RatString()), message.Count("least", least), message.Count("most", most))
		return 0, Value{}, false
	}
	return int(n), c, true
}

// Words returns a text value's words, or reports that it is no text.
func (m *Maker) Words(v Value) (string, bool) {
	if v.Kind == Text || !v.OK() {
		return v.Is.Text(), v.Kind == Text
	}
	m.wants(v, "kind.text")
	return "", false
}

// text puts a text together; formulas in it are written as a reader would.
func (m *Maker) text(x *document.Text, s Scope) Value {
	var b strings.Builder
	for _, p := range x.Parts {
		if p.Formula == nil {
			b.WriteString(p.Words)
			continue
		}
		v := m.Eval(p.Formula, s, "")
		if !v.OK() {
			return v
		}
		words, ok := m.written(v)
		if !ok {
			m.wants(v, "kind.text")
			return Value{}
		}
		b.WriteString(words)
		if b.Len() > maxText {
			return m.fault(CodeTooLarge, x.Place())
		}
	}
	return Value{Kind: Text, Is: unit.OfText(b.String()), Where: x.Place()}
}

const maxText = 4096

// written puts a value into the words of a text.
func (m *Maker) written(v Value) (string, bool) {
	switch v.Kind {
	case Text:
		return v.Is.Text(), true
	case Quantity:
		if l, ok := v.Is.Length(); ok {
			return m.Show.Format(l), true
		}
		n := v.Is.Number()
		if n == nil {
			return "", false
		}
		if n.IsInt() {
			return n.Num().String(), true
		}
		return strings.TrimRight(strings.TrimRight(n.FloatString(4), "0"), "."), true
	}
	return "", false
}

func clip(s string) string {
	if len(s) > 80 {
		return strings.ToValidUTF8(s[:80], "")
	}
	return s
}
