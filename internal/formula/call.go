package formula

import (
	"maps"
	"slices"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// builtin is a function that a document may call: how many arguments it takes
// and how it is worked out.
type builtin struct {
	least, most int
	run         func(m *Maker, c *document.Call, args []Value, name string) Value
}

const many = 1 << 10

var builtins = map[string]builtin{
	"min":        {1, many, func(m *Maker, c *document.Call, a []Value, n string) Value { return m.fold(c, a, n, ledger.OpMin) }},
	"max":        {1, many, func(m *Maker, c *document.Call, a []Value, n string) Value { return m.fold(c, a, n, ledger.OpMax) }},
	"sum":        {1, many, func(m *Maker, c *document.Call, a []Value, n string) Value { return m.fold(c, a, n, ledger.OpAdd) }},
	"abs":        {1, 1, simple("abs", Quantity)},
	"floor":      {1, 1, simple("floor", Quantity)},
	"ceil":       {1, 1, simple("ceil", Quantity)},
	"odd":        {1, 1, simple("odd", Truth)},
	"even":       {1, 1, simple("even", Truth)},
	"round":      {1, 2, rounding("nearest")},
	"round_up":   {1, 2, rounding("up")},
	"round_down": {1, 2, rounding("down")},
	"sin":        {1, 1, turning("sin")},
	"cos":        {1, 1, turning("cos")},
	"tan":        {1, 1, turning("tan")},
	"count":      {1, 1, count},
	"slice":      {3, 3, slice},
}

// world names the functions that scopes answer, with what they take.
var world = map[string]builtin{
	"share":      {least: 2, most: 2},
	"season":     {least: 3, most: 3},
	"season_dry": {least: 3, most: 3},
	"loose":      {least: 2, most: 2},
	"spread":     {least: 2, most: 2},
	"mouth":      {least: 2, most: 2},
	"sinks":      {least: 3, most: 4},
	"swing":      {least: 2, most: 2},
}

// Names returns the names of all functions, sorted.
func Names() []string {
	return slices.Sorted(maps.Keys(merged()))
}

func merged() map[string]builtin {
	all := maps.Clone(builtins)
	maps.Copy(all, world)
	return all
}

func (m *Maker) call(x *document.Call, s Scope, name string) Value {
	f, ok := builtins[x.Func]
	if !ok {
		f, ok = world[x.Func]
	}
	if !ok {
		m.unknownFunction(x)
		return Value{}
	}
	if n := len(x.Args); n < f.least || n > f.most {
		return m.fault(CodeArguments, x.Place(), message.Text("function", x.Func), message.Count("got", n), message.Count("least", f.least), message.Count("most", f.most))
	}
	args := make([]Value, len(x.Args))
	good := true
	for i, a := range x.Args {
		args[i] = m.Eval(a, s, "")
		good = good && args[i].OK()
	}
	if !good {
		return Value{}
	}
	if f.run != nil {
		return f.run(m, x, args, name)
	}
	v, _ := s.Call(x, args, name)
	return v
}

func (m *Maker) unknownFunction(x *document.Call) {
	d := diag.Diagnostic{Severity: diag.Error, Code: CodeUnknownFunction, Where: x.Place(),
		Text: message.New("diagnostic."+string(CodeUnknownFunction), message.Text("function", x.Func))}
	if near := document.Nearest(x.Func, Names()); near != "" {
		at := x.Place()
		at.End = at.Start + len(x.Func)
		d.Remedies = []diag.Remedy{{
			Text:  message.New("remedy.write-instead", message.Text("old", x.Func), message.Text("new", near)),
			Edits: []diag.Edit{{File: at.File, Start: at.Start, End: at.End, Old: x.Func, New: near}},
		}}
	}
	m.Report(d)
}

// simple runs a function of the ledger on one quantity.
func simple(fn string, gives Kind) func(*Maker, *document.Call, []Value, string) Value {
	return func(m *Maker, c *document.Call, a []Value, name string) Value {
		if a[0].Kind != Quantity {
			m.wants(a[0], "kind.number")
			return Value{}
		}
		if _, err := ours[fn]([]unit.Value{a[0].Is}); err != nil {
			m.wants(a[0], "kind.number")
			return Value{}
		}
		return m.make(Value{Kind: gives}, name, c.Place(), ledger.OpCall, fn, a[0])
	}
}

// rounding rounds a length to a step, or a plain number to a whole one.
func rounding(side string) func(*Maker, *document.Call, []Value, string) Value {
	return func(m *Maker, c *document.Call, a []Value, name string) Value {
		if len(a) == 1 {
			fn := map[string]string{"nearest": "whole", "up": "ceil", "down": "floor"}[side]
			return simple(fn, Quantity)(m, c, a, name)
		}
		v, step, ok := m.matched(a[0], a[1])
		if !ok {
			return Value{}
		}
		if v.Kind != Quantity || step.Kind != Quantity || v.Is.Dim() != step.Is.Dim() {
			return m.fault(CodeKinds, c.Place(), message.Text("sign", c.Func), message.Word("left", v.Word()), message.Word("right", step.Word()))
		}
		if step.Is.Sign() <= 0 {
			return m.fault(CodeByNought, c.Place())
		}
		return m.make(Value{Kind: Quantity}, name, c.Place(), ledger.OpRound, side, v, step)
	}
}

// fold runs min, max and sum over its arguments, or over one list.
func (m *Maker) fold(c *document.Call, args []Value, name string, op ledger.Op) Value {
	if len(args) == 1 && args[0].Kind == List {
		args = args[0].Items
	}
	if len(args) == 0 {
		return m.fault(CodeArguments, c.Place(), message.Text("function", c.Func), message.Count("got", 0), message.Count("least", 1), message.Count("most", many))
	}
	args = slices.Clone(args)
	for range 2 { // the second round brings the early ones to what a later one showed
		for i := 1; i < len(args); i++ {
			var ok bool
			if args[i-1], args[i], ok = m.matched(args[i-1], args[i]); !ok {
				return Value{}
			}
		}
		slices.Reverse(args)
	}
	for _, a := range args[1:] {
		if a.Kind != Quantity || args[0].Kind != Quantity || a.Is.Dim() != args[0].Is.Dim() {
			return m.fault(CodeKinds, c.Place(), message.Text("sign", c.Func), message.Word("left", args[0].Word()), message.Word("right", a.Word()))
		}
	}
	if args[0].Kind != Quantity {
		m.wants(args[0], "kind.number")
		return Value{}
	}
	like := Value{Kind: Quantity}
	if p := args[0].Position; p != nil && op != ledger.OpAdd {
		like.Position = &Position{Axis: p.Axis, Frame: p.Frame}
	}
	return m.make(like, name, c.Place(), op, "", args...)
}

func count(m *Maker, c *document.Call, a []Value, name string) Value {
	if a[0].Kind != List {
		m.wants(a[0], "kind.list")
		return Value{}
	}
	if a[0].Entry == 0 {
		v := Value{Kind: Quantity, Is: unit.OfCount(len(a[0].Items)), Where: c.Place()}
		return m.entered(v, name)
	}
	return m.make(Value{Kind: Quantity}, name, c.Place(), ledger.OpCall, "count", a[0])
}

// slice takes items of a list from a number on, as many as asked for or as
// there are.
func slice(m *Maker, c *document.Call, a []Value, name string) Value {
	if a[0].Kind != List {
		m.wants(a[0], "kind.list")
		return Value{}
	}
	from, fromV, okF := m.Count(a[1], 1, maxIndex, "")
	n, nV, okN := m.Count(a[2], 0, maxIndex, "")
	if !okF || !okN {
		return Value{}
	}
	low, high := bounds(len(a[0].Items), int64(from), int64(n))
	out := Value{Kind: List, Items: a[0].Items[low:high], Where: c.Place(), Ref: a[0].Ref}
	if a[0].Entry == 0 {
		return out
	}
	return m.make(out, name, c.Place(), ledger.OpCall, "slice", a[0], fromV, nV)
}

const maxIndex = 1_000_000

// Pick takes a member of an object or an item of a list; other values are the
// scope's. The answer is false where it is neither.
func (m *Maker) Pick(v Value, step document.Step, s Scope) (Value, bool) {
	switch {
	case v.Kind == Object && step.Index == nil:
		f, ok := v.Field(step.Member)
		return f, ok
	case v.Kind == List && step.Index != nil:
		return m.item(v, step, s), true
	}
	return Value{}, false
}

func (m *Maker) item(list Value, step document.Step, s Scope) Value {
	at := m.Eval(step.Index, s, "")
	if !at.OK() {
		return at
	}
	c, ok := m.Number(at, unit.DimCount, "")
	if !ok {
		return Value{}
	}
	n, _ := c.Is.Int()
	if n < 1 || n > int64(len(list.Items)) {
		return m.fault(CodeIndex, step.Where, message.Text("got", c.Is.Number().RatString()), message.Count("most", len(list.Items)))
	}
	item := list.Items[n-1]
	if list.Entry == 0 || item.Entry == 0 {
		return item
	}
	return m.make(item, "", step.Where, ledger.OpItem, "", list, c)
}
