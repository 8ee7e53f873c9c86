package formula

import (
	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Scope knows what names mean where a formula stands. It reports what it cannot
// resolve and returns nothing then.
type Scope interface {
	// Name resolves a dotted name.
	Name(n *document.Name) Value
	// Pick takes members of a value that no name leads to.
	Pick(v Value, steps []document.Step) Value
	// Call runs a function that needs to know the shop or the contents; known is
	// false for a name that is none of those.
	Call(c *document.Call, args []Value, name string) (v Value, known bool)
}

// Maker works out formulas into one ledger.
type Maker struct {
	Ledger *ledger.Ledger
	// Bare is the unit of a bare number beside a length.
	Bare unit.Length
	// Show says how lengths are written into texts.
	Show unit.Show
	// Report takes diagnostics.
	Report func(diag.Diagnostic)
	// Steps counts formulas worked out; beyond Most nothing more is.
	Steps, Most *int
}

// With returns the maker for a document with another unit.
func (m *Maker) With(bare unit.Length) *Maker {
	out := *m
	out.Bare = bare
	return &out
}

// Eval works a formula out. Its entry in the ledger gets the name, if there is
// one.
func (m *Maker) Eval(x document.Expr, s Scope, name string) Value {
	if *m.Steps >= *m.Most {
		if *m.Steps == *m.Most {
			*m.Steps++
			m.fault(CodeTooMuch, x.Place(), message.Count("most", *m.Most))
		}
		return Value{}
	}
	*m.Steps++
	v := m.eval(x, s, name)
	v.Where = x.Place()
	return v
}

func (m *Maker) eval(x document.Expr, s Scope, name string) Value {
	switch x := x.(type) {
	case *document.Number:
		v := Value{Kind: Quantity, Is: unit.Of(unit.DimUntyped, x.Value), Where: x.Place()}
		return m.named(v, name)
	case *document.Truth:
		return m.entered(Value{Kind: Truth, Is: unit.OfTruth(x.Yes), Where: x.Place()}, name)
	case *document.Text:
		return m.text(x, s)
	case *document.Name:
		return m.named(s.Name(x), name)
	case *document.Pick:
		return m.named(s.Pick(m.Eval(x.From, s, ""), x.Steps), name)
	case *document.List:
		return m.list(x, s, name)
	case *document.Object:
		return m.object(x, s, name)
	case *document.Unary:
		return m.unary(x, s, name)
	case *document.Binary:
		return m.binary(x, s, name)
	case *document.Choose:
		return m.choose(x, s, name)
	case *document.Call:
		return m.call(x, s, name)
	}
	return Value{} // Bad: reported when it was read
}

// named gives a value that is only passed on its own line under a new name.
func (m *Maker) named(v Value, name string) Value {
	if name == "" || !v.OK() || v.Kind == Object || v.Kind == Reference || v.Kind == Text {
		return v
	}
	if v.Entry == 0 {
		return m.entered(v, name)
	}
	return m.make(v, name, v.Where, ledger.OpSame, "", v)
}

// entered makes sure that a literal has its line in the ledger.
func (m *Maker) entered(v Value, name string) Value {
	if v.Entry == 0 && !v.Is.IsZero() {
		v.Entry = m.Ledger.Given(ledger.Entry{Name: name, Value: v.Is, Origin: ledger.Document, Where: v.Where})
	}
	return v
}

// make enters the result of an operation; like gives it its kind and position.
func (m *Maker) make(like Value, name string, where diag.Place, op ledger.Op, fn string, args ...Value) Value {
	ids := make([]ledger.ID, len(args))
	for i, a := range args {
		ids[i] = m.entered(a, "").Entry
	}
	return m.makeFrom(like, name, where, op, fn, ids...)
}

func (m *Maker) makeFrom(like Value, name string, where diag.Place, op ledger.Op, fn string, ids ...ledger.ID) Value {
	id, err := m.Ledger.Make(name, op, fn, ids...)
	if err != nil {
		m.fault(CodeSum, where, message.Text("why", err.Error()))
		return Value{}
	}
	like.Entry = m.Ledger.At(id, where)
	like.Is = m.Ledger.Value(like.Entry)
	like.Where = where
	return like
}

func (m *Maker) fault(code diag.Code, where diag.Place, args ...message.Arg) Value {
	m.Report(diag.Diagnostic{Severity: diag.Error, Code: code, Where: where, Text: message.New("diagnostic."+string(code), args...)})
	return Value{}
}

// choose works out only the branch that is taken; the ledger keeps the reason.
func (m *Maker) choose(x *document.Choose, s Scope, name string) Value {
	yes, ok := m.Truth(m.Eval(x.If, s, ""))
	if !ok {
		return Value{}
	}
	branch := x.Else
	if yes.Is.Truth() {
		branch = x.Then
	}
	v := m.Eval(branch, s, "")
	if v.Kind != Quantity && v.Kind != Truth {
		return v
	}
	return m.make(v, name, x.Place(), ledger.OpCall, "chosen", yes, v)
}

func (m *Maker) list(x *document.List, s Scope, name string) Value {
	out := Value{Kind: List, Where: x.Place(), Items: make([]Value, 0, len(x.Items))}
	for _, item := range x.Items {
		v := m.Eval(item, s, "")
		if !v.OK() {
			return Value{}
		}
		out.Items = append(out.Items, v)
	}
	return m.Listed(out, name)
}

// Listed enters a list whose items all have lines, or can have them, in the
// ledger; other lists are left as they are.
func (m *Maker) Listed(list Value, name string) Value {
	ids := make([]ledger.ID, len(list.Items))
	for i, item := range list.Items {
		if item.Kind == Reference && item.Entry == 0 || item.Kind == Object || item.Kind == List && item.Entry == 0 {
			return list
		}
		list.Items[i] = m.entered(item, "")
		ids[i] = list.Items[i].Entry
		if ids[i] == 0 {
			return list
		}
	}
	return m.makeFrom(list, name, list.Where, ledger.OpCall, "list", ids...)
}

func (m *Maker) object(x *document.Object, s Scope, name string) Value {
	out := Value{Kind: Object, Where: x.Place()}
	for _, f := range x.Fields {
		inner := name
		if name != "" {
			inner += "." + f.Name
		}
		v := m.Eval(f.Value, s, inner)
		if !v.OK() {
			return Value{}
		}
		out.Fields = append(out.Fields, Field{f.Name, v})
	}
	return out
}
