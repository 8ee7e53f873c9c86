package bodies

import (
	"strings"

	"scantling/internal/address"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Leaf is what closes an opening and moves away from it: the front of a drawer, which
// comes out to the front with all of its drawer, or a door or lid on hinges.
type Leaf struct {
	Address address.Address
	// Faces are the parts that are seen: a drawer's front, a door with all of its frame.
	Faces []*piece.Part
	// Move is the drawer; nil for what turns on hinges.
	Move *Move
	// Hinges is the first placed hinge of a door or lid.
	Hinges *piece.Hardware
	own    map[address.Address]bool
}

// Leaves returns the fronts of what moves, in the order of the piece, then doors and
// lids in the order of their hinges.
func (x *Index) Leaves() []Leaf {
	var out []Leaf
	taken := map[address.Address]bool{}
	moves := x.Moves()
	for i := range moves {
		m := &moves[i]
		if faces := m.Fronts(); len(faces) > 0 {
			l := Leaf{Address: m.Group.Address, Faces: faces, Move: m, own: map[address.Address]bool{}}
			for _, p := range m.Parts {
				l.own[p.Address], taken[p.Address] = true, true
			}
			out = append(out, l)
		}
	}
	for i := range x.Piece.Hardware {
		h := &x.Piece.Hardware[i]
		p := x.parts[h.With]
		if p == nil || taken[p.Address] || len(h.Bodies) == 0 || !hinge(h) {
			continue
		}
		l := Leaf{Address: p.Address, Faces: []*piece.Part{p}, Hinges: h, own: map[address.Address]bool{}}
		if p.Group != "" && !p.Group.Has(h.On) && x.hung(p.Group) == 1 { // a framed door is a group of its own
			l.Address, l.Faces = p.Group, x.Members(p.Group)
		}
		for _, p := range l.Faces {
			l.own[p.Address], taken[p.Address] = true, true
		}
		out = append(out, l)
	}
	return out
}

func hinge(h *piece.Hardware) bool { return strings.Contains(strings.ToLower(h.Kind), "hinge") }

// PullWords are the words of fittings that a hand pulls by.
func PullWords() []string { return []string{"knob", "pull", "handle", "ring"} }

// hung counts the parts of a group that hinges carry.
func (x *Index) hung(group address.Address) int {
	with := map[address.Address]bool{}
	for i := range x.Piece.Hardware {
		if h := &x.Piece.Hardware[i]; group.Has(h.With) && hinge(h) {
			with[h.With] = true
		}
	}
	return len(with)
}

// Has reports whether a part moves with the leaf.
func (l *Leaf) Has(part address.Address) bool { return l.own[part] }

// Out is how far a drawer comes out: as far as it is long. Nought for what turns.
func (l *Leaf) Out() unit.Length {
	if l.Move == nil {
		return 0
	}
	return l.Move.Extent[piece.Back].Size()
}

// Sweeps returns a box of the leaf with all that it passes through on its way out.
func (l *Leaf) Sweeps(b Box) Box {
	b[piece.Back].Low -= l.Out()
	return b
}

// Ahead returns what a box passes through in front of itself on its leaf's way out.
func (l *Leaf) Ahead(b Box) Box {
	b[piece.Back] = Span{b[piece.Back].Low - l.Out(), b[piece.Back].Low}
	return b
}

// Plane returns the two axes in which a part's face lies.
func Plane(p *piece.Part) [2]piece.Axis {
	t, _ := p.Frame.Thickness.Axis()
	return [2]piece.Axis{(t + 1) % 3, (t + 2) % 3}
}

// BoxOf returns a box of extents.
func BoxOf(e [3]piece.Extent) Box { return boxOf(e) }
