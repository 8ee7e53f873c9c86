package font

// Point is a place in em, Y down.
type Point struct{ X, Y float64 }

// Verb is what a segment of an outline does.
type Verb uint8

// The verbs: Curve is a cubic Bézier.
const (
	Move Verb = iota
	Draw
	Curve
	Close
)

// Segment is one step of an outline. Draw and Move use To; Curve uses all.
type Segment struct {
	Verb   Verb
	C1, C2 Point
	To     Point
}

// Outline is one path of a sign: filled if Pen is zero, else drawn with a round
// pen of that width in em.
type Outline struct {
	Segments []Segment
	Pen      float64
}

// Every sign stays between these heights above and below the baseline, in em.
const (
	signTop    = 0.76
	signBottom = 0.10
)

// sketch builds the outlines of a sign with a pen that suits the weight.
type sketch struct {
	pen float64
	out []Outline
}

func (s *sketch) add(pen float64, closed bool, pts ...float64) {
	var o Outline
	o.Pen = pen
	for i := 0; i+1 < len(pts); i += 2 {
		v := Draw
		if i == 0 {
			v = Move
		}
		o.Segments = append(o.Segments, Segment{Verb: v, To: Point{pts[i], pts[i+1]}})
	}
	if closed {
		o.Segments = append(o.Segments, Segment{Verb: Close})
	}
	s.out = append(s.out, o)
}

func (s *sketch) line(pts ...float64)   { s.add(s.pen, false, pts...) }
func (s *sketch) frame(pts ...float64)  { s.add(s.pen, true, pts...) }
func (s *sketch) filled(pts ...float64) { s.add(0, true, pts...) }

// kappa is the handle length of the cubic that comes nearest to a quarter
// circle: 4/3·(√2−1).
const kappa = 0.5522847498307936

func (s *sketch) circle(x, y, r, pen float64) {
	k := float64(kappa * r)
	at := func(dx, dy float64) Point { return Point{x + dx, y + dy} }
	s.out = append(s.out, Outline{Pen: pen, Segments: []Segment{
		{Verb: Move, To: at(r, 0)},
		{Verb: Curve, C1: at(r, k), C2: at(k, r), To: at(0, r)},
		{Verb: Curve, C1: at(-k, r), C2: at(-r, k), To: at(-r, 0)},
		{Verb: Curve, C1: at(-r, -k), C2: at(-k, -r), To: at(0, -r)},
		{Verb: Curve, C1: at(k, -r), C2: at(r, -k), To: at(r, 0)},
		{Verb: Close},
	}})
}

// signs draws each sign that the faces lack and returns its advance.
var signs = map[rune]func(*sketch) float64{
	'⌀': diameter,
	'→': func(s *sketch) float64 { return arrow(s, 1, 0) },
	'←': func(s *sketch) float64 { return arrow(s, -1, 0) },
	'↑': func(s *sketch) float64 { return arrow(s, 0, -1) },
	'↓': func(s *sketch) float64 { return arrow(s, 0, 1) },
	'↔': func(s *sketch) float64 { arrow(s, 1, 0); return arrow(s, -1, 0) },
	'☐': checkbox,
	'☑': func(s *sketch) float64 { s.line(0.22, -0.33, 0.38, -0.15, 0.66, -0.55); return checkbox(s) },
	'☒': func(s *sketch) float64 {
		s.line(0.25, -0.53, 0.63, -0.15)
		s.line(0.63, -0.53, 0.25, -0.15)
		return checkbox(s)
	},
	'✓': func(s *sketch) float64 { s.line(0.10, -0.30, 0.30, -0.06, 0.68, -0.62); return 0.78 },
	'✗': func(s *sketch) float64 {
		s.line(0.12, -0.60, 0.62, -0.04)
		s.line(0.62, -0.60, 0.12, -0.04)
		return 0.74
	},
	'⚠': warning,
	'■': func(s *sketch) float64 { s.filled(0.09, -0.64, 0.69, -0.64, 0.69, -0.04, 0.09, -0.04); return 0.78 },
	'▲': func(s *sketch) float64 { s.filled(0.44, -0.68, 0.83, 0, 0.05, 0); return 0.88 },
	'▼': func(s *sketch) float64 { s.filled(0.05, -0.66, 0.83, -0.66, 0.44, 0.02); return 0.88 },
	'●': func(s *sketch) float64 { s.circle(0.38, -0.334, 0.30, 0); return 0.76 },
	'○': func(s *sketch) float64 { s.circle(0.38, -0.334, 0.28, s.pen); return 0.76 },
	'◆': func(s *sketch) float64 { s.filled(0.40, -0.70, 0.76, -0.334, 0.40, 0.03, 0.04, -0.334); return 0.80 },
	'□': func(s *sketch) float64 { s.frame(0.11, -0.62, 0.67, -0.62, 0.67, -0.06, 0.11, -0.06); return 0.78 },
	'′': func(s *sketch) float64 { s.line(0.19, -0.70, 0.11, -0.47); return 0.28 },
	'″': func(s *sketch) float64 {
		s.line(0.19, -0.70, 0.11, -0.47)
		s.line(0.37, -0.70, 0.29, -0.47)
		return 0.46
	},
	'∠': func(s *sketch) float64 { s.line(0.60, -0.62, 0.08, -0.04, 0.70, -0.04); return 0.76 },
	'⟂': func(s *sketch) float64 {
		s.line(0.38, -0.64, 0.38, -0.04)
		s.line(0.08, -0.04, 0.68, -0.04)
		return 0.76
	},
}

func diameter(s *sketch) float64 {
	s.circle(0.38, -0.334, 0.27, s.pen)
	s.line(0.12, 0.03, 0.64, -0.70)
	return 0.76
}

func checkbox(s *sketch) float64 {
	s.frame(0.08, -0.70, 0.80, -0.70, 0.80, 0.02, 0.08, 0.02)
	return 0.88
}

func warning(s *sketch) float64 {
	s.frame(0.49, -0.68, 0.91, 0.02, 0.07, 0.02)
	s.line(0.49, -0.42, 0.49, -0.24)
	s.circle(0.49, -0.105, float64(s.pen*0.62), 0)
	return 0.98
}

// arrow draws an arrow along (dx, dy), centred on the middle of the capitals.
func arrow(s *sketch, dx, dy float64) float64 {
	const cx, cy, half, head = 0.44, -0.32, 0.36, 0.19
	at := func(along, across float64) (x, y float64) {
		x = cx + float64(along*dx) - float64(across*dy)
		y = cy + float64(along*dy) + float64(across*dx)
		return x, y
	}
	tailX, tailY := at(-half, 0)
	tipX, tipY := at(half, 0)
	aX, aY := at(half-head, -head)
	bX, bY := at(half-head, head)
	s.line(tailX, tailY, tipX, tipY)
	s.line(aX, aY, tipX, tipY, bX, bY)
	return 0.88
}

// HasSign reports whether the sign is drawn as an outline.
func HasSign(r rune) bool { return signs[r] != nil }

// signOutlines draws a sign, or the empty box for a character that is missing.
func signOutlines(r rune, bold bool) ([]Outline, float64) {
	s := &sketch{pen: 0.075}
	if bold {
		s.pen = 0.115
	}
	if draw := signs[r]; draw != nil {
		width := draw(s)
		return s.out, width
	}
	s.add(0.05, true, 0.10, -0.68, 0.52, -0.68, 0.52, 0, 0.10, 0)
	return s.out, 0.62
}
