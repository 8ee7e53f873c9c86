package page

import (
	"math"
	"slices"
)

// MinPitch is the closest that the lines of a hatch may lie, in millimetres.
const MinPitch = 0.5

// maxHatch bounds the lines of one hatch; a larger area gets a wider pitch.
const maxHatch = 2000

// Lines returns the lines of the hatch, cut off at the area's outline, in order.
// They are taken from one grid through the origin of the drawing, so that the
// hatches of neighbours with one angle and pitch run through.
func (h Hatch) Lines() (lines [][2]Point) {
	if !finite(h.Angle, h.Pitch) {
		return nil
	}
	pitch := max(h.Pitch, MinPitch)
	edges, low, high := h.turned()
	if len(edges) == 0 {
		return nil
	}
	if n := (high - low) / pitch; n > maxHatch {
		pitch *= math.Ceil(n / maxHatch)
	}
	for k := math.Ceil(low / pitch); float64(k*pitch) < high; k++ {
		// Half a grid off the corners, so that a line along an edge is rare.
		y := float64(k*pitch) + float64(pitch*0.37)
		var xs []float64
		for _, e := range edges {
			if (e[0].Y <= y) != (e[1].Y <= y) {
				xs = append(xs, e[0].X+float64((e[1].X-e[0].X)*((y-e[0].Y)/(e[1].Y-e[0].Y))))
			}
		}
		slices.Sort(xs)
		for i := 0; i+1 < len(xs); i += 2 {
			if xs[i+1]-xs[i] > 0.05 {
				lines = append(lines, [2]Point{Point{xs[i], y}.Turn(h.Angle), Point{xs[i+1], y}.Turn(h.Angle)})
			}
		}
	}
	return lines
}

// turned returns the outline's edges in a frame whose X runs along the hatch,
// and the range of their Y.
func (h Hatch) turned() (edges [][2]Point, low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, line := range h.Path.Flatten(0.05) {
		for i := range line {
			a, b := line[i].Turn(-h.Angle), line[(i+1)%len(line)].Turn(-h.Angle)
			if !finite(a.X, a.Y, b.X, b.Y) {
				return nil, 0, 0
			}
			edges = append(edges, [2]Point{a, b})
			low, high = min(low, a.Y), max(high, a.Y)
		}
	}
	return edges, low, high
}
