package rows

import "scantling/internal/piece"

// sawn parts air inside a closed box where its lid is sawn off: what stays with the
// base, what the saw takes, what goes off with the lid.
func (m *model) sawn(l line, from, to piece.Figure, air piece.Term) []piece.Term {
	if l.axis != piece.Up || air.Word == string(piece.LidKerf) {
		return []piece.Term{air}
	}
	for i := range m.piece.Sawn {
		s := &m.piece.Sawn[i]
		if !l.hits(regionOf(s.Extent)) || from.Nm > s.Lost.Low.Nm || to.Nm < s.Lost.High.Nm {
			continue
		}
		name := string(s.Address) + ".row"
		var out []piece.Term
		part := func(f piece.Figure) {
			if f.Nm > 0 {
				out = append(out, piece.Term{Air: true, Figure: f, Of: air.Of, Word: "air"})
			}
		}
		part(m.ledger.Less(name, s.Lost.Low, from))
		out = append(out, piece.Term{Air: true, Figure: s.Takes, Of: s.Address, Word: string(piece.LidKerf)})
		part(m.ledger.Less(name, to, s.Lost.High))
		return out
	}
	return []piece.Term{air}
}
