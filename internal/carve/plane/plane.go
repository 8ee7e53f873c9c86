package plane

import (
	"scantling/internal/ledger"
	"scantling/internal/piece"
)

// Slope is how a plane falls along one local axis of a part: at station From it
// leaves the part whole, at station To it has come in by Drop.
type Slope struct {
	Along          piece.Local
	From, To, Drop piece.Figure
}

// Slice is the cut that takes off all beyond a plane with one or two slopes, on the
// side off of a part. Its lines in the ledger are named below name.
func Slice(l *ledger.Ledger, name string, part piece.Part, off piece.Side, slopes ...Slope) *piece.Slice {
	axis, high := off.Axis()
	whole := part.Sizes()[axis]
	nought := l.Leaf(name+".nought", 0, ledger.Derived, "")
	level := func(drop piece.Figure) piece.Figure {
		if high {
			return l.Less(name+".at", whole, drop)
		}
		return drop
	}
	out := &piece.Slice{Off: off, At: [3]piece.Figure{level(nought), level(nought), level(nought)}}
	k := 0
	for a := range piece.Local(3) {
		if a == axis {
			continue
		}
		out.From[k], out.To[k] = nought, part.Sizes()[a]
		for _, s := range slopes {
			if s.Along == a {
				out.From[k], out.To[k], out.At[k+1] = s.From, s.To, level(s.Drop)
			}
		}
		k++
	}
	return out
}

// Crosses reports whether a plane takes something of a part of those sizes: whether
// one of its corners lies beyond it by more than a nanometre.
func Crosses(s piece.Slice, sizes [3]piece.Figure) bool {
	off, high := s.Off.Axis()
	var size [2]float64
	k := 0
	for a, f := range sizes {
		if piece.Local(a) != off {
			size[k] = f.Nm.Millimetres()
			k++
		}
	}
	mm := func(f piece.Figure) float64 { return f.Nm.Millimetres() }
	level := func(x, y float64) float64 {
		at := [2]float64{x, y}
		out := mm(s.At[0])
		for i := range at {
			out += float64((mm(s.At[i+1]) - mm(s.At[0])) / (mm(s.To[i]) - mm(s.From[i])) * (at[i] - mm(s.From[i])))
		}
		return out
	}
	for corner := range 4 {
		at := level(float64(corner&1)*size[0], float64(corner>>1)*size[1])
		if high && at < mm(sizes[off])-1e-6 || !high && at > 1e-6 {
			return true
		}
	}
	return false
}
