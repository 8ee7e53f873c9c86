package collision

import (
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/geom/solid"
	"scantling/internal/joinery"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/shape"
	"scantling/internal/unit"
)

// Fouls: a fitting stands in wood, or in another fitting.
const Fouls diag.Code = "fitting-collides"

// facets of a fitting's round bodies to a half circle.
const facets = 8

// fittings judges what hardware takes up against the finished wood and against
// other hardware.
func (j *judge) fittings(p *piece.Piece, looks *int) {
	type one struct {
		of   *piece.Hardware
		body piece.Body
	}
	var all []one
	for i := range p.Hardware {
		for _, b := range p.Hardware[i].Bodies {
			all = append(all, one{&p.Hardware[i], b})
		}
	}
	for i, x := range all {
		for k := range p.Parts {
			if *looks++; *looks > MaxLooks {
				return
			}
			if !overlap(x.body.Extent, joinery.Stands(&p.Parts[k])) {
				continue
			}
			s := j.shapes.At(k)
			if ok, _ := s.Verified(); !ok {
				continue // told of with the parts
			}
			if depth, ok := into(shape.Fitted(x.body, facets), s.Placed()); ok {
				j.fouls(x.of, s.Part.Address, depth)
			}
		}
		for _, y := range all[:i] {
			if *looks++; *looks > MaxLooks {
				return
			}
			if same := x.of == y.of && x.body.Of == y.body.Of; same || !overlap(x.body.Extent, y.body.Extent) {
				continue
			}
			if depth, ok := into(shape.Fitted(x.body, facets), shape.Fitted(y.body, facets)); ok {
				j.fouls(x.of, y.of.Address, depth)
			}
		}
	}
}

func overlap(a, b [3]piece.Extent) bool {
	for i := range a {
		if a[i].Low.Nm >= b[i].High.Nm || b[i].Low.Nm >= a[i].High.Nm {
			return false
		}
	}
	return true
}

// into returns how far two solids are in each other, false where they are not.
func into(a, b solid.Placed) (unit.Length, bool) {
	o := solid.Interference(a, b)
	depth := min(unit.FromMillimetres(o.Depth), boxes(a, b))
	return depth, o.Status == solid.Verified && o.Volume > 0 && depth >= Limit
}

// fouls reports a fitting that stands in something, once for the two.
func (j *judge) fouls(h *piece.Hardware, other address.Address, depth unit.Length) {
	key := [2]address.Address{h.Address, other}
	if j.fouled[key] {
		return
	}
	j.fouled[key] = true
	is := j.ledger.Leaf(string(h.Address)+".in."+string(other), depth, ledger.Derived, "collision.source")
	limit := j.ledger.Leaf("collision.limit", 0, ledger.Derived, "")
	j.out = append(j.out, plan.Finding{
		Check: "collision", Status: plan.Fail, Severity: diag.Error, Code: Fouls, Address: h.Address, Marks: j.marksOf(h.On, other),
		Is: &is, Limit: &limit, Where: h.Where,
		Text: message.New("collision.fitting", message.Address("fitting", h.Address), message.Text("kind", h.Kind),
			message.Address("other", other), message.Length("depth", depth)),
		Remedy: []diag.Remedy{{Text: message.New("collision.move-fitting", message.LengthRounded("by", depth, unit.Up))}},
	})
}
