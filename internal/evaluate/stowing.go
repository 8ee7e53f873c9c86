package evaluate

import (
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// ofLengths runs a rule of the trade that takes lengths and gives one: mouth,
// sinks, swing. A lining that is not said is nought.
func (e env) ofLengths(c *document.Call, args []formula.Value, name string) formula.Value {
	w, m := e.s.w, e.s.maker
	ids := make([]ledger.ID, 0, 4)
	for _, a := range args {
		v, ok := m.Length(a, "")
		if !ok {
			return formula.Value{}
		}
		if l, _ := v.Is.Length(); l < 0 {
			w.fault(formula.CodeNotPositive, c.Place(), message.Text("name", c.Func), message.Length("got", l))
			return formula.Value{}
		}
		ids = append(ids, v.Entry)
	}
	if c.Func == "sinks" && len(ids) == 3 {
		ids = append(ids, w.ledger.Given(ledger.Entry{Value: unit.OfLength(0), Origin: ledger.Default}))
	}
	id, err := w.ledger.Make(name, ledger.OpCall, c.Func, ids...)
	if err != nil {
		m.Refused(err, c.Place())
		return formula.Value{}
	}
	id = w.ledger.At(id, c.Place())
	return formula.Value{Kind: formula.Quantity, Entry: id, Is: w.ledger.Value(id), Where: c.Place()}
}

// spread enlarges a list of sizes, all by the same, so that they fill a width.
func (e env) spread(c *document.Call, args []formula.Value, name string) formula.Value {
	w, m := e.s.w, e.s.maker
	if args[0].Kind != formula.List || len(args[0].Items) == 0 {
		w.fault(formula.CodeWrongKind, c.Args[0].Place(), message.Word("got", args[0].Word()), message.Word("want", "kind.list"))
		return formula.Value{}
	}
	width, ok := m.Length(args[1], "")
	if !ok {
		return formula.Value{}
	}
	list := formula.Value{Kind: formula.List, Where: c.Args[0].Place()}
	for _, item := range args[0].Items {
		v, ok := m.Length(item, "")
		if !ok {
			return formula.Value{}
		}
		list.Items = append(list.Items, v.At(nil))
	}
	if list = m.Listed(list, ""); list.Entry == 0 {
		return formula.Value{}
	}
	id, err := w.ledger.Make(name, ledger.OpCall, "spread", list.Entry, width.Entry)
	if err != nil {
		m.Refused(err, c.Place())
		return formula.Value{}
	}
	id = w.ledger.At(id, c.Place())
	out := formula.Value{Kind: formula.List, Entry: id, Is: w.ledger.Value(id), Where: c.Place()}
	for i := range list.Items {
		nth := w.ledger.Given(ledger.Entry{Value: unit.OfCount(i + 1), Origin: ledger.Derived})
		out.Items = append(out.Items, quantity(w.ledger.Figure(w.make("", ledger.OpItem, id, nth))))
	}
	return out
}
