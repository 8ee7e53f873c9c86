package drawing

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/font"
	"scantling/internal/geom/hidden"
	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/message"
	"scantling/internal/output/exploded"
	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// Look is which way the whole piece, or a group of it, is seen.
type Look string

// The looks.
const (
	LookIsometric Look = "isometric"
	LookFront     Look = "front"
	LookRight     Look = "right"
	LookTop       Look = "top"
)

// camera returns the look's direction of sight.
func (l Look) camera() camera {
	switch l {
	case LookFront:
		return camera{right: vec.V3{X: 1}, up: vec.V3{Z: 1}}
	case LookRight:
		return camera{right: vec.V3{Y: 1}, up: vec.V3{Z: 1}}
	case LookTop:
		return camera{right: vec.V3{X: 1}, up: vec.V3{Y: 1}}
	}
	return isometric()
}

// WholeOptions choose what is drawn of the whole.
type WholeOptions struct {
	Look Look
	// Group limits the view to one group; "" is everything.
	Group address.Address
	// Spread pulls the groups apart along the way that they slide, in millimetres
	// of wood for each step out; 0 draws them in place.
	Spread float64
	// Stairs pulls each further member of a repeated group out less than the one
	// before, so that all show what they hold.
	Stairs bool
	// Apart moves every part away from the middle of all that is drawn, by that
	// share of its distance; groups inside are lifted out besides.
	Apart float64
	// Gap draws everything out the way it slides off in the plan's removals, and by
	// that share of the whole's greatest size clear of the rest; later-removed less
	// far. Where the plan has no removals of the group, Apart serves.
	Gap float64
	// Marks writes the parts' marks on them.
	Marks bool
}

// Whole draws the piece, or one of its groups, in a room of that size on paper.
func Whole(p *plan.Plan, s Solids, o WholeOptions, roomWidth, roomHeight float64, speech Speech) page.Drawing {
	cam := o.Look.camera()
	var moved map[address.Address]vec.V3
	drawn := false
	if o.Gap > 0 {
		moved, drawn = exploded.Of(p, o.Group, o.Gap)
	}
	var placed []solid.Placed
	var parts []piece.Part
	for _, part := range p.Piece.Parts {
		if !o.Group.Has(part.Address) {
			continue
		}
		if body := s.Solid(part.Address); drawn && body != nil { // as it is glued up
			frame := part.Placed()
			frame.Origin = frame.Origin.Add(moved[part.Address])
			placed, parts = append(placed, solid.Placed{Solid: body, Frame: frame}), append(parts, part)
			continue
		}
		for _, body := range s.Ready(part.Address) {
			body.Frame.Origin = body.Frame.Origin.Add(vec.V3{Y: -float64(o.Spread * slides(p, part, o.Stairs))}).Add(o.apart(p, part))
			placed, parts = append(placed, body), append(parts, part)
		}
	}
	seen := hidden.Draw(placed, hidden.View{Sight: cam.toward().Mul(-1), Up: cam.up})
	low, high := extent(seen.Strokes)
	var out page.Drawing
	out.Name = p.Piece.Name
	out.Alt = speech.Say(message.New("drawing.whole-alt", message.Text("piece", p.Piece.Name), message.Count("parts", len(parts))))
	if len(seen.Strokes) == 0 {
		return out
	}
	scale := min(roomWidth/(high.X-low.X), roomHeight/(high.Y-low.Y))
	pl := place{scale: scale, origin: page.Point{X: -float64(low.X * scale), Y: float64(high.Y * scale)}}
	pl.add(&out, seen.Strokes, page.W035, func(st hidden.Stroke) string { return string(parts[st.Solid].Address) })
	if o.Marks {
		writeMarks(&out, p, pl, cam, placed, parts, seen.Strokes, speech)
	}
	return out
}

// slides returns how many steps a part is pulled out to the front: one for each
// group that it moves in, less for later members where they make stairs.
func slides(p *plan.Plan, part piece.Part, stairs bool) float64 {
	n := 0.0
	for _, g := range p.Piece.Groups {
		if g.Inside == "" || !g.Address.Has(part.Address) {
			continue
		}
		if stairs && g.Of > 1 {
			n += float64(g.Of-g.Nth+1) / float64(g.Of)
			continue
		}
		n++
	}
	return n
}

// apart returns how far a part is moved from the middle of the group drawn.
func (o WholeOptions) apart(p *plan.Plan, part piece.Part) vec.V3 {
	if o.Apart == 0 {
		return vec.V3{}
	}
	low, high := bounds(p, o.Group)
	var out [3]float64
	for axis, e := range part.Extent {
		middle := float64((e.Low.Nm.Millimetres() + e.High.Nm.Millimetres()) / 2)
		out[axis] = float64((middle - float64((low[axis]+high[axis])/2)) * o.Apart)
	}
	if part.Group != o.Group && o.Group.Has(part.Group) {
		out[piece.Up] += float64((high[piece.Up] - low[piece.Up]) * (1 + o.Apart))
	}
	return vec.V3{X: out[0], Y: out[1], Z: out[2]}
}

// bounds returns the box round the parts of a group, in millimetres.
func bounds(p *plan.Plan, group address.Address) (low, high [3]float64) {
	first := true
	for _, part := range p.Piece.Parts {
		if !group.Has(part.Address) {
			continue
		}
		for axis, e := range part.Extent {
			a, b := e.Low.Nm.Millimetres(), p.Piece.Shut(part.Address, piece.Axis(axis), e.High.Nm).Millimetres()
			if first || a < low[axis] {
				low[axis] = a
			}
			if first || b > high[axis] {
				high[axis] = b
			}
		}
		first = false
	}
	return low, high
}

// writeMarks writes one mark for each row, on the member that shows the largest
// face, in a small plate of paper so that no line runs through it.
func writeMarks(out *page.Drawing, p *plan.Plan, pl place, cam camera, placed []solid.Placed, parts []piece.Part, strokes []hidden.Stroke, speech Speech) {
	visible := map[int]float64{}
	for _, st := range strokes {
		if !st.Hidden {
			visible[st.Solid] += float64((st.To.X-st.From.X)*(st.To.X-st.From.X)) + float64((st.To.Y-st.From.Y)*(st.To.Y-st.From.Y))
		}
	}
	type plate struct {
		mark, address string
		at            page.Point
	}
	var plates []plate
	for _, row := range p.Parts {
		best := -1
		for i, part := range parts {
			if slices.Contains(row.Members, part.Address) && visible[i] > 0 && (best < 0 || visible[i] > visible[best]) {
				best = i
			}
		}
		if best < 0 {
			continue
		}
		plates = append(plates, plate{row.Mark, string(parts[best].Address), faceShown(pl, cam, best, parts, placed)})
	}
	slices.SortStableFunc(plates, func(a, b plate) int { return cmp.Compare(a.at.Y, b.at.Y) })
	var taken []page.Box
	const size = 3.4
	for _, m := range plates {
		w := page.TextWidth(font.Bold, size, m.mark) + 1.6
		box := page.NewBox(m.at.X-float64(w/2), m.at.Y-size/2-0.6, w, size+1.2)
		for slices.ContainsFunc(taken, func(b page.Box) bool { return overlaps(b, box) }) {
			box = box.Move(page.Point{Y: size + 1.6})
		}
		taken = append(taken, box)
		out.Add(m.address, page.Fill{Path: page.Rectangle(box), Colour: page.Ground})
		out.Add(m.address, page.Stroke{Path: page.Rectangle(box), Width: page.W018, Colour: page.Ink})
		out.Add(m.address, page.Text{At: page.Point{X: box.Centre().X, Y: box.Max.Y - 1.5}, Size: size, Weight: font.Bold, Align: page.Middle, Colour: page.Ink, String: speech.Own(m.mark)})
	}
}

func overlaps(a, b page.Box) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}

// faceShown returns the paper point where a mark stands on a part: on the side
// that looks most toward the eye, as near to its middle as the part is not hidden
// by others.
func faceShown(pl place, cam camera, k int, parts []piece.Part, placed []solid.Placed) page.Point {
	eye := cam.toward()
	part, frame := parts[k], placed[k].Frame
	size := vec.Of(part.Length.Nm, part.Width.Nm, part.Thickness.Nm)
	axes := [3]vec.V3{frame.U, frame.V, frame.W}
	sizes := [3]float64{size.X, size.Y, size.Z}
	best, shown := 0, 0.0
	for i, axis := range axes {
		area := sizes[(i+1)%3] * sizes[(i+2)%3]
		if a := axis.Dot(eye) * area; abs(a) > abs(shown) {
			best, shown = i, a
		}
	}
	half := sizes[best] / 2
	if shown < 0 {
		half = -half
	}
	middle := frame.ToWorld(size.Mul(0.5)).Add(axes[best].Mul(half))
	u, v := axes[(best+1)%3].Mul(sizes[(best+1)%3]), axes[(best+2)%3].Mul(sizes[(best+2)%3])
	at := middle
	for _, t := range markPlaces {
		p := middle.Add(u.Mul(t[0])).Add(v.Mul(t[1]))
		if !covered(p, eye, k, placed) {
			at = p
			break
		}
	}
	flat := cam.flat(at)
	return pl.at(polygon.P2{X: flat.X, Y: flat.Y})
}

// markPlaces are where a mark may stand on a side, in shares of its sizes from
// the middle, nearest first.
var markPlaces = [][2]float64{
	{0, 0}, {0.15, 0}, {-0.15, 0}, {0, 0.15}, {0, -0.15}, {0.3, 0}, {-0.3, 0}, {0, 0.3}, {0, -0.3},
	{0.3, 0.3}, {-0.3, 0.3}, {0.3, -0.3}, {-0.3, -0.3}, {0.42, 0}, {-0.42, 0}, {0, 0.42}, {0, -0.42},
	{0.42, 0.42}, {-0.42, 0.42}, {0.42, -0.42}, {-0.42, -0.42},
}

// covered reports whether another solid stands between a point and the eye.
func covered(p, eye vec.V3, k int, placed []solid.Placed) bool {
	for i, other := range placed {
		if i == k {
			continue
		}
		f := other.Frame
		o, d := f.ToLocal(p), vec.V3{X: eye.Dot(f.U), Y: eye.Dot(f.V), Z: eye.Dot(f.W)}
		for _, in := range other.Solid.Intervals(o, d) {
			if in.Leave > 1e-3 {
				return true
			}
		}
	}
	return false
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}
