package evaluate

import (
	"errors"
	"slices"
	"strings"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/figure"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/shop"
	"scantling/internal/stock"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// answer is what the rack has for a material.
type answer struct {
	asks      string
	sheet     bool
	species   string
	stock     string
	nominal   string
	sawn      string
	thickness formula.Value // of the stock itself, where it is used as it is
	ok        bool
}

// stock looks for what the material asks for in the rack.
func (m *material) stock() answer {
	return get(m.s.w, &m.answer, func() string { return "material." + m.name() }, m.b.Where, func() answer {
		if !m.b.Has("asks") {
			m.s.missing(m.b, "asks")
			return answer{}
		}
		asks := m.s.words(m.b, "asks")
		if asks == "" {
			return answer{}
		}
		if kind, nominal, err := stock.ParseSheetName(asks); err == nil && !endsInBoard(asks) {
			return m.sheet(asks, kind, nominal)
		}
		return m.board(asks)
	})
}

func endsInBoard(asks string) bool {
	words := strings.Fields(strings.ToLower(asks))
	return len(words) > 0 && slices.Contains([]string{"board", "boards", "timber", "lumber"}, words[len(words)-1])
}

// sheet finds a sheet by its kind and nominal thickness.
func (m *material) sheet(asks, kind string, nominal unit.Length) answer {
	w := m.s.w
	chosen := m.s.words(m.b, "stock")
	var near []string
	for _, s := range w.shop.Sheets {
		if !strings.EqualFold(s.Stock.Material, kind) {
			continue
		}
		near = append(near, s.ID)
		if s.Stock.Nominal != nominal || chosen != "" && chosen != s.ID {
			continue
		}
		t := s.Stock.Thickness()
		name := "material." + m.name() + ".thickness"
		e := ledger.Entry{Name: name, Value: unit.OfLength(t.Value), Origin: ledger.Bought, Where: s.Where}
		if t.Source.Status != figure.Stated {
			e.Origin, e.Source, e.Status = ledger.Reference, t.Source.Key, string(t.Source.Status)
		}
		id := w.ledger.Given(e)
		return answer{asks: asks, sheet: true, species: s.Stock.Material, stock: s.ID, ok: true,
			nominal: w.shop.Show(w.shop.Units).FormatUnit(nominal), thickness: quantity(w.ledger.Figure(id))}
	}
	if len(near) == 0 {
		for _, s := range w.shop.Sheets {
			near = append(near, s.ID)
		}
	}
	m.notInRack(asks, near)
	return answer{asks: asks, sheet: true, species: kind}
}

// board finds boards of the wood and, of those that are thick enough, the
// thinnest; what is there goes before what must be bought.
func (m *material) board(asks string) answer {
	w := m.s.w
	out := answer{asks: asks}
	species, ok := m.species(asks)
	if !ok {
		return out
	}
	out.species = species
	chosen := m.s.words(m.b, "stock")
	var of []shop.Board
	for _, b := range w.shop.Boards {
		if b.Species == species && (chosen == "" || chosen == b.ID) {
			of = append(of, b)
		}
	}
	if len(of) == 0 {
		m.notInRack(asks, boardNames(w.shop.Boards))
		return out
	}
	if !m.b.Has("thickness") {
		return m.asBought(out, of)
	}
	v, ok := env{s: m.s}.length(m.b, "thickness", "")
	if !ok {
		return out
	}
	need, _ := v.Is.Length()
	best, thickest := -1, unit.Length(0)
	for i, b := range of {
		clean, err := cleaning(w.shop).CleansUp(b.Stock.Thickness, b.Stock.Surface)
		if err != nil {
			continue
		}
		thickest = max(thickest, clean.Value)
		if clean.Value >= need && (best < 0 || better(b, of[best])) {
			best = i
		}
	}
	if best < 0 {
		w.fault(CodeTooThinInRack, m.b.Attribute("thickness").Value.Place(), message.Text("name", m.name()), message.Text("asks", asks),
			message.LengthRounded("needs", need, unit.Up), message.LengthRounded("most", thickest, unit.Down))
		return out
	}
	out.stock, out.sawn, out.ok = of[best].ID, sawnWord(of[best].Sawn), true
	return out
}

func better(a, b shop.Board) bool {
	if (a.Have > 0) != (b.Have > 0) {
		return a.Have > 0
	}
	return a.Stock.Thickness < b.Stock.Thickness
}

func cleaning(s *shop.Shop) stock.Cleaning {
	if s.Units == unit.Inches {
		return stock.InchCleaning()
	}
	return stock.MetricCleaning()
}

func sawnWord(s timber.Sawn) string {
	switch s {
	case timber.FlatSawn:
		return "flat"
	case timber.QuarterSawn:
		return "quarter"
	}
	return ""
}

// asBought takes a planed board as thick as it is bought.
func (m *material) asBought(out answer, of []shop.Board) answer {
	for _, b := range of {
		if b.Stock.Surface == stock.Planed {
			id := m.s.w.ledger.Given(ledger.Entry{Name: "material." + m.name() + ".thickness", Value: unit.OfLength(b.Stock.Thickness), Origin: ledger.Bought, Where: b.Where})
			out.stock, out.sawn, out.ok = b.ID, sawnWord(b.Sawn), true
			out.thickness = quantity(m.s.w.ledger.Figure(id))
			return out
		}
	}
	out.stock, out.sawn, out.ok = of[0].ID, sawnWord(of[0].Sawn), true
	return out
}

// species finds the wood. Where a name means several, the rack decides; where it
// holds several of them too, the author is asked.
func (m *material) species(asks string) (string, bool) {
	found, err := timber.Default().Find(asks)
	if err == nil {
		return found.Name, true
	}
	var many *timber.AmbiguousError
	if errors.As(err, &many) {
		var here []string
		for _, b := range m.s.w.shop.Boards {
			if slices.Contains(many.Candidates, b.Species) && !slices.Contains(here, b.Species) {
				here = append(here, b.Species)
			}
		}
		if len(here) == 1 {
			return here[0], true
		}
		if len(here) == 0 {
			m.notInRack(asks, boardNames(m.s.w.shop.Boards))
			return "", false
		}
		many.Candidates = here
	}
	m.s.w.unknownWood(err, m.s.file, m.b.Attribute("asks"), []string{" board"})
	return "", false
}

// unknownWood reports a name that means no wood, or several.
func (w *world) unknownWood(err error, file *document.File, at *document.Attribute, suffix []string) {
	where := at.Value.Place()
	tail := strings.Join(suffix, "")
	plain := false
	if t, ok := at.Value.(*document.Text); ok {
		_, plain = t.Plain()
	}
	code, names, args := CodeUnknownWood, []string(nil), []message.Arg(nil)
	var many *timber.AmbiguousError
	var none *timber.UnknownError
	switch {
	case errors.As(err, &many):
		code, names, args = CodeWhichWood, many.Candidates, []message.Arg{message.Text("name", clip(many.Name))}
	case errors.As(err, &none):
		names, args = w.inRackFirst(none.Near), []message.Arg{message.Text("name", clip(none.Name))}
	}
	list := make([]message.Arg, len(names))
	var remedies []diag.Remedy
	for i, n := range names {
		list[i] = message.Text("", n)
		if plain {
			remedies = append(remedies, file.Replace(where, quoted(n+tail)))
		}
	}
	w.faultWith(code, where, remedies, append(args, message.List("near", list...))...)
}

// inRackFirst puts the woods that the rack holds before the others.
func (w *world) inRackFirst(names []string) []string {
	here := func(name string) int {
		if slices.ContainsFunc(w.shop.Boards, func(b shop.Board) bool { return b.Species == name }) {
			return 0
		}
		return 1
	}
	out := slices.Clone(names)
	slices.SortStableFunc(out, func(a, b string) int { return here(a) - here(b) })
	return out
}

func boardNames(all []shop.Board) []string {
	var out []string
	for _, b := range all {
		out = append(out, b.ID)
	}
	return out
}

// notInRack reports a material that nothing in the rack answers, with what is
// there.
func (m *material) notInRack(asks string, have []string) {
	list := make([]message.Arg, len(have))
	for i, h := range have {
		list[i] = message.Text("", h)
	}
	m.s.w.fault(CodeNotInRack, m.b.Attribute("asks").Value.Place(), message.Text("asks", clip(asks)), message.List("rack", list...))
}

// refused turns a refusal of a low package into a diagnostic with its own words.
func (w *world) refused(err error, where diag.Place) {
	var r *figure.Refusal
	d := diag.Diagnostic{Severity: diag.Error, Code: CodeRefused, Where: where, Text: textOf(CodeRefused, message.Text("why", err.Error()))}
	if errors.As(err, &r) {
		d.Text = r.Text
		for _, h := range r.Help {
			d.Remedies = append(d.Remedies, diag.Remedy{Text: h})
		}
	}
	w.report(d)
}
