package evaluate

import (
	"slices"

	"scantling/internal/carve/assembled"
	"scantling/internal/diag"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// lidWords are what a block of a lid that is sawn off may say.
var lidWords = []string{"label", "kind", "on", "base", "high", "kerf", "clean", "saw", "if"}

// Usual figures of a lid that is sawn off: what is planed off each sawn edge, which the
// house rule "sawn edge" goes before, and the kerf of a fine handsaw. Common practice,
// no source.
const (
	usualClean   = unit.Millimetre / 2
	handsawsKerf = unit.Millimetre
)

// lidFigures are what sawing a lid off takes: worked out before any part is known, so
// that the sizes of the parts may take it.
type lidFigures struct{ kerf, clean, takes cell[formula.Value] }

// isLid reports whether a cut block saws a lid off.
func (d *decl) isLid() bool {
	return d.block.Type == "cut" && d.s.words(d.block, "kind") == "lid"
}

// lidMember resolves what may be named of a lid that is sawn off.
func (d *decl) lidMember(word string) (formula.Value, bool) {
	if !d.isLid() {
		return formula.Value{}, false
	}
	switch word {
	case "kerf":
		return d.lidFigure(word, &d.lid.kerf, d.usualKerf), true
	case "clean":
		return d.lidFigure(word, &d.lid.clean, d.usualClean), true
	case "takes":
		return d.lidTakes(), true
	case "base", "high":
		if d.block.Has(word) {
			v, _ := env{s: d.s}.length(d.block, word, d.lidName(word))
			return v, true
		}
	}
	return formula.Value{}, false
}

func (d *decl) lidName(word string) string { return "cut." + slug(d.name) + "." + word }

// lidFigure is the kerf, or what is planed off each edge: as stated, else as usual.
func (d *decl) lidFigure(word string, at *cell[formula.Value], usual func(name string) piece.Figure) formula.Value {
	name := d.lidName(word)
	return get(d.s.w, at, func() string { return name }, d.block.Where, func() formula.Value {
		e := env{s: d.s}
		if !d.block.Has(word) {
			return quantity(usual(name))
		}
		v, ok := e.length(d.block, word, name)
		if l, _ := v.Is.Length(); ok && (l < 0 || l == 0 && word == "kerf") {
			e.reader(d.block).Positive(v, word, name)
			return formula.Value{}
		}
		return v.At(nil)
	})
}

// usualKerf is that of the shop's table saw, or of a handsaw.
func (d *decl) usualKerf(name string) piece.Figure {
	w := d.s.w
	if d.s.words(d.block, "saw") != "hand" {
		for _, m := range w.shop.Machines {
			if m.Tool.Kind == tool.TableSaw && m.Tool.Completed().Kerf.Known() {
				return w.ledger.Leaf(name, m.Tool.Completed().Kerf.Value, ledger.Bought, m.ID)
			}
		}
	}
	return w.ledger.Leaf(name, handsawsKerf, ledger.HouseRule, "common practice")
}

func (d *decl) usualClean(name string) piece.Figure {
	if f := d.s.w.shop.LengthRule("sawn edge"); f.Known() {
		return d.s.w.ledger.Leaf(name, f.Value, ledger.HouseRule, f.Source.String())
	}
	return d.s.w.ledger.Leaf(name, usualClean, ledger.HouseRule, "common practice")
}

// lidTakes is all that a closed box loses in height: the kerf, and twice what is planed
// off.
func (d *decl) lidTakes() formula.Value {
	name := d.lidName("takes")
	return get(d.s.w, &d.lid.takes, func() string { return name }, d.block.Where, func() formula.Value {
		kerf, _ := d.lidMember("kerf")
		clean, _ := d.lidMember("clean")
		if !kerf.OK() || !clean.OK() {
			return formula.Value{}
		}
		w := d.s.w
		return quantity(w.ledger.Figure(w.make(name, ledger.OpAdd, kerf.Entry, clean.Entry, clean.Entry)))
	})
}

// lidHeight works out the one of base and high that is stated.
func (d *decl) lidHeight() (base bool, v formula.Value) {
	if d.block.Has("base") == d.block.Has("high") {
		d.s.w.fault(CodeLidHeight, d.block.Where, message.Text("name", d.name))
		return false, v
	}
	base = d.block.Has("base")
	word := "high"
	if base {
		word = "base"
	}
	v, _ = d.lidMember(word)
	return base, v
}

// lidBase is how high the base stands over the group's lowest place: a plain length, or
// from there to the face that is named.
func (d *decl) lidBase(v formula.Value, low piece.Figure) piece.Figure {
	w := d.s.w
	if v.Position == nil || v.Position.Axis != int(piece.Up) {
		return w.figure(v)
	}
	return w.ledger.Less(d.lidName("base"), w.figure(w.carried(v, w.root.frame)), low)
}

// collectLid writes a lid that is sawn off a group into the piece, with what the saw
// takes of each wall.
func (d *decl) collectLid(g *scope) {
	w, l := d.s.w, d.s.w.ledger
	d.onlyLidWords()
	saw := env{s: d.s}.reader(d.block).Choice("saw", "table saw", "hand")
	parts := g.standing()
	base, height := d.lidHeight()
	kerf, _ := d.lidMember("kerf")
	clean, _ := d.lidMember("clean")
	takes := d.lidTakes()
	if len(parts) == 0 || !height.OK() || !takes.OK() {
		return
	}
	block := assembled.Block(l, g.addr, parts)
	s := piece.Sawn{
		Address: g.addr.Child(slug(d.name)), Name: d.name, Group: g.addr, Takes: w.figure(takes), Kerf: w.figure(kerf), Clean: w.figure(clean),
		Whole: block.Thickness, Extent: block.Extent, Size: block.Sizes(), ByHand: saw == "hand", Where: d.block.Where,
	}
	if base {
		s.Base = d.lidBase(height, block.Extent[piece.Up].Low)
		s.Lid = l.Less(string(s.Address)+".high", s.Whole, s.Base, s.Takes)
	} else {
		s.Lid = w.figure(height)
		s.Base = l.Less(string(s.Address)+".base", s.Whole, s.Lid, s.Takes)
	}
	s.Lost.Low = l.Sum("", block.Extent[piece.Up].Low, s.Base)
	s.Lost.High = l.Sum("", s.Lost.Low, s.Takes)
	if s.Base.Nm <= 0 || s.Lid.Nm <= 0 {
		w.fault(CodeLidOutside, d.block.Where, message.Text("name", d.name), message.Length("whole", s.Whole.Nm), message.Length("base", s.Base.Nm),
			message.Length("takes", s.Takes.Nm), message.Length("lid", s.Lid.Nm))
		return
	}
	if cuts, ok := d.sawn(&s, block, parts); ok && d.keep(cuts) {
		w.out.Sawn = append(w.out.Sawn, s)
	}
}

// sawn tells walls from what stays and what goes off, and returns the walls' cuts.
func (d *decl) sawn(s *piece.Sawn, block piece.Part, parts []piece.Part) ([]piece.Cut, bool) {
	var cuts []piece.Cut
	sound := true
	fault := func(code diag.Code, p piece.Part) {
		sound = false
		d.s.w.report(diag.Diagnostic{Severity: diag.Error, Code: code, Where: d.block.Where, Address: p.Address, Text: textOf(code,
			message.Text("name", d.name), message.Address("part", p.Address),
			message.Length("from", s.Lost.Low.Nm-block.Extent[piece.Up].Low.Nm), message.Length("to", s.Lost.High.Nm-block.Extent[piece.Up].Low.Nm)),
			Related: []diag.Related{{Text: message.New("related.first-here"), Where: p.Where}}})
	}
	for _, p := range parts {
		stand, out := assembled.Stands(block, p, s.Lost)
		switch {
		case stand == assembled.Above:
			s.Over = append(s.Over, p.Address)
		case stand == assembled.Within:
			fault(CodeLidGrazes, p)
		case stand == assembled.Between, stand == assembled.Wall && p.Tilt != nil:
			fault(CodeLidHeld, p)
		case stand == assembled.Wall:
			c := assembled.Kerf(d.s.w.ledger, slug(d.name), p, out, s.Lost)
			c.AfterGlueUp, c.Where = s.Group, d.block.Where
			cuts = append(cuts, c)
			s.Walls = append(s.Walls, p.Address)
		}
	}
	if sound && len(cuts) == 0 {
		d.s.w.fault(CodeMeetsNothing, d.block.Where, message.Text("name", d.name))
		return nil, false
	}
	return cuts, sound
}

// onlyLidWords reports words that say nothing of a lid.
func (d *decl) onlyLidWords() {
	for _, a := range d.block.Attributes {
		if !slices.Contains(lidWords, a.Name) {
			d.s.w.fault(CodeLidWord, a.Where, message.Text("word", a.Name), message.Text("known", joinWords(lidWords)))
		}
	}
}

// lost is what a space within a closed box loses as its lid is sawn off between the
// faces that bound it below and above; nothing where none is.
func (s *space) lost(low, high formula.Value) formula.Value {
	below, above := faceOf(low), faceOf(high)
	if below == nil || above == nil {
		return formula.Value{}
	}
	for at := below.of.decl.s; at != nil; at = at.outer() {
		for _, d := range at.order {
			if d.block.Type != "cut" || !d.isLid() || !d.present() {
				continue
			}
			for _, x := range (env{s: at}).selections(d.block, "on", "group") {
				for _, n := range x.nodes() {
					if g, ok := n.(*scope); ok && below.of.within(g) && above.of.within(g) && d.parts(g, below, above) {
						return d.lidTakes()
					}
				}
			}
		}
	}
	return formula.Value{}
}

func faceOf(v formula.Value) *face {
	if v.Position == nil {
		return nil
	}
	f, _ := v.Position.Face.(*face)
	return f
}

// within reports whether a part stands in a group, or in one within it.
func (p *part) within(g *scope) bool {
	for at := p.decl.s; at != nil; at = at.outer() {
		if at == g {
			return true
		}
	}
	return false
}

// parts reports whether the line of a lid lies between two faces.
func (d *decl) parts(g *scope, below, above *face) bool {
	w := d.s.w
	base, height := d.lidHeight()
	takes := d.lidTakes()
	if !height.OK() || !takes.OK() {
		return false
	}
	at := func(p *part, high bool) piece.Figure {
		return w.figure(w.carried(p.place(piece.Up, high), w.root.frame))
	}
	var ends []piece.Figure
	for _, p := range g.parts() {
		ends = append(ends, at(p, !base))
	}
	var from piece.Figure
	if low := w.ledger.Least("", ends...); base {
		from = w.ledger.Sum("", low, d.lidBase(height, low))
	} else {
		from = w.ledger.Less("", w.ledger.Greatest("", ends...), w.figure(height), w.figure(takes))
	}
	return at(below.of, below.high).Nm <= from.Nm && at(above.of, above.high).Nm >= from.Nm+w.figure(takes).Nm
}
