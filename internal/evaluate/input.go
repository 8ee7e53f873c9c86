package evaluate

import (
	"cmp"
	"maps"
	"slices"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// input is one thing that may be set from outside a document.
type input struct {
	s *scope
	b *document.Block
	c cell[formula.Value]
	// origin says who gave the value in force.
	origin ledger.Origin
}

func (in *input) name() string { return in.b.Label() }

func (in *input) get() formula.Value {
	return get(in.s.w, &in.c, func() string { return "input." + in.name() }, in.b.Where, in.work)
}

// work takes the value from where it was given last: the use of the recipe, the
// user, the choices file, the document.
func (in *input) work() formula.Value {
	in.origin = ledger.Document
	name := string(in.s.addr.Child("input").Child(slug(in.name())))
	given := in.b.Given()
	if in.s.host != nil {
		if v, said := in.fromUse(name); said {
			return v
		}
	}
	if given == nil {
		if !in.b.Broken && !in.b.Unsure {
			in.s.w.fault(CodeInputKind, in.b.Where, message.Text("name", in.name()))
		}
		return formula.Value{}
	}
	if in.s.host == nil {
		if v, ok := in.override(given, name); ok {
			return in.checked(v, given, false)
		}
	}
	v := in.typed(given.Name, env{s: in.s}.value(in.b, given.Name, name), name)
	return in.checked(v, given, true)
}

// fromUse takes the value that the use of a recipe gives; said is false where it
// gives none.
func (in *input) fromUse(name string) (formula.Value, bool) {
	host := in.s.host
	a := in.s.use.Attribute(in.name())
	given := in.b.Given()
	kind := "text"
	if given != nil {
		kind = given.Name
	}
	if a == nil {
		if kind != "material" {
			return formula.Value{}, false
		}
		return in.hostMaterial(given)
	}
	v := host.maker.Eval(a.Value, env{s: host, nth: in.s.nth}, name)
	was := in.s.maker
	in.s.maker = host.maker // a bare number is in the unit of the document that it stands in
	v = in.typed(kind, v, name)
	in.s.maker = was
	return v, true
}

// hostMaterial is the material of the same role in the document that uses the
// recipe.
func (in *input) hostMaterial(given *document.Attribute) (formula.Value, bool) {
	t, ok := given.Value.(*document.Text)
	if !ok {
		return formula.Value{}, false
	}
	role, _ := t.Plain()
	if m := in.s.host.outermost().materials[role]; m != nil {
		return formula.Value{Kind: formula.Reference, Ref: m}, true
	}
	return formula.Value{}, true // reported with the use
}

// override takes what the user has set, or the choices file.
func (in *input) override(given *document.Attribute, name string) (formula.Value, bool) {
	w := in.s.w
	text, origin := "", ledger.Input
	if t, ok := w.src.Inputs[in.name()]; ok {
		text = t
	} else if t, ok := w.choices()[in.name()]; ok {
		text, origin = t, ledger.Choice
	} else {
		return formula.Value{}, false
	}
	in.origin = origin
	x, err := document.ParseFormula(text)
	if err != nil || !literal(x) {
		w.fault(CodeInputValue, given.Value.Place(), message.Text("name", in.name()), message.Text("text", clip(text)))
		return formula.Value{}, true
	}
	before := len(w.diags)
	v := in.s.maker.Eval(x, env{s: in.s}, "")
	v.Where = given.Value.Place()
	v = in.typed(given.Name, v, "")
	if !v.OK() && len(w.diags) == before {
		w.fault(CodeInputValue, given.Value.Place(), message.Text("name", in.name()), message.Text("text", clip(text)))
	}
	if v.OK() && !v.Is.IsZero() && given.Name != "material" {
		v.Entry = w.ledger.Given(ledger.Entry{Name: name, Value: v.Is, Origin: origin, Where: given.Value.Place()})
	}
	return v, true
}

// literal reports whether a formula is a number, a text or a truth, so that a
// value from outside cannot reach for names.
func literal(x document.Expr) bool {
	switch x := x.(type) {
	case *document.Number, *document.Truth:
		return true
	case *document.Text:
		_, ok := x.Plain()
		return ok
	case *document.Unary:
		_, ok := x.X.(*document.Number)
		return ok && x.Sign == "-"
	}
	return false
}

// typed holds the value against the input's kind.
func (in *input) typed(kind string, v formula.Value, name string) formula.Value {
	if !v.OK() {
		return v
	}
	m, ok := in.s.maker, true
	switch kind {
	case "count":
		_, v, ok = m.Count(v, 0, maxRepeat, name)
	case "length":
		v, ok = m.Length(v, name)
	case "angle":
		v, ok = m.Angle(v, name)
	case "number":
		v, ok = m.Number(v, unit.DimRatio, name)
	case "choice", "text":
		_, ok = m.Words(v)
	case "yes":
		v, ok = m.Truth(v)
	case "material":
		_, ok = v.Ref.(*material)
		if !ok {
			in.s.w.fault(formula.CodeWrongReference, v.Where, message.Word("want", "kind.material"), message.Word("got", v.Word()))
		}
	case "things":
		if c, isContents := v.Ref.(*contents); isContents && v.Kind == formula.Reference {
			if v = c.all(); !v.OK() {
				return v
			}
		}
		if ok = v.Kind == formula.List; !ok {
			in.s.w.fault(formula.CodeWrongKind, v.Where, message.Word("got", v.Word()), message.Word("want", "kind.list"))
		}
	case "head":
		v, ok = in.s.w.headOf(m, v, name)
	}
	if !ok {
		return formula.Value{}
	}
	return v
}

// checked holds a value against the input's bounds and choices. A value outside
// is reported, and still used: the rest can then be shown.
func (in *input) checked(v formula.Value, given *document.Attribute, written bool) formula.Value {
	if !v.OK() {
		return v
	}
	if v.Kind == formula.Text {
		in.checkChoice(v, given, written)
		return v
	}
	if v.Kind != formula.Quantity {
		return v
	}
	for _, bound := range []string{"from", "to"} {
		limit := in.bound(bound, given.Name)
		if !limit.OK() {
			continue
		}
		c, err := v.Is.Compare(limit.Is, 0)
		if err != nil || (bound == "from" && c >= 0) || (bound == "to" && c <= 0) {
			continue
		}
		d := diag.Diagnostic{Severity: diag.Error, Code: CodeInputRange, Where: given.Value.Place(),
			Text: textOf(CodeInputRange, message.Text("name", in.name()), argOf("got", v.Is), message.Word("bound", "bound."+bound), argOf("limit", limit.Is), argOf("over", apart(v.Is, limit.Is)), message.Word("past", "past."+bound))}
		if at := in.b.Attribute(bound); written && at != nil {
			d.Remedies = []diag.Remedy{in.s.file.Replace(given.Value.Place(), in.s.file.Written(at.Value.Place()))}
		}
		in.s.w.report(d)
		break
	}
	return v
}

// apart is how far two quantities of one kind are from each other.
func apart(a, b unit.Value) unit.Value {
	d, err := a.Sub(b, 0)
	if err == nil && d.Sign() < 0 {
		d, err = d.Neg()
	}
	if err != nil {
		return unit.Value{}
	}
	return d
}

// argOf is the message argument for a quantity.
func argOf(name string, v unit.Value) message.Arg {
	if l, ok := v.Length(); ok {
		return message.Length(name, l)
	}
	if n, ok := v.Int(); ok && n < 1<<31 && n > -1<<31 {
		return message.Count(name, int(n))
	}
	return message.Ratio(name, v.Float())
}

func (in *input) bound(name, kind string) formula.Value {
	if !in.b.Has(name) {
		return formula.Value{}
	}
	v := env{s: in.s}.value(in.b, name, "")
	switch kind {
	case "count", "length", "angle", "number":
		return in.typed(kind, v, "")
	}
	return formula.Value{}
}

func (in *input) checkChoice(v formula.Value, given *document.Attribute, written bool) {
	choices := in.choices()
	if len(choices) == 0 || slices.ContainsFunc(choices, func(c unit.Value) bool { return c.Text() == v.Is.Text() }) {
		return
	}
	names := make([]string, len(choices))
	args := make([]message.Arg, len(choices))
	for i, c := range choices {
		names[i] = c.Text()
		args[i] = message.Text("", c.Text())
	}
	d := diag.Diagnostic{Severity: diag.Error, Code: CodeInputChoice, Where: given.Value.Place(),
		Text: textOf(CodeInputChoice, message.Text("name", in.name()), message.Text("got", clip(v.Is.Text())), message.List("choices", args...))}
	if written {
		best := cmp.Or(document.Nearest(v.Is.Text(), names), names[0])
		d.Remedies = []diag.Remedy{in.s.file.Replace(given.Value.Place(), quoted(best))}
	}
	in.s.w.report(d)
}

func (in *input) choices() []unit.Value {
	v := env{s: in.s}.value(in.b, "choices", "")
	var out []unit.Value
	for _, item := range v.Items {
		if item.Kind == formula.Text {
			out = append(out, item.Is)
		}
	}
	return out
}

// collectInputs writes the document's inputs into the piece.
func (s *scope) collectInputs() {
	for _, b := range s.file.Of("input") {
		in := s.inputs[b.Label()]
		if in == nil || in.b != b {
			continue
		}
		v := in.get()
		out := piece.Input{
			Name: in.name(), Label: cmp.Or(s.words(b, "label"), in.name()), Help: s.words(b, "help"),
			Value: v.Is, Entry: v.Entry, Origin: in.origin, Choices: in.choices(),
		}
		if g := b.Given(); g != nil {
			out.Place = g.Value.Place()
			out.From, out.To, out.Step = in.bound("from", g.Name).Is, in.bound("to", g.Name).Is, in.bound("step", g.Name).Is
		}
		s.w.out.Inputs = append(s.w.out.Inputs, out)
	}
	for _, name := range slices.Sorted(maps.Keys(s.w.src.Inputs)) {
		if s.inputs[name] == nil {
			s.w.fault(CodeInputUnknown, s.file.Head.Where, message.Text("name", clip(name)))
		}
	}
}
