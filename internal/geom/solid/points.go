package solid

import (
	"math"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// pointSet merges points of a plane that lie within a tolerance of one another.
// The first point stands for all. Cells are fifty tolerances wide, so that a
// point rarely has to ask a neighbouring cell.
type pointSet struct {
	at   []polygon.P2
	next []int32
	head []int32
	mask uint64
	tol  float64
	cell float64
}

func (s *pointSet) reset(tol float64, expect int) {
	size := 64
	for size < 2*expect {
		size *= 2
	}
	if len(s.head) < size {
		s.head = make([]int32, size)
	}
	s.head = s.head[:cap(s.head)]
	for i := range s.head[:size] {
		s.head[i] = -1
	}
	s.mask = uint64(size - 1)
	s.at, s.next = s.at[:0], s.next[:0]
	s.tol, s.cell = tol, 50*tol
}

func hash2(x, y int64) uint64 {
	h := uint64(x)*0x9E3779B97F4A7C15 ^ uint64(y)*0xC2B2AE3D27D4EB4F
	return h ^ h>>29
}

// cellOf returns the cell of a coordinate and the neighbour that a point as
// near as the tolerance could lie in (itself, mostly). Cells are set off from
// zero, as round numbers of millimetres must not fall on their borders.
func cellOf(x, cell, tol float64) (k, other int64) {
	f := x/cell + 0.3819
	fl := math.Floor(f)
	k = int64(fl)
	r := float64((f - fl) * cell)
	switch {
	case r < tol:
		return k, k - 1
	case cell-r < tol:
		return k, k + 1
	}
	return k, k
}

// add returns the number of the point at p, making it if none is near.
func (s *pointSet) add(p polygon.P2) int32 {
	kx, ox := cellOf(p.X, s.cell, s.tol)
	ky, oy := cellOf(p.Y, s.cell, s.tol)
	if i := s.near(p, kx, ky); i >= 0 {
		return i
	}
	if ox != kx {
		if i := s.near(p, ox, ky); i >= 0 {
			return i
		}
	}
	if oy != ky {
		if i := s.near(p, kx, oy); i >= 0 {
			return i
		}
	}
	if ox != kx && oy != ky {
		if i := s.near(p, ox, oy); i >= 0 {
			return i
		}
	}
	i := int32(len(s.at))
	s.at = append(s.at, p)
	h := hash2(kx, ky) & s.mask
	s.next = append(s.next, s.head[h])
	s.head[h] = i
	return i
}

func (s *pointSet) near(p polygon.P2, kx, ky int64) int32 {
	for i := s.head[hash2(kx, ky)&s.mask]; i >= 0; i = s.next[i] {
		if d := s.at[i].Sub(p); abs(d.X) <= s.tol && abs(d.Y) <= s.tol {
			return i
		}
	}
	return -1
}

// weldSet does the same in space.
type weldSet struct {
	at   []vec.V3
	next []int32
	head keyTable
	tol  float64
	cell float64
}

func newWeldSet(tol float64) *weldSet {
	s := new(weldSet)
	s.reset(tol)
	return s
}

func (s *weldSet) reset(tol float64) {
	s.at, s.next = s.at[:0], s.next[:0]
	s.head.reset(256)
	s.tol, s.cell = tol, 50*tol
}

func hash3(x, y, z int64) uint64 { return hash2(int64(hash2(x, y)), z) }

// find returns the number of the point at p, or -1.
func (s *weldSet) find(p vec.V3) int32 {
	kx, ox := cellOf(p.X, s.cell, s.tol)
	ky, oy := cellOf(p.Y, s.cell, s.tol)
	kz, oz := cellOf(p.Z, s.cell, s.tol)
	for m := range 8 {
		x, y, z := kx, ky, kz
		if m&1 != 0 {
			x = ox
		}
		if m&2 != 0 {
			y = oy
		}
		if m&4 != 0 {
			z = oz
		}
		if (m&1 != 0 && ox == kx) || (m&2 != 0 && oy == ky) || (m&4 != 0 && oz == kz) {
			continue
		}
		h, none := s.head.find(hash3(x, y, z))
		if none {
			continue
		}
		for i := h.value; i >= 0; i = s.next[i] {
			d := s.at[i].Sub(p)
			if abs(d.X) <= s.tol && abs(d.Y) <= s.tol && abs(d.Z) <= s.tol {
				return i
			}
		}
	}
	return -1
}

// add returns the number of the point at p, making it if none is near.
func (s *weldSet) add(p vec.V3) int32 {
	if i := s.find(p); i >= 0 {
		return i
	}
	kx, _ := cellOf(p.X, s.cell, s.tol)
	ky, _ := cellOf(p.Y, s.cell, s.tol)
	kz, _ := cellOf(p.Z, s.cell, s.tol)
	i := int32(len(s.at))
	s.at = append(s.at, p)
	h := hash3(kx, ky, kz)
	prev := int32(-1)
	if old, none := s.head.find(h); !none {
		prev = old.value
	}
	s.next = append(s.next, prev)
	s.head.set(h, i)
	return i
}
