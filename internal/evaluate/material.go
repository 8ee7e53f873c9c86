package evaluate

import (
	"cmp"

	"scantling/internal/address"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// material is a role with what it asks for and what the shop answers.
type material struct {
	s      *scope
	b      *document.Block
	thick  cell[formula.Value]
	answer cell[answer]
}

func (m *material) name() string {
	if m.s.host == nil {
		return m.b.Label()
	}
	return string(m.s.addr.Child(slug(m.b.Label())))
}

// thickness is what parts of the material are dressed to: as stated, or as the
// shop's sheet measures.
func (m *material) thickness() formula.Value {
	name := "material." + m.name() + ".thickness"
	return get(m.s.w, &m.thick, func() string { return name }, m.b.Where, func() formula.Value {
		if v, ok := m.s.w.record.thickness(m.s.w, address.Address("material."+m.name()), name); ok {
			return v
		}
		if m.b.Has("thickness") {
			v, ok := env{s: m.s}.length(m.b, "thickness", name)
			if !ok || !m.s.w.positive(v, m.b.Attribute("thickness"), name) {
				return formula.Value{}
			}
			return v
		}
		a := m.stock()
		if a.ok && a.thickness.OK() {
			return a.thickness
		}
		if a.ok && !m.b.Broken && !m.b.Unsure {
			m.s.w.fault(CodeNoThickness, m.b.Where, message.Text("name", m.name()))
		}
		return formula.Value{}
	})
}

// positive reports a size that is not above nought.
func (w *world) positive(v formula.Value, a *document.Attribute, name string) bool {
	l, _ := v.Is.Length()
	if l > 0 {
		return true
	}
	where := v.Where
	if a != nil {
		where = a.Value.Place()
	}
	w.fault(CodeNotPositive, where, message.Text("name", name), message.Length("got", l))
	return false
}

// collect writes the materials of a document into the piece.
func (s *scope) collectMaterials() {
	for _, b := range s.file.Of("material") {
		m := s.materials[b.Label()]
		if m == nil || m.b != b {
			continue
		}
		a, t := m.stock(), m.thickness()
		s.w.out.Materials = append(s.w.out.Materials, piece.Material{
			Name: m.name(), Asks: a.asks, Sheet: a.sheet, Species: a.species, Stock: a.stock,
			Thickness: s.w.ledger.Figure(t.Entry), Nominal: a.nominal,
			Cut: cmp.Or(s.words(b, "sawn"), a.sawn), Where: b.Where,
		})
	}
}
