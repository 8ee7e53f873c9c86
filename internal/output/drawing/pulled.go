package drawing

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/geom/hidden"
	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/message"
	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// Pulled is a piece seen with some of its parts pulled out, as a joint is drawn.
type Pulled struct {
	// By is how far each part is moved, in millimetres of the piece.
	By map[address.Address]vec.V3
	// Toward points from the work to the eye.
	Toward vec.V3
	// Through shows hidden edges, dashed.
	Through bool
	// Factor is millimetres of paper for one of wood.
	Factor float64
}

// Joint draws a piece with parts pulled out, each with its mark and an arrow along
// its grain.
func Joint(p *plan.Plan, s Solids, o Pulled, speech Speech) page.Drawing {
	eye := o.Toward.Unit()
	right := vec.V3{Z: 1}.Cross(eye).Unit()
	cam := camera{right: right, up: eye.Cross(right)}
	var placed []solid.Placed
	var parts []piece.Part
	for _, part := range p.Piece.Parts {
		if body := s.Solid(part.Address); body != nil {
			frame := part.Placed()
			frame.Origin = frame.Origin.Add(o.By[part.Address])
			placed, parts = append(placed, solid.Placed{Solid: body, Frame: frame}), append(parts, part)
		}
	}
	seen := hidden.Draw(placed, hidden.View{Sight: eye.Mul(-1), Up: cam.up, Hidden: o.Through})
	low, high := extent(seen.Strokes)
	out := page.Drawing{Name: p.Piece.Name, Alt: speech.Say(message.New("drawing.whole-alt", message.Text("piece", p.Piece.Name), message.Count("parts", len(parts))))}
	if len(seen.Strokes) == 0 {
		return out
	}
	pl := place{scale: o.Factor, origin: page.Point{X: -float64(low.X * o.Factor), Y: float64(high.Y * o.Factor)}}
	pl.add(&out, seen.Strokes, page.W035, func(st hidden.Stroke) string { return string(parts[st.Solid].Address) })
	for i := range parts {
		if !slices.ContainsFunc(p.Piece.Materials, func(m piece.Material) bool { return m.Name == parts[i].Material && m.Sheet }) {
			grainOn(&out, pl, cam, i, parts, placed)
		}
	}
	if !o.Through {
		writeMarks(&out, p, pl, cam, placed, parts, seen.Strokes, speech)
	}
	return out
}

// grainOn draws a double arrow along the grain on the side of a part that shows
// most, where there is bare wood under it.
func grainOn(out *page.Drawing, pl place, cam camera, k int, parts []piece.Part, placed []solid.Placed) {
	const long, tip = 11.0, 1.9
	eye, part, frame := cam.toward(), parts[k], placed[k].Frame
	size := vec.Of(part.Length.Nm, part.Width.Nm, part.Thickness.Nm)
	along := flatten(cam.flat(frame.U))
	if along.Norm()*pl.scale*size.X < 8 {
		return // seen from the end
	}
	reach := min(long/(along.Norm()*pl.scale), float64(0.5*size.X)) / 2
	sides := [2]struct {
		axis  vec.V3
		reach float64
		other vec.V3
		width float64
	}{{frame.W, size.Z, frame.V, size.Y}, {frame.V, size.Y, frame.W, size.Z}}
	if abs(frame.V.Dot(eye)*size.Z) > abs(frame.W.Dot(eye)*size.Y) {
		sides[0], sides[1] = sides[1], sides[0]
	}
	for _, side := range sides {
		half := side.reach / 2 // from the middle of the part out to the side that shows
		if side.axis.Dot(eye) < 0 {
			half = -half
		}
		middle := frame.ToWorld(size.Mul(0.5)).Add(side.axis.Mul(half))
		for _, t := range arrowPlaces {
			at := middle.Add(frame.U.Mul(float64(t[0] * size.X))).Add(side.other.Mul(float64(t[1] * side.width)))
			a, b := at.Sub(frame.U.Mul(reach)), at.Add(frame.U.Mul(reach))
			if !bare(a, eye, k, placed) || !bare(b, eye, k, placed) || !bare(at, eye, k, placed) {
				continue
			}
			doubleArrow(out, pl.at(flatten(cam.flat(a))), pl.at(flatten(cam.flat(b))), tip, 0.4*tip, string(part.Address))
			return
		}
	}
}

// arrowPlaces are where an arrow may stand on a side, in shares of its sizes from
// the middle.
var arrowPlaces = [][2]float64{
	{0, -0.3}, {0, 0.3}, {0, 0}, {0.25, -0.3}, {-0.25, -0.3}, {0.25, 0.3}, {-0.25, 0.3}, {0.25, 0}, {-0.25, 0}, {0.36, 0}, {-0.36, 0}, {0.36, 0.36}, {-0.36, -0.36},
}

func flatten(p page.Point) polygon.P2 { return polygon.P2{X: p.X, Y: p.Y} }

// bare reports whether a point of a part's side has wood behind it and nothing
// before it.
func bare(p, eye vec.V3, k int, placed []solid.Placed) bool {
	f := placed[k].Frame
	o, d := f.ToLocal(p), vec.V3{X: eye.Dot(f.U), Y: eye.Dot(f.V), Z: eye.Dot(f.W)}
	wood := false
	for _, in := range placed[k].Solid.Intervals(o, d) {
		if in.Leave > 1e-3 {
			return false
		}
		wood = wood || in.Leave > -1e-3
	}
	return wood && !covered(p, eye, k, placed)
}
