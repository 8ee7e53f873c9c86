package hidden

import (
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// sliced reports whether a slot's opening at an end of its run is gone: a mitre or
// another slice has taken the part's end off there, and what is seen of the slot lies
// in the sloping face.
func (j *judge) sliced(s bodies.Slot, side piece.Side) bool {
	_, across := s.Footprint()
	deep := bodies.Span{Low: 0, High: s.Depth.Nm}
	if s.High {
		whole := s.Whole(s.Axis)
		deep = bodies.Span{Low: whole - s.Depth.Nm, High: whole}
	}
	for _, c := range j.index.Cuts(s.Part.Address) {
		if c.Slice != nil && c.Slice.Off == side && beyond(c.Slice, s, across, deep) {
			return true
		}
	}
	return false
}

// beyond reports whether all corners of an opening lie beyond a slice.
func beyond(c *piece.Slice, s bodies.Slot, across, deep bodies.Span) bool {
	axis, high := c.Off.Axis()
	end := 0.0
	if high {
		end = float64(s.Whole(axis))
	}
	taken := false
	for _, u := range [2]unit.Length{across.Low, across.High} {
		for _, v := range [2]unit.Length{deep.Low, deep.High} {
			first, second := float64(u), float64(v)
			if s.Axis < s.Across {
				first, second = second, first
			}
			off := crossing(c, first, second) - end
			if high {
				off = -off
			}
			if off < 0 {
				return false
			}
			taken = taken || off > 0
		}
	}
	return taken
}

// crossing is where a slice's plane crosses its side's axis, in nanometres.
func crossing(c *piece.Slice, first, second float64) float64 {
	at := float64(c.At[0].Nm)
	for k, place := range [2]float64{first, second} {
		from, to := float64(c.From[k].Nm), float64(c.To[k].Nm)
		if from != to {
			at += float64(float64(c.At[1+k].Nm-c.At[0].Nm) * ((place - from) / (to - from)))
		}
	}
	return at
}
