package evaluate

import (
	"scantling/internal/address"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/unit"
)

// sizeCell is one named value of a sizes block.
type sizeCell struct {
	s *scope
	a *document.Attribute
	c cell[formula.Value]
}

func (c *sizeCell) get() formula.Value {
	name := string(c.s.addr.Child("sizes")) + "." + c.a.Name
	return get(c.s.w, &c.c, func() string { return "sizes." + c.a.Name }, c.a.Where, func() formula.Value {
		return c.s.maker.Eval(c.a.Value, env{s: c.s, bare: true}, name)
	})
}

// size returns the named value of a document, and whether there is one.
func (s *scope) size(name string) (formula.Value, bool) {
	c := s.sizes[name]
	if c == nil {
		return formula.Value{}, false
	}
	return c.get(), true
}

// declared is an instance of a block that nothing more is known of than its
// address: a cut, a series, a measure.
type declared struct{ d *decl }

func (x *declared) address() address.Address {
	return x.d.s.addr.Child(x.d.block.Type).Child(slug(x.d.name))
}

// addressOf is the address of an instance: numbered if it repeats.
func addressOf(up address.Address, name string, nth int) address.Address {
	if nth > 0 {
		return up.Nth(name, nth)
	}
	return up.Child(name)
}

// isName reports whether a word can stand in an address.
func isName(s string) bool {
	a, err := address.Parse(s)
	return err == nil && s != "" && string(a) == s && a.Last().Name == s
}

// slug makes a word of an address from any words: letters and digits, the rest
// hyphens.
func slug(words string) string {
	if isName(words) {
		return words
	}
	out := make([]byte, 0, len(words))
	for i := range len(words) {
		c := words[i]
		switch {
		case c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z', c == '_', c >= 0x80, c >= '0' && c <= '9':
			out = append(out, c)
		case len(out) > 0 && out[len(out)-1] != '-':
			out = append(out, '-')
		}
	}
	for len(out) > 0 && out[len(out)-1] == '-' {
		out = out[:len(out)-1]
	}
	if s := string(out); isName(s) {
		return s
	}
	if s := "n" + string(out); isName(s) {
		return s
	}
	return "unnamed"
}

// unitsOf reads the unit of a document's bare numbers from its head.
func unitsOf(f *document.File) unit.System {
	if f == nil {
		return unit.Metric
	}
	if a := f.Head.Attribute("units"); a != nil {
		if t, ok := a.Value.(*document.Text); ok {
			if plain, ok := t.Plain(); ok && plain == string(unit.Inches) {
				return unit.Inches
			}
		}
	}
	return unit.Metric
}
