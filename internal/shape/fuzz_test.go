package shape_test

import (
	"encoding/binary"
	"testing"

	"scantling/internal/geom/solid"
	"scantling/internal/piece"
	"scantling/internal/shape"
	"scantling/internal/unit"
)

// reader takes figures and choices from bytes.
type reader struct{ raw []byte }

func (r *reader) byte() byte {
	if len(r.raw) == 0 {
		return 0
	}
	b := r.raw[0]
	r.raw = r.raw[1:]
	return b
}

// figure is a number of half millimetres, or now and then any number at all.
func (r *reader) figure() piece.Figure {
	b := r.byte()
	if b == 255 && len(r.raw) >= 8 {
		v := int64(binary.LittleEndian.Uint64(r.raw))
		r.raw = r.raw[8:]
		return piece.Figure{Nm: unit.Length(v)}
	}
	return piece.Figure{Nm: unit.Length(int8(b)) * unit.Millimetre / 2}
}

func (r *reader) side() piece.Side {
	b := r.byte()
	return piece.SideOf(piece.Local(b/2%3), b%2 == 0)
}

func (r *reader) line() (out []piece.OutlinePoint) {
	for range 2 + r.byte()%6 {
		out = append(out, piece.OutlinePoint{Along: r.figure(), Across: r.figure(), Bulge: float64(int8(r.byte())) / 64})
	}
	return out
}

func (r *reader) cut() (c piece.Cut) {
	switch r.byte() % 6 {
	case 0:
		c.Slot = &piece.Slot{
			Open: r.side(), Run: piece.Local(r.byte() % 4), From: r.figure(), To: r.figure(), Near: r.figure(), Far: r.figure(),
			Depth: r.figure(), Corner: r.figure(), EndRadius: r.figure(), LeanNear: r.figure(), LeanFar: r.figure(), StartOpen: r.byte()%2 == 0,
		}
	case 1:
		c.Bore = &piece.Bore{Open: r.side(), At: [2]piece.Figure{r.figure(), r.figure()}, Diameter: r.figure(), Depth: r.figure(), Through: r.byte()%2 == 0}
		if r.byte()%2 == 0 {
			c.Bore.Sink = &piece.Sink{Diameter: r.figure(), Depth: r.figure(), Flat: r.byte()%2 == 0}
		}
	case 2:
		c.Dip = &piece.Dip{Open: r.side(), Centre: r.figure(), Chord: r.figure(), Depth: r.figure()}
	case 3:
		c.Ease = &piece.Ease{Sides: [2]piece.Side{r.side(), r.side()}, Radius: r.figure(), Cove: r.byte()%2 == 0, From: r.figure(), To: r.figure()}
	case 4:
		c.Slice = &piece.Slice{
			Off:  r.side(),
			From: [2]piece.Figure{r.figure(), r.figure()}, To: [2]piece.Figure{r.figure(), r.figure()},
			At: [3]piece.Figure{r.figure(), r.figure(), r.figure()},
		}
	default:
		c.Pocket = &piece.Pocket{Open: r.side(), Outline: r.line(), Depth: r.figure(), Through: r.byte()%2 == 0}
	}
	return c
}

// FuzzParts makes parts and cuts of any figures: nothing panics, what is verified
// has a volume between nothing and its body, and what is not says why.
func FuzzParts(f *testing.F) {
	f.Add([]byte{0, 40, 30, 20, 0, 4, 0, 10, 60, 10, 30, 10, 0, 5, 0, 0, 0})
	f.Add([]byte{0, 40, 30, 20, 1, 5, 20, 20, 8, 20, 0, 0, 16, 4, 0, 4, 5, 0, 0, 60, 60, 10, 10, 10})
	f.Add([]byte{1, 40, 30, 20, 2, 0, 0, 0, 60, 0, 0, 60, 30, 9, 0, 40, 0, 5, 2, 2, 5, 5, 0, 40, 5, 0, 40, 40, 0, 20})
	f.Add([]byte{2, 100, 40, 40, 3, 0, 20, 0, 50, 10, 30, 80, 20, 0, 3, 5, 0, 10, 0, 0})
	f.Fuzz(func(t *testing.T, raw []byte) {
		r := &reader{raw}
		form := []piece.Form{piece.Board, piece.Outline, piece.Round}[r.byte()%3]
		part := board("b", 100, 60, 40)
		part.Form = form
		part.Length, part.Width, part.Thickness = r.figure(), r.figure(), r.figure()
		switch form {
		case piece.Outline:
			part.Outline = r.line()
			if r.byte()%2 == 0 {
				part.Holes = append(part.Holes, r.line())
			}
		case piece.Round:
			for range r.byte() % 5 {
				part.Profile = append(part.Profile, piece.ProfilePoint{Along: r.figure(), Radius: r.figure(), Bulge: float64(int8(r.byte())) / 64})
			}
		}
		var cuts []piece.Cut
		for len(r.raw) > 4 && len(cuts) < 5 {
			c := r.cut()
			c.Part = "b"
			cuts = append(cuts, c)
		}
		s := solidAsIs(part, cuts, 4)
		p := piece.Piece{Parts: []piece.Part{part}, Cuts: cuts}
		list := shape.New(&p, nil, 4).CutsOf("b")
		if shape.ContentOf(&part, list) == "" || shape.MirroredContentOf(&part, list) == "" {
			t.Error("a part without content")
		}
		shape.Boxes(&part, list, true)
		st, why := s.Status()
		if st != solid.Verified {
			if why == "" {
				t.Error("unverified without a reason")
			}
			return
		}
		body := solidAsIs(part, nil, 4)
		if st, _ := body.Status(); st != solid.Verified {
			return // an outline that touches itself: nothing to compare with
		}
		if v, most := within(s), within(body); v < -1e-2 || v > most+1e-2+1e-6*most {
			t.Errorf("volume %g of %g", v, most)
		}
		s.Volume()
	})
}
