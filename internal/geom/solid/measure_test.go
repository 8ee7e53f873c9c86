package solid

import (
	"fmt"
	"math"
	"testing"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// The rule on a triangle takes every monomial of degree eight exactly:
// ∫ x^i y^j over the unit triangle is i! j! / (i + j + 2)!.
func TestRuleOnTriangle(t *testing.T) {
	fact := func(n int) float64 {
		f := 1.0
		for k := 2; k <= n; k++ {
			f *= float64(k)
		}
		return f
	}
	for i := range 9 {
		for j := range 9 - i {
			var sum float64
			for _, q := range dunavant8 {
				perms := [][3]float64{{q.a, q.b, q.c}}
				if q.a != q.b {
					perms = append(perms, [3]float64{q.b, q.c, q.a}, [3]float64{q.c, q.a, q.b})
				}
				if q.b != q.c {
					perms = append(perms, [3]float64{q.a, q.c, q.b}, [3]float64{q.c, q.b, q.a}, [3]float64{q.b, q.a, q.c})
				}
				for _, p := range perms {
					sum += q.w / 2 * math.Pow(p[0], float64(i)) * math.Pow(p[1], float64(j))
				}
			}
			near(t, fmt.Sprintf("x^%d y^%d", i, j), sum, fact(i)*fact(j)/fact(i+j+2), 1e-14)
		}
	}
}

// roundOver takes the edge through o off, with the radius r, along w for a length.
func roundOver(o, u, v vec.V3, r, length float64, tag Tag) Prism {
	sides, caps := Whole(tag)
	return Prism{
		Frame: vec.Frame{Origin: o, U: u, V: v, W: u.Cross(v)}, From: -1, To: length + 1, Sides: sides, Caps: caps,
		Profile: polygon.Profile{Outer: polygon.Loop{
			{P2: polygon.P2{X: 1, Y: 1}}, {P2: polygon.P2{X: -r, Y: 1}},
			{P2: polygon.P2{X: -r}, Bulge: -math.Tan(math.Pi / 8)}, {P2: polygon.P2{Y: -r}}, {P2: polygon.P2{X: 1, Y: -r}},
		}},
	}
}

// Where two round faces meet: in volume to 1e-6 of the wood that is taken, at
// any number of facets. Steinmetz' solids, common knowledge: two equal
// cylinders of radius r at right angles share 16 r³/3, three share 8 (2 - √2) r³.
func TestRoundMeetsRound(t *testing.T) {
	const r = 6.0
	edge := r * r * (1 - math.Pi/4)
	top := at(100, 60, 20)
	end := roundOver(top, at(1, 0, 0), at(0, 0, 1), r, 0, 2)
	end.From, end.To = -1, 61 // along -y
	side := roundOver(top, at(0, 0, 1), at(0, 1, 0), r, 0, 3)
	side.From, side.To = -1, 101 // along -x
	upright := roundOver(top, at(0, 1, 0), at(1, 0, 0), r, 0, 4)
	upright.From, upright.To = -1, 21
	hole := func(o vec.V3, w int, r, from, to float64) Primitive {
		f := [3]vec.Frame{{U: at(0, 1, 0), V: at(0, 0, 1), W: at(1, 0, 0)}, {U: at(0, 0, 1), V: at(1, 0, 0), W: at(0, 1, 0)}, vec.World}[w]
		f.Origin = o
		return Prism{Frame: f, Profile: polygon.Circle(polygon.P2{}, r), From: from, To: to, Sides: []Tag{Tag(5 + w)}}
	}
	for _, c := range []struct {
		name  string
		cut   []Primitive
		taken float64
	}{
		// At the corner of two the wood keeps 2r³/3 of r³, at that of three (2 - √2) r³.
		{"round-overs of two edges", []Primitive{end, side}, edge*(100-r+60-r) + r*r*r/3},
		{"round-overs of three edges", []Primitive{end, side, upright}, edge*(100+60+20-3*r) + r*r*r*(math.Sqrt2-1)},
		// Two holes of one size that cross.
		{"holes crossing", []Primitive{hole(at(0, 30, 10), 0, 5, -1, 101), hole(at(50, 0, 10), 1, 5, -1, 61)}, math.Pi*25*160 - 16*125./3},
		// A hole of 4 through a channel of 6, both through the middle: common to them
		// 8 ∫ √(r² - x²) √(R² - x²) dx over 0..r, half of it below the surface.
		{"hole through a channel", []Primitive{
			hole(at(50, 30, 0), 2, 4, -1, 21),
			Prism{Frame: along(at(50, 0, 20)), Profile: polygon.RoundBottom(12, 6, 6), From: -1, To: 61},
		}, math.Pi*16*20 + math.Pi*18*60 - 4*integral(4, 6)},
	} {
		for _, facets := range []int{8, 16, 32} {
			s := Build([]Primitive{board(100, 60, 20)}, c.cut, Options{Facets: facets})
			verified(t, s)
			got := 120000 - s.Volume()
			t.Logf("%s at %d facets: %.1e of the wood taken", c.name, facets, got/c.taken-1)
			near(t, c.name, got, c.taken, 1e-6*c.taken)
		}
	}
}

// integral is ∫ √(r² - x²) √(R² - x²) dx over 0..r, by midpoints in the angle.
func integral(r, R float64) (sum float64) {
	const n = 2000
	for k := range n {
		x := r * math.Sin((float64(k)+0.5)/n*math.Pi/2)
		sum += (r*r - x*x) * math.Sqrt(R*R-x*x) * math.Pi / 2 / n
	}
	return sum
}
