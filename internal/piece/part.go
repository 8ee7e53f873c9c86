package piece

import (
	"math"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/geom/vec"
	"scantling/internal/unit"
)

// Axis is an axis of the piece.
type Axis int

// The piece's axes.
const (
	Right Axis = iota // from left to right
	Back              // from front to back
	Up                // from bottom to top
)

// Direction is one of the six ways along the piece's axes.
type Direction string

// The six directions.
const (
	ToRight Direction = "right"
	ToLeft  Direction = "left"
	ToBack  Direction = "back"
	ToFront Direction = "front"
	ToUp    Direction = "up"
	ToDown  Direction = "down"
)

// Axis returns the axis of the direction and whether it runs along it (+1) or
// against it (-1).
func (d Direction) Axis() (Axis, int) {
	switch d {
	case ToRight:
		return Right, 1
	case ToLeft:
		return Right, -1
	case ToBack:
		return Back, 1
	case ToFront:
		return Back, -1
	case ToUp:
		return Up, 1
	}
	return Up, -1
}

// Opposite returns the other way.
func (d Direction) Opposite() Direction {
	a, s := d.Axis()
	return Toward(a, -s)
}

// Toward returns the direction along an axis; sign +1 or -1.
func Toward(a Axis, sign int) Direction {
	pairs := [3][2]Direction{{ToRight, ToLeft}, {ToBack, ToFront}, {ToUp, ToDown}}
	if sign < 0 {
		return pairs[a][1]
	}
	return pairs[a][0]
}

// Form is what kind of thing a part is.
type Form string

// The forms.
const (
	Board   Form = "board"   // a rectangular board or a piece of sheet
	Outline Form = "outline" // an extruded outline
	Round   Form = "round"   // turned
	Bought  Form = "bought"  // comes as it is
)

// Local is a local axis of a part.
type Local int

// The local axes.
const (
	AlongLength Local = iota
	AlongWidth
	AlongThickness
)

// Frame lays a part's local axes along the piece's: the directions in which
// length, width and thickness grow, right-handed, from the local origin.
type Frame struct {
	Length    Direction `json:"length"`
	Width     Direction `json:"width"`
	Thickness Direction `json:"thickness"`
}

// Directions returns the three directions by local axis.
func (f Frame) Directions() [3]Direction { return [3]Direction{f.Length, f.Width, f.Thickness} }

// Part is one piece of timber or sheet, as finished. Its uncut body is the box
// Extent; cuts take away from that.
type Part struct {
	Address address.Address `json:"address"`
	// Name is the document's word for the role: "side", "tray".
	Name  string          `json:"name"`
	Label string          `json:"label,omitempty"`
	Group address.Address `json:"group,omitempty"`
	Form  Form            `json:"form"`
	// Material names the material's role.
	Material string `json:"material"`
	// Extent is the uncut body along right, back and up, with what joints add.
	Extent [3]Extent `json:"extent"`
	Frame  Frame     `json:"frame"`
	// Length, Width, Thickness are the sizes of the uncut body, by local axis.
	Length    Figure `json:"length"`
	Width     Figure `json:"width"`
	Thickness Figure `json:"thickness"`
	// Hand is "left" or "right" for a handed part of a pair, else "".
	Hand string `json:"hand,omitempty"`
	// Twin is the other part of the pair.
	Twin address.Address `json:"twin,omitempty"`
	// Show is the direction of the face that shows, "" if none does.
	Show Direction `json:"show,omitempty"`
	// Outline is set for Form Outline, in the plane of length and width.
	Outline []OutlinePoint `json:"outline,omitempty"`
	// Holes are closed lines inside the outline, clockwise.
	Holes [][]OutlinePoint `json:"holes,omitempty"`
	// Profile is set for Form Round: the radius along the length, from end 1 on;
	// without it a cylinder as thick as the part is wide.
	Profile []ProfilePoint `json:"profile,omitempty"`
	// Tilt turns the part, as drawn by Extent and Frame, out of the piece's axes.
	Tilt *Tilt `json:"tilt,omitempty"`
	// Cut says that the record has the part as cut: its sizes are frozen.
	Cut bool `json:"cut,omitempty"`
	// CutAfter names measures that must be taken before this part is cut to size.
	CutAfter []address.Address `json:"cutAfter,omitempty"`
	Where    diag.Place        `json:"where"`
}

// OutlinePoint is a corner of an outline in local length and width, with the
// bulge of the side that leaves it (0 straight; tan of a quarter of the arc).
type OutlinePoint struct {
	Along  Figure  `json:"along"`
	Across Figure  `json:"across"`
	Bulge  float64 `json:"bulge,omitempty"`
}

// ProfilePoint is a corner of a turned part's profile: radius at a station along
// the length, with the bulge of the stretch that leaves it: positive swells outwards.
type ProfilePoint struct {
	Along  Figure  `json:"along"`
	Radius Figure  `json:"radius"`
	Bulge  float64 `json:"bulge,omitempty"`
}

// Tilt is a turn about an axis of the piece through a point, by an angle in
// degrees, anticlockwise when looking against the axis. Tilts of a splayed leg
// follow one another: the last is done last.
type Tilt struct {
	About   Axis      `json:"about"`
	Through [3]Figure `json:"through"`
	Degrees float64   `json:"degrees"`
	Then    *Tilt     `json:"then,omitempty"`
}

// Sizes returns length, width and thickness by local axis.
func (p Part) Sizes() [3]Figure { return [3]Figure{p.Length, p.Width, p.Thickness} }

// Origin returns the piece coordinate of the local origin along each axis.
func (p Part) Origin() [3]unit.Length {
	var o [3]unit.Length
	for _, d := range p.Frame.Directions() {
		axis, sign := d.Axis()
		if sign > 0 {
			o[axis] = p.Extent[axis].Low.Nm
		} else {
			o[axis] = p.Extent[axis].High.Nm
		}
	}
	return o
}

// Placed returns the part's frame in the piece, in millimetres, with its tilts.
func (p Part) Placed() vec.Frame {
	o := p.Origin()
	f := vec.Frame{
		Origin: vec.Of(o[0], o[1], o[2]),
		U:      direction(p.Frame.Length),
		V:      direction(p.Frame.Width),
		W:      direction(p.Frame.Thickness),
	}
	for t := p.Tilt; t != nil; t = t.Then {
		f = t.turn(f)
	}
	return f
}

// turn turns a frame about the tilt's axis.
func (t *Tilt) turn(f vec.Frame) vec.Frame {
	sin, cos := math.Sincos(float64(t.Degrees * math.Pi / 180))
	a, b := (t.About+1)%3, (t.About+2)%3
	round := func(v vec.V3) vec.V3 {
		c := [3]float64{v.X, v.Y, v.Z}
		c[a], c[b] = float64(cos*c[a])-float64(sin*c[b]), float64(sin*c[a])+float64(cos*c[b])
		return vec.V3{X: c[0], Y: c[1], Z: c[2]}
	}
	at := vec.Of(t.Through[0].Nm, t.Through[1].Nm, t.Through[2].Nm)
	return vec.Frame{Origin: at.Add(round(f.Origin.Sub(at))), U: round(f.U), V: round(f.V), W: round(f.W)}
}

func direction(d Direction) vec.V3 {
	axis, sign := d.Axis()
	var v [3]float64
	v[axis] = float64(sign)
	return vec.V3{X: v[0], Y: v[1], Z: v[2]}
}

// LocalOf returns the local axis that lies along a piece axis, and +1 if it
// grows the same way.
func (f Frame) LocalOf(a Axis) (Local, int) {
	for i, d := range f.Directions() {
		if axis, sign := d.Axis(); axis == a {
			return Local(i), sign
		}
	}
	return AlongLength, 1
}

// SideToward returns the local side of the part that faces the direction.
func (f Frame) SideToward(d Direction) Side {
	axis, sign := d.Axis()
	local, grows := f.LocalOf(axis)
	return SideOf(local, sign == grows)
}
