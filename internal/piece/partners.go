package piece

import (
	"slices"

	"scantling/internal/address"
)

// Awaiting lists the parts that a measure reads though they are not cut before it is
// taken: what is read of them is read where they go.
func (p *Piece) Awaiting(m *Measure) []address.Address {
	var out []address.Address
	for i := range p.Parts {
		part := &p.Parts[i]
		if slices.Contains(m.Of, part.Address) && slices.Contains(part.CutAfter, m.Address) {
			out = append(out, part.Address)
		}
	}
	return out
}

// Between lists the parts that a measure reads between those that they go into.
func (p *Piece) Between(m *Measure) []address.Address {
	if len(p.Partners(m)) == 0 {
		return nil
	}
	return p.Awaiting(m)
}

// TakenBetween reports whether a reading of that name is taken where a part goes: a
// thickness is there before the part is cut.
func TakenBetween(what string) bool { return what == "length" || what == "width" }

// Partners lists the parts that the parts awaiting a measure go into, in the order of
// the joints: their length or width is read between these, put together dry without
// them, from the bottom of one joint to that of the other. It is empty for a measure of
// a stage, which is read from what is glued, and for one that reads a thickness only,
// which a part has before it is cut. Common practice, no source.
func (p *Piece) Partners(m *Measure) []address.Address {
	if m.Stage != "" || !slices.ContainsFunc(m.Take, TakenBetween) {
		return nil
	}
	awaiting := p.Awaiting(m)
	if len(awaiting) == 0 {
		return nil
	}
	var out []address.Address
	for _, j := range p.Joints {
		if slices.Contains(awaiting, j.A) && !slices.Contains(awaiting, j.B) && !slices.Contains(out, j.B) {
			out = append(out, j.B)
		}
	}
	return out
}
