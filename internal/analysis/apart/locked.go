package apart

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/piece"
)

// MaxShrunk bounds the sets that are made smaller.
const MaxShrunk = 64

// smallest leaves members out of a locked set as long as the rest stays locked.
func (g *gathering) smallest(ring []int) []int {
	if len(ring) > MaxShrunk {
		return ring
	}
	for k := 0; k < len(ring) && len(ring) > 2; {
		if less := g.stuck(slices.Delete(slices.Clone(ring), k, k+1)); less != nil {
			ring, k = less, 0
		} else {
			k++
		}
	}
	return ring
}

// stuck returns a locked set within a set, nil if all comes apart.
func (g *gathering) stuck(set []int) []int {
	if len(set) < 2 || g.looks > MaxLooks {
		return nil
	}
	rings, _ := g.split(set)
	if len(rings) < 2 {
		return set
	}
	for _, r := range rings {
		if s := g.stuck(r); s != nil {
			return s
		}
	}
	return nil
}

// tell says what of a locked set is in the way of its first member.
func (g *gathering) tell(ring []int) Ring {
	out := Ring{Sure: !g.guessed, Blocks: map[piece.Direction]address.Address{}}
	for _, i := range ring {
		m := &g.members[i]
		told := Member{Name: m.name}
		for _, p := range m.parts {
			told.Parts = append(told.Parts, g.own(p))
		}
		out.Members = append(out.Members, told)
		out.Sure = out.Sure && !slices.ContainsFunc(m.parts, func(p int) bool { return g.unsure[p] })
	}
	first := ring[0]
	for way := range 3 {
		for _, up := range [2]bool{true, false} {
			sign := 1
			if !up {
				sign = -1
			}
			if a := g.blocker(ring[1:], first, way, up); a != "" {
				out.Blocks[piece.Toward(piece.Axis(g.ways[way].axis), sign)] = a
			}
		}
	}
	return out
}

// blocker returns the first part of the others that is in the way of member i.
func (g *gathering) blocker(others []int, i, way int, up bool) address.Address {
	for _, k := range others {
		if up && g.inTheWay(i, k, way) != blocked || !up && g.inTheWay(k, i, way) != blocked {
			continue
		}
		for _, p := range g.members[k].parts {
			one := g.gather("", []int{p})
			a, b := &g.members[i], &one
			if !up {
				a, b = b, a
			}
			s := g.ask(a, b, way)
			if s == doubtful {
				s = g.sweep(a, b, way)
			}
			if s == blocked {
				return g.piece.Parts[g.own(p)].Address
			}
		}
	}
	return ""
}
