package apart

import (
	"scantling/internal/address"
	"scantling/internal/geom/vec"
	"scantling/internal/piece"
	"scantling/internal/shape"
)

// half is what a lid that is sawn off takes of a wall, or leaves with its base. Halves
// are numbered behind the piece's parts.
type half struct {
	part  int
	sawn  *piece.Sawn
	lid   bool
	shape *shape.Shape
}

// halve numbers the halves of the walls that are sawn through.
func (w *work) halve() {
	for k := range w.piece.Sawn {
		s := &w.piece.Sawn[k]
		for i := range w.piece.Parts {
			if !s.Wall(w.piece.Parts[i].Address) {
				continue
			}
			for _, lid := range [2]bool{false, true} {
				h := half{i, s, lid, w.shapes.Half(i, s, lid)}
				ok, _ := h.shape.Verified()
				w.unsure[len(w.timber)] = !ok
				w.halves = append(w.halves, h)
				w.timber = append(w.timber, w.timber[i].half(s, lid))
			}
		}
	}
}

// half cuts a part's boxes off at a lid's line.
func (w timber) half(s *piece.Sawn, lid bool) timber {
	clip := func(list []shape.Box) []shape.Box {
		var out []shape.Box
		for _, b := range list {
			if lid {
				b.Lo[piece.Up] = max(b.Lo[piece.Up], s.Lost.High.Nm)
			} else {
				b.Hi[piece.Up] = min(b.Hi[piece.Up], s.Lost.Low.Nm)
			}
			if b.Lo[piece.Up] < b.Hi[piece.Up] {
				out = append(out, b)
			}
		}
		return out
	}
	w.outer, w.inner = clip(w.outer), clip(w.inner)
	w.hull = around(w.outer)
	at := vec.Of(s.Lost.Low.Nm, s.Lost.High.Nm, 0)
	for k := range w.corners {
		if z := &w.corners[k].Z; lid {
			*z = max(*z, at.Y)
		} else {
			*z = min(*z, at.X)
		}
	}
	return w
}

// own returns the number of the part that a number stands for, itself or a half of it.
func (w *work) own(i int) int {
	if n := len(w.piece.Parts); i >= n {
		return w.halves[i-n].part
	}
	return i
}

// isHalf reports whether a number stands for a half.
func (w *work) isHalf(i int) bool { return i >= len(w.piece.Parts) }

// solid is the shape that a number stands for.
func (w *work) solid(i int) *shape.Shape {
	if w.isHalf(i) {
		return w.halves[i-len(w.piece.Parts)].shape
	}
	return w.shapes.At(i)
}

// opened divides the parts of a group into what stands when its lids are off, and each
// lid. A group is sawn when it is glued up, so that what lies in it goes in afterwards.
func (w *work) opened(name address.Address, parts []int) []member {
	lids := map[*piece.Sawn][]int{}
	var stays []int
	for _, i := range parts {
		at, cut := w.piece.Parts[i].Address, false
		for k := range w.piece.Sawn {
			s := &w.piece.Sawn[k]
			if cut = s.Lifts(at); !cut {
				continue
			}
			if !s.Wall(at) {
				lids[s] = append(lids[s], i)
				break
			}
			for n, h := range w.halves {
				switch {
				case h.part != i || h.sawn != s:
				case h.lid:
					lids[s] = append(lids[s], len(w.piece.Parts)+n)
				default:
					stays = append(stays, len(w.piece.Parts)+n)
				}
			}
			break
		}
		if !cut {
			stays = append(stays, i)
		}
	}
	out := []member{w.gather(name, stays)}
	for k := range w.piece.Sawn {
		if s := &w.piece.Sawn[k]; len(lids[s]) > 0 {
			out = append(out, w.gather(s.Address, lids[s]))
		}
	}
	return out
}

// parted reports whether two parts of a group that is sawn apart belong to it as one
// takes what is around it apart: their joint holds neither half to the other.
func (w *work) parted(group, a, b address.Address) bool {
	for i := range w.piece.Sawn {
		if g := w.piece.Sawn[i].Group; g.Has(a) && g.Has(b) && !g.Has(group) {
			return true
		}
	}
	return false
}
