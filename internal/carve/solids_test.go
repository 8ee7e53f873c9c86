package carve_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"scantling/internal/document"
	"scantling/internal/evaluate"
	"scantling/internal/geom/vec"
	"scantling/internal/piece"
	"scantling/internal/shape"
)

const head = `scantling = 1

piece "Test" {
  units = "mm"
}

material "wood" {
  asks      = "cherry board"
  thickness = 20
}
`

// board is 400 x 140 x 20 with its grain to the right.
const board = head + `
part "board" {
  of     = material.wood
  grain  = "right"
  left   = 0
  wide   = 400
  front  = 0
  deep   = 140
  bottom = 0
}
`

func evaluated(t *testing.T, text string) evaluate.Result {
	t.Helper()
	r := evaluate.Piece(evaluate.Sources{Document: document.Source{Name: "x", Text: []byte(text)}})
	for _, d := range r.Diagnostics {
		t.Fatalf("line %d: %s %+v\n%s", d.Where.Line, d.Code, d.Text.Args, text)
	}
	for _, d := range r.Ledger.Verify() {
		t.Error(d)
	}
	return r
}

// volumes returns the wood of each part, from the kernel.
func volumes(t *testing.T, p *piece.Piece) []float64 {
	t.Helper()
	var out []float64
	for _, s := range shape.New(p, nil, shape.DrawingFacets).All() {
		if ok, why := s.Verified(); !ok {
			t.Errorf("%s: %s", s.Part.Address, why)
		}
		out = append(out, s.Solid.Volume())
	}
	return out
}

// TestTaken holds the wood that a cut takes against a formula of its words, worked
// out by hand.
func TestTaken(t *testing.T) {
	const whole = 400 * 140 * 20.0
	rad := math.Pi / 180
	segment := func(r, d float64) float64 { // of a circle, d high
		return r*r*math.Acos(1-d/r) - (r-d)*math.Sqrt(2*r*d-d*d)
	}
	// What a ball of radius r leaves when it is sunk d deep: a cap (Archimedes).
	ball := func(r, d float64) float64 { return math.Pi * d * d * (3*r - d) / 3 }
	for name, c := range map[string]struct {
		words string
		taken float64
	}{
		"V channel by width":  {`kind = "V channel"; side = "top"; centre = 40; width = 8; angle = "90 deg"`, 400 * 8 * 4 / 2},
		"V channel by depth":  {`kind = "V channel"; side = "top"; centre = 40; depth = 6; angle = 60`, 400 * 36 * math.Tan(30*rad)},
		"V channel by both":   {`kind = "V channel"; side = "bottom"; near = 40; far = 46; depth = 5`, 400 * 6 * 5 / 2},
		"mortise, square":     {`kind = "mortise"; side = "top"; centre = 60; width = 8; from = 50; length = 40; depth = 12`, 8 * 40 * 12},
		"mortise, round":      {`kind = "mortise"; side = "front"; near = 6; width = 8; middle = 200; length = 40; depth = 12; ends = "round"`, (8*32 + math.Pi*16) * 12},
		"mortise, through":    {`kind = "mortise"; side = "top"; runs = "back"; far = 60; width = 8; to = 100; length = 40; through = true`, 8 * 40 * 20},
		"recess":              {`kind = "recess"; side = "top"; near = 40; far = 80; from = 100; to = 160; depth = 6; corner = 5`, (40*60 - (4-math.Pi)*25) * 6},
		"channel, ball ends":  {`kind = "channel"; side = "top"; centre = 40; width = 12; radius = 6; depth = 6; from = 30; holds = 176; play = 2`, 178*math.Pi*18 + ball(6, 6)},
		"channel, shallow":    {`kind = "channel"; side = "top"; centre = 40; width = 12; radius = 6; depth = 2; from = 30; holds = 178`, 178*segment(6, 2) + ball(6, 2)},
		"taper, leaves":       {`kind = "taper"; sides = ["front"]; end = "right"; from = 100; leaves = 90`, 300 * 50 * 20 / 2},
		"taper, two sides":    {`kind = "taper"; sides = ["front", "back"]; end = "left"; from = 300; leaves = 100`, 300 * 40 * 20 / 2},
		"taper, angle":        {`kind = "taper"; sides = "top"; end = "left"; angle = 1`, 400 * 400 * math.Tan(rad) * 140 / 2},
		"bevel":               {`kind = "bevel"; edge = "front"; keeps = "top"; angle = "15 deg"`, 20 * 20 * math.Tan(15*rad) * 400 / 2},
		"bevel by":            {`kind = "bevel"; edge = "back"; keeps = "bottom"; by = 6`, 6 * 20 * 400 / 2},
		"mitre":               {`kind = "mitre"; end = "left"; keeps = "back"`, 140 * 140 * 20 / 2},
		"mitre by a slope":    {`kind = "mitre"; end = "right"; keeps = "top"; angle = "1:8"`, 20 * 2.5 * 140 / 2},
		"compound angle":      {`kind = "compound angle"; end = "right"; angles = { front = 5, top = "12 deg" }`, 140 * 20 * (140*math.Tan(5*rad) + 20*math.Tan(12*rad)) / 2},
		"notch of an outline": {`kind = "notch"; side = "top"; outline = [[360, 140], [360, 120], { through = [370, 110] }, [380, 120], [380, 140]]; through = true`, (20*20 + math.Pi*50) * 20},
		"recess of a circle":  {`kind = "recess"; side = "bottom"; outline = [[80, 60], { through = [100, 80] }, [120, 60], { through = [100, 40] }]; depth = 5`, math.Pi * 400 * 5},
		"arch":                {`kind = "curved outline"; edge = "back"; line = [[120, 0], { through = [200, 20] }]; symmetrical = true`, segment((80*80+20*20)/40.0, 20) * 20},
		"arched end":          {`kind = "curved outline"; edge = "left"; line = [[20, 0], { through = [70, 10] }, [120, 0]]`, segment((50*50+10*10)/20.0, 10) * 20},
		"cove, stopped":       {`kind = "cove"; edges = [["top", "right"]]; radius = 4; from = 30; to = 100`, math.Pi * 4 * 70},
		"chamfer":             {`kind = "chamfer"; edges = [["bottom", "back"]]; leg = 3`, 4.5 * 400},
		"round-over":          {`kind = "round-over"; edges = [["bottom", "back"]]; radius = 3`, (9 - math.Pi*9/4) * 400},
		// A cone from 10 to 5 across is 2.5 high at 90 degrees: a frustum.
		"countersunk hole":  {`kind = "hole"; side = "top"; at = { left = 50, back = 30 }; diameter = 5; through = true; countersink = { diameter = 10 }`, math.Pi*6.25*17.5 + math.Pi*2.5*(25+12.5+6.25)/3},
		"counterbored hole": {`kind = "hole"; side = "top"; at = { left = 50, back = 30 }; diameter = 5; depth = 15; counterbore = { diameter = 10, depth = 6 }`, math.Pi*6.25*9 + math.Pi*25*6},
	} {
		r := evaluated(t, board+"cut \"x\" {\n  on = part.board\n  "+strings.ReplaceAll(c.words, "; ", "\n  ")+"\n}\n")
		if got := whole - volumes(t, r.Piece)[0]; math.Abs(got-c.taken) > 1e-6*c.taken {
			t.Errorf("%s takes %.6f, not %.6f", name, got, c.taken)
		}
	}
}

// TestForms holds outlines and turned parts against formulas.
func TestForms(t *testing.T) {
	r := evaluated(t, head+`
part "seat" {
  of      = material.wood
  grain   = "back"
  left    = 0
  wide    = 300
  front   = 0
  deep    = 160
  bottom  = 200
  outline = [[20, 0], [280, 0], { through = [300, 80] }, [280, 160], [20, 160], { through = [0, 80] }]
  holes   = [{ centre = [60, 80], diameter = 24 }, [[200, 60], [240, 60], [240, 100], [200, 100]]]
}

part "peg" {
  of       = material.wood
  grain    = "down"
  left     = 20
  front    = 20
  diameter = 18
  bottom   = 0
  high     = 200
  profile  = [[0, 10], [40, 12], [80, 18], [200, 18]]
  leans    = [{ toward = "right", by = "8 deg", from = "bottom" }, { toward = "back", by = 5, from = "bottom" }]
}

part "dowel" {
  of       = material.wood
  grain    = "right"
  left     = 0
  wide     = 100
  front    = 400
  bottom   = 0
  diameter = 8
}
`)
	radius := (80*80 + 20*20) / 40.0
	cap := radius*radius*math.Acos(1-20/radius) - (radius-20)*80
	cone := func(h, a, b float64) float64 { return math.Pi * h * (a*a + a*b + b*b) / 3 }
	for i, want := range []float64{
		20 * (260*160 + 2*cap - math.Pi*144 - 1600),
		cone(40, 5, 6) + cone(40, 6, 9) + cone(120, 9, 9),
		math.Pi * 16 * 100,
	} {
		if got := volumes(t, r.Piece)[i]; math.Abs(got-want) > 1e-6*want {
			t.Errorf("%s has %.6f of wood, not %.6f", r.Piece.Parts[i].Address, got, want)
		}
	}
	// The foot stays: of the leg's low end the middle is where it was, the top has gone
	// to the right by the sine of 8 degrees and back by that of 5, of what is upright.
	peg := r.Piece.Parts[1]
	f := peg.Placed()
	rad := math.Pi / 180
	foot := f.ToWorld(vec3(200, 9, 9))
	top := f.ToWorld(vec3(0, 9, 9))
	want := [3]float64{29 + 200*math.Sin(8*rad), 29 + 200*math.Cos(8*rad)*math.Sin(5*rad), 200 * math.Cos(8*rad) * math.Cos(5*rad)}
	for a := range 3 {
		if math.Abs(foot.At(a)-[3]float64{29, 29, 0}[a]) > 1e-6 || math.Abs(top.At(a)-want[a]) > 1e-6 {
			t.Errorf("the leg runs from %v to %v, not to %v", foot, top, want)
			break
		}
	}
}

// TestAssembledCuts is a law: what a cut takes from boards that stand flush is what
// it takes from one board of their size, whichever way their grains run.
func TestAssembledCuts(t *testing.T) {
	const seed = 20260
	rng := rand.New(rand.NewPCG(seed, 1))
	pick := func(words ...string) string { return words[rng.IntN(len(words))] }
	between := func(low, high int) int { return low + rng.IntN(high-low) }
	some := 0
	for range 60 {
		var cut string
		switch rng.IntN(6) {
		case 0:
			cut = fmt.Sprintf("kind = %q\nside = %q\nnear = %d\nwidth = %d\ndepth = %d\n", pick("groove", "rebate"), pick("top", "bottom", "front", "back"), between(-2, 36), between(3, 40), between(3, 38))
			cut += "runs = \"right\"\n" + pick("", "from = 30\n", "from = 90\nto = 150\n")
		case 1:
			cut = fmt.Sprintf("kind = \"V channel\"\nside = %q\nruns = \"back\"\ncentre = %d\nwidth = %d\ndepth = %d\n", pick("top", "bottom"), between(5, 190), between(4, 30), between(3, 36))
		case 2:
			cut = fmt.Sprintf("kind = \"hole\"\nside = %q\nat = { left = %d, bottom = %d }\ndiameter = %d\ndepth = %d\n", pick("front", "back"), between(5, 190), between(5, 75), between(3, 20), between(3, 38))
		case 3:
			cut = fmt.Sprintf("kind = \"bevel\"\nedge = %q\nkeeps = %q\nby = %d\n", pick("top", "bottom"), pick("front", "back", "left", "right"), between(2, 70))
		case 4:
			cut = fmt.Sprintf("kind = \"compound angle\"\nend = %q\nangles = { %s = %d, %s = %d }\n", pick("left", "right"), pick("front", "back"), between(1, 40), pick("top", "bottom"), between(1, 40))
		default:
			cut = fmt.Sprintf("kind = \"notch\"\nside = %q\noutline = [[%d, 20], { through = [100, 60] }, [%d, 30], [90, %d]]\ndepth = %d\n", pick("front", "back"), between(40, 80), between(120, 190), between(-5, 15), between(3, 38))
		}
		taken := func(parts string) float64 {
			r := evaluated(t, head+"group \"g\" {\n"+parts+"}\ncut \"x\" {\non = g\n"+cut+"}\n")
			sum := 200.0 * 40 * 80
			for _, v := range volumes(t, r.Piece) {
				sum -= v
			}
			return sum
		}
		part := func(name string, left, wide, front, deep, bottom, high int) string {
			return fmt.Sprintf("part %q {\nof = material.wood\ngrain = %q\nshow = %q\nleft = %d\nwide = %d\nfront = %d\ndeep = %d\nbottom = %d\nhigh = %d\n}\n",
				name, pick("right", "left", "up", "down"), pick("front", "back"), left, wide, front, deep, bottom, high)
		}
		x, z := between(20, 180), between(20, 60)
		one := taken(part("a", 0, 200, 0, 20, 0, 80) + part("b", 0, 200, 20, 20, 0, 80))
		many := taken(part("a", 0, x, 0, 20, 0, 80) + part("b", x, 200-x, 0, 20, 0, 80) + part("c", 0, 200, 20, 20, 0, z) + part("d", 0, 200, 20, 20, z, 80-z))
		if one > 1 {
			some++
		}
		if math.Abs(one-many) > 1e-6*max(one, 1) {
			t.Errorf("seed %d: of two boards %.6f is taken, of four %.6f (x = %d, z = %d)\n%s", seed, one, many, x, z, cut)
		}
	}
	if some < 50 {
		t.Errorf("seed %d: only %d of 60 cuts take anything", seed, some)
	}
}

func vec3(x, y, z float64) vec.V3 { return vec.V3{X: x, Y: y, Z: z} }

// TestPairs is a law: whatever is cut on a pair, the right one is the mirror image of
// the left one.
func TestPairs(t *testing.T) {
	for i, cut := range []string{
		`kind = "taper"; sides = ["inside", "front"]; end = "top"; from = 40; leaves = 12`,
		`kind = "bevel"; edge = "outside"; keeps = "front"; angle = 20`,
		`kind = "mitre"; end = "top"; keeps = "inside"; angle = 30`,
		`kind = "compound angle"; end = "bottom"; angles = { left = 4, back = "1:8" }`,
		`kind = "notch"; side = "front"; outline = [[60, 20], { through = [45, 35] }, [60, 50]]; depth = 7`,
		`kind = "recess"; side = "back"; outline = [[10, 20], [30, 20], [20, 60]]; depth = 7`,
		`kind = "curved outline"; edge = "inside"; line = [[20, 0], { through = [50, 10] }, [80, 0], [80, 4], [100, 0]]`,
		`kind = "channel"; side = "front"; radius = 4; centre = 20; width = 8; depth = 3; from = 10; holds = 40`,
		`kind = "V channel"; side = "back"; near = 5; width = 8; angle = 80; to = 70`,
		`kind = "mortise"; side = "inside"; centre = 8; width = 6; depth = 20; middle = 50; length = 30; ends = "round"`,
		`kind = "hole"; side = "front"; at = { left = 12, bottom = 30 }; diameter = 6; depth = 12; countersink = { diameter = 12 }`,
		`kind = "cove"; edges = [["front", "inside"]]; radius = 5; from = 20; to = 60`,
	} {
		r := evaluated(t, head+`
part "side" {
  of     = material.wood
  grain  = "up"
  left   = 0
  wide   = 60
  front  = 0
  bottom = 0
  high   = 130
  show   = "front"
  mirror = 300
}
`+"cut \"x\" {\n  on = part.side\n  "+strings.ReplaceAll(cut, "; ", "\n  ")+"\n}\n")
		all := shape.New(r.Piece, nil, shape.DrawingFacets)
		left, right := &r.Piece.Parts[0], &r.Piece.Parts[1]
		if a, b := shape.MirroredContentOf(left, all.CutsOf(left.Address)), shape.ContentOf(right, all.CutsOf(right.Address)); a != b {
			t.Errorf("%d: the right one is no mirror image:\n%s\n%s", i, a, b)
		}
		v := volumes(t, r.Piece)
		if math.Abs(v[0]-v[1]) > 1e-6 || v[0] > 60*20*130-1 {
			t.Errorf("%d: the two hold %.6f and %.6f", i, v[0], v[1])
		}
		// In the piece, too: the middle of the one is mirrored in the middle of the other.
		p, q := all.At(0).Placed().Centroid(), all.At(1).Placed().Centroid()
		if math.Abs(p.X+q.X-300) > 1e-6 || math.Abs(p.Y-q.Y) > 1e-6 || math.Abs(p.Z-q.Z) > 1e-6 {
			t.Errorf("%d: the middles are %v and %v", i, p, q)
		}
	}
}
