package sums

import (
	"strings"

	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// term is a piece of a sum and how strongly it holds together.
type term struct {
	text  string
	binds int
}

// How strongly signs bind.
const (
	loose   = iota // words, comparisons
	adding         // + and −
	scaling        // × and ÷
	whole          // a name, a figure, a call
)

// expression writes one sum and collects the named figures in it.
type expression struct {
	*teller
	parts []ledger.Entry
	deep  int
}

// maxDeep is how far unnamed results nest in one sum, maxItems how many terms of
// one operation are written.
const maxDeep, maxItems = 12, 12

// signs between the terms of operations and of comparing functions.
var signs = map[ledger.Op]struct {
	sign        string
	binds, rest int
}{
	ledger.OpAdd: {" + ", adding, adding},
	ledger.OpSub: {" − ", adding, scaling},
	ledger.OpMul: {" × ", scaling, scaling},
	ledger.OpDiv: {" ÷ ", scaling, whole},
}

var comparisons = map[string]string{
	"equal": " = ", "not_equal": " ≠ ", "less": " < ", "less_or_equal": " ≤ ", "greater": " > ", "greater_or_equal": " ≥ ",
}

// of writes the operation of an entry.
func (x *expression) of(e ledger.Entry) term {
	x.deep++
	defer func() { x.deep-- }()
	if x.deep > maxDeep {
		return term{"…", whole}
	}
	args := e.Args
	if e.Op == ledger.OpSub && len(args) == 2 {
		to, from := x.apart(args[0], args[1])
		args = []ledger.ID{to, from}
	}
	if s, ok := signs[e.Op]; ok {
		return term{x.joined(args, s.sign, s.binds, s.rest), s.binds}
	}
	switch e.Op {
	case ledger.OpNeg:
		return term{"−" + x.operand(e.Args[0], scaling), scaling}
	case ledger.OpCall:
		return x.call(e)
	case ledger.OpSame, ledger.OpAs:
		return x.term(e.Args[0])
	}
	return x.worded(e)
}

// worded writes the operations that have no sign.
func (x *expression) worded(e ledger.Entry) term {
	arg := func(i int) message.Arg {
		return message.Text(string(rune('a'+i)), x.operand(e.Args[i], loose))
	}
	say := func(s string) term { return term{s, loose} }
	switch {
	case e.Op == ledger.OpMin:
		return term{x.words.Label("sums.least", message.Text("list", x.joined(e.Args, ", ", loose, loose))), whole}
	case e.Op == ledger.OpMax:
		return term{x.words.Label("sums.greatest", message.Text("list", x.joined(e.Args, ", ", loose, loose))), whole}
	case e.Op == ledger.OpRound && e.Func == "up":
		return say(x.words.Label("sums.round-up", arg(0), arg(1)))
	case e.Op == ledger.OpRound && e.Func == "down":
		return say(x.words.Label("sums.round-down", arg(0), arg(1)))
	case e.Op == ledger.OpRound:
		return say(x.words.Label("sums.round", arg(0), arg(1)))
	case e.Op == ledger.OpShare:
		return say(x.words.Label("sums.share", arg(0), arg(1), arg(2)))
	case e.Op == ledger.OpItem:
		return say(x.words.Label("sums.item", arg(0), arg(1)))
	}
	return term{string(e.Op) + "(" + x.joined(e.Args, ", ", loose, loose) + ")", whole}
}

// call writes a function of the language, in words or signs where it has any.
func (x *expression) call(e ledger.Entry) term {
	sign, compares := comparisons[e.Func]
	switch {
	case e.Func == "list":
		return term{x.value(e.Value, false), whole}
	case e.Func == "chosen" && len(e.Args) == 2:
		value := x.operand(e.Args[1], adding)
		key := "sums.as"
		if test, ok := x.ledger.Entry(e.Args[0]); ok && !test.Value.Truth() {
			key = "sums.as-not"
		}
		return term{x.words.Label(key, message.Text("value", value), message.Text("test", x.operand(e.Args[0], loose))), loose}
	case compares && len(e.Args) == 2:
		return term{x.joined(e.Args, sign, adding, adding), loose}
	}
	return term{e.Func + "(" + x.joined(e.Args, ", ", loose, loose) + ")", whole}
}

// joined writes terms with a sign between them; first and rest say how strongly a
// term must hold together to stand without brackets.
func (x *expression) joined(args []ledger.ID, sign string, first, rest int) string {
	var b strings.Builder
	for i, a := range args {
		if i == maxItems {
			b.WriteString(sign + "…")
			break
		}
		if i > 0 {
			b.WriteString(sign)
			first = rest
		}
		b.WriteString(x.operand(a, first))
	}
	return b.String()
}

// operand writes one term, in brackets where it would fall apart.
func (x *expression) operand(id ledger.ID, least int) string {
	t := x.term(id)
	if t.binds < least {
		return "(" + t.text + ")"
	}
	return t.text
}

// term writes a named figure as its name and value, a literal as its value, and
// an unnamed result as its own sum.
func (x *expression) term(id ledger.ID) term {
	outer, ok := x.ledger.Entry(id)
	if !ok {
		return term{"?", whole}
	}
	e := outer
	for e.Name == "" {
		next, ok := x.same(e)
		if !ok {
			break
		}
		e = next
	}
	value := x.value(outer.Value, false)
	switch {
	case e.Name == "nth":
		return term{e.Name + " " + value, whole}
	case e.Name == "unit":
		return term{value, whole}
	case e.Name != "" && e.Value.Dim() == unit.DimList:
		x.add(e)
		return term{e.Name, whole}
	case e.Name != "":
		x.add(e)
		return term{e.Name + " " + value, whole}
	case len(e.Args) == 0:
		return term{value, whole}
	}
	return x.of(e)
}

// add puts a figure on the list of those to be told, once.
func (x *expression) add(e ledger.Entry) {
	for _, p := range x.parts {
		if p.ID == e.ID {
			return
		}
	}
	x.parts = append(x.parts, e)
}
