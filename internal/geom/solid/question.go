package solid

// mode is the question that a run asks of every region of every plane.
type mode int8

const (
	build     mode = iota // faces of A
	intersect             // faces of A ∩ B
	contact               // where A ends and B begins
)

// key names a kind of region of a plane: nothing (sign 0), or a face looking
// up the plane's normal (+1) or down it (-1), with what made it. For contact,
// tag is A's and other is B's.
type key struct {
	sign  int8
	tag   Tag
	other Tag
	surf  int32
}

func (s *sheet) keyNumber(state []uint64) int32 {
	k := s.keyAt(state)
	for i, o := range s.keys {
		if o == k {
			return int32(i)
		}
	}
	s.keys = append(s.keys, k)
	return int32(len(s.keys) - 1)
}

// keyAt answers the run's question for one region.
func (s *sheet) keyAt(state []uint64) key {
	has := func(r role) bool { return any2(state, s.masks[r]) }
	aDown := has(bodyA) && !has(cutA)
	aUp := has(bodyA+roles) && !has(cutA+roles)
	if s.mode == build {
		if aDown == aUp {
			return key{}
		}
		return s.faceKey(state, bodyA, aDown)
	}
	bDown := has(bodyB) && !has(cutB)
	bUp := has(bodyB+roles) && !has(cutB+roles)
	if s.mode == contact {
		switch {
		case aDown && bUp && !aUp && !bDown:
			return s.contactKey(1, s.faceKey(state, bodyA, true), s.faceKey(state, bodyB, false))
		case aUp && bDown && !aDown && !bUp:
			return s.contactKey(-1, s.faceKey(state, bodyA, false), s.faceKey(state, bodyB, true))
		}
		return key{}
	}
	down, up := aDown && bDown, aUp && bUp
	switch {
	case down == up:
		return key{}
	case aDown != aUp:
		k := s.faceKey(state, bodyA, down)
		k.other = 0
		return k
	default:
		k := s.faceKey(state, bodyB, down)
		k.other = 1
		return k
	}
}

// faceKey names the face of A or B (base role bodyA or bodyB) in a region
// where it ends: wood below (down) or above. Where a body goes on across the
// plane a cutter made the face, else the body ended there.
func (s *sheet) faceKey(state []uint64, base role, down bool) key {
	k := key{sign: 1}
	beyond, wood := roles, role(0)
	if !down {
		k.sign, beyond, wood = -1, 0, roles
	}
	r := base + wood
	if any2(state, s.masks[base+beyond]) {
		r = base + 1 + beyond
	}
	k.surf = -1
	if g := s.ownerOf(state, r); g != nil {
		k.tag, k.surf = g.tag, g.surf
	}
	return k
}

// ownerOf returns whose face it is among the polyhedra of a role that end at
// the plane together: where facets of different surfaces fall together, the
// one that bulges farthest, as their union does; else the first.
func (s *sheet) ownerOf(state []uint64, r role) *group {
	n := len(s.locals)
	var best *group
	for k := range s.locals {
		bit := k
		if r >= roles {
			bit = n + k
		}
		if !hasBit(s.masks[r], bit) || !hasBit(state, bit) {
			continue
		}
		if g := s.groupAt(state, k); g != nil && (best == nil || g.reach > best.reach) {
			best = g
		}
	}
	return best
}

// groupAt returns the group of a polyhedron's facets that holds the region.
func (s *sheet) groupAt(state []uint64, k int) *group {
	groups := s.locals[k].groups
	for i := range groups {
		if g := &groups[i]; g.bit < 0 || hasBit(state, g.bit) {
			return g
		}
	}
	if len(groups) > 0 {
		return &groups[0]
	}
	return nil
}

// contactKey names a stretch of contact. Where facets of two cylinders fall
// together by chance the fit of the cylinders counts, and nothing here.
func (s *sheet) contactKey(sign int8, a, b key) key {
	if a.surf >= 0 && b.surf >= 0 && s.polys[0].surfs[a.surf].kind == cylinder && s.polys[1].surfs[b.surf].kind == cylinder {
		return key{}
	}
	return key{sign: sign, tag: a.tag, other: b.tag}
}
