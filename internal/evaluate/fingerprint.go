package evaluate

import (
	"fmt"
	"hash/fnv"
	"strings"

	"scantling/internal/address"
	"scantling/internal/piece"
	"scantling/internal/record"
)

// Fingerprint returns the fingerprint that an entry of the record for a part, a
// space or a material is to carry, and whether there is such a thing. It is made
// of the piece as planned without the record, so that earlier entries do not
// change it.
func (r Result) Fingerprint(of address.Address, e record.Entry) (string, bool) {
	text, ok := fingerprints(r.Planned, classOf(e))[of]
	return text, ok
}

// fingerprints makes the fingerprints of everything that can be measured or cut.
func fingerprints(p *piece.Piece, c class) map[address.Address]string {
	out := map[address.Address]string{}
	parts := map[address.Address]string{}
	for _, m := range p.Materials {
		if c == boardClass {
			out[address.Address("material."+m.Name)] = digest("material", m.Species, m.Thickness.Nm)
		}
	}
	for _, x := range p.Parts {
		species := ""
		for _, m := range p.Materials {
			if m.Name == x.Material {
				species = m.Species
			}
		}
		switch c {
		case boardClass:
			out[x.Address] = digest("board", species, x.Thickness.Nm)
		case cutClass:
			out[x.Address] = digest("part", x.Name, x.Group, species, x.Frame)
		case sizeClass:
			out[x.Address] = digest("sized", x.Name, species, x.Length.Nm, x.Width.Nm, x.Thickness.Nm)
			parts[x.Address] = out[x.Address]
		}
	}
	if c != sizeClass {
		return out
	}
	for _, s := range p.Spaces {
		fields := []any{"space", s.Clear[0].Nm, s.Clear[1].Nm, s.Clear[2].Nm}
		for _, b := range s.Bounds {
			part := b
			if i := strings.LastIndexByte(b, '.'); i >= 0 {
				part = b[:i]
			}
			fields = append(fields, b, parts[address.Address(part)]) // the space is what these parts bound
		}
		out[s.Address] = digest(fields...)
	}
	return out
}

func digest(fields ...any) string {
	h := fnv.New64a()
	for _, f := range fields {
		fmt.Fprintf(h, "%v|", f)
	}
	return fmt.Sprintf("%016x", h.Sum64())
}
