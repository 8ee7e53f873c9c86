package evaluate

import (
	"cmp"

	"scantling/internal/address"
	"scantling/internal/document"
	"scantling/internal/equip"
	"scantling/internal/formula"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// material is a role with what it asks for and what the shop answers.
type material struct {
	s      *scope
	b      *document.Block
	thick  cell[formula.Value]
	answer cell[equip.Answer]
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
			if !ok || !m.s.reader(m.b).Positive(v, "thickness", name) {
				return formula.Value{}
			}
			return v
		}
		a := m.stock()
		if a.Found && a.Thickness > 0 {
			entry := a.Entry
			entry.Name = name
			return quantity(m.s.w.ledger.Figure(m.s.w.ledger.Given(entry)))
		}
		if a.Found && !m.b.Broken && !m.b.Unsure {
			m.s.w.fault(CodeNoThickness, m.b.Where, message.Text("name", m.name()))
		}
		return formula.Value{}
	})
}

// stock looks for what the material asks for in the rack.
func (m *material) stock() equip.Answer {
	w, e := m.s.w, env{s: m.s}
	return get(w, &m.answer, func() string { return "material." + m.name() }, m.b.Where, func() equip.Answer {
		need := unit.Length(0)
		if m.b.Has("thickness") {
			v, ok := e.length(m.b, "thickness", "")
			if need, _ = v.Is.Length(); !ok || need <= 0 {
				return equip.Answer{} // reported with the thickness
			}
		}
		return equip.Find(e.reader(m.b), w.shop, need)
	})
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
			Name: m.name(), Asks: a.Asks, Sheet: a.Sheet, Species: a.Species, Stock: a.Stock,
			Thickness: s.w.ledger.Figure(t.Entry), Nominal: a.Nominal,
			Cut: cmp.Or(s.reader(b).Choice("sawn", "flat", "quarter"), a.Sawn), Where: b.Where,
		})
	}
}
