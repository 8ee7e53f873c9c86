package mechanics_test

import (
	"math"
	"testing"

	"scantling/internal/mechanics"
	"scantling/internal/unit"
)

// filmSeries is the moisture of a slab of half thickness l that starts at 1 between air
// at 0 with a film: sum of 4 sin b/(2b + sin 2b) cos(b x/l) exp(-b2 D t/l2), b being the
// roots of b tan b = S l/D (classical solution).
func filmSeries(x, fourier, biot float64) float64 {
	sum := 0.0
	for n := range 60 {
		low, high := float64(n)*math.Pi, (float64(n)+0.5)*math.Pi-1e-12
		for range 100 { // halving
			if b := (low + high) / 2; b*math.Tan(b) < biot {
				low = b
			} else {
				high = b
			}
		}
		b := (low + high) / 2
		sum += 4 * math.Sin(b) / (2*b + math.Sin(2*b)) * math.Cos(b*x) * math.Exp(-b*b*fourier)
	}
	return sum
}

// TestFilmAgainstSeries: a bare board in still air, 12 thick.
func TestFilmAgainstSeries(t *testing.T) {
	const d, film = 1.2e-10, 2e-7
	s := mechanics.Slab{Thickness: unit.MM(12), Spreads: d, Film: film, Machined: mechanics.Face{Open: true}, Back: mechanics.Face{Open: true}, Core: 1, Shell: 1}
	states, err := s.Follow(2, 120)
	if err != nil {
		t.Fatal(err)
	}
	worst := 0.0
	for _, m := range states[6:] {
		fourier := d * float64(m.After) * 3600 / (0.006 * 0.006)
		for i := range 20 {
			x := (float64(i)+0.5)/10 - 1
			worst = max(worst, math.Abs(float64(m.At(mechanics.Ratio((x+1)/2)))-filmSeries(x, fourier, film*0.006/d)))
		}
	}
	t.Logf("worst difference %.4f of the step, from 12 hours to 10 days", worst)
	if worst > 0.008 {
		t.Error("the layers leave the series solution")
	}
}

// TestCupAgainstStrips: the cup of a board with one face shut, from the series solution
// put into thin strips.
func TestCupAgainstStrips(t *testing.T) {
	const h, d = 12.0, 1.2e-10
	s := mechanics.Slab{Thickness: unit.MM(12), Spreads: d, Machined: mechanics.Face{Open: true}, Core: 1, Shell: 1}
	states, err := s.Follow(4, 85)
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range []int{6, 12, 24, 48, 84} {
		var thick, stiff, free []float64
		for i := range 200 {
			x := (float64(i) + 0.5) / 200
			thick, stiff = append(thick, h/200), append(stiff, 900)
			free = append(free, perPoint*series(x/2, d*1e6*float64(states[k].After)*3600/(4*h*h)))
		}
		got, want := float64(states[k].Cup(perPoint)), strips(thick, stiff, free)
		if math.Abs(got-want) > 0.015*math.Abs(want)+1e-9 {
			t.Errorf("after %g h: %g, strips %g", states[k].After, got, want)
		}
	}
}

// grid is the section of half a land and half a channel in equal squares, stepped
// forwards: another way to the same numbers, with nothing in common but Fick's law.
type grid struct {
	wide, deep, land, cut int // squares: land and floor side by side, channel so deep
	at                    [][]float64
}

func newGrid(land, channel, depth, whole int) *grid {
	g := &grid{wide: land + channel, deep: whole, land: land, cut: depth}
	for range g.wide {
		col := make([]float64, whole)
		for j := range col {
			col[j] = 1
		}
		g.at = append(g.at, col)
	}
	return g
}

func (g *grid) wood(i, j int) bool {
	return i >= 0 && i < g.wide && j >= 0 && j < g.deep && (i < g.land || j >= g.cut)
}

// step: c is D dt/size2, f what a face in the air passes of it.
func (g *grid) step(c, f float64) {
	next := make([][]float64, g.wide)
	for i := range g.wide {
		next[i] = make([]float64, g.deep)
		for j := range g.deep {
			if !g.wood(i, j) {
				continue
			}
			x := g.at[i][j]
			for _, n := range [4][2]int{{i - 1, j}, {i + 1, j}, {i, j - 1}, {i, j + 1}} {
				switch {
				case g.wood(n[0], n[1]):
					x += c * (g.at[n[0]][n[1]] - g.at[i][j])
				case n[0] < 0 || n[0] >= g.wide: // it goes on as in a mirror
				default:
					x -= f * g.at[i][j]
				}
			}
			next[i][j] = x
		}
	}
	g.at = next
}

// cup is the mean of the columns' own curvatures.
func (g *grid) cup(size float64) float64 {
	sum := 0.0
	for i := range g.wide {
		var thick, stiff, free []float64
		for j := range g.deep {
			if g.wood(i, j) {
				thick, stiff, free = append(thick, size), append(stiff, 900), append(free, perPoint*g.at[i][j])
			}
		}
		sum += strips(thick, stiff, free)
	}
	return sum / float64(g.wide)
}

// TestChannelsAgainstGrid: a tray 12 thick, channels 5 deep and 10 wide, lands of 10,
// in squares of half a millimetre: mean and cup after one, two and four days.
func TestChannelsAgainstGrid(t *testing.T) {
	const size, d, film = 0.5, 1.2e-4, 2e-4 // mm, mm2/s, mm/s
	s := tray(1)
	s.Air, s.Machined.Open, s.Back.Open = 0, true, true
	states, err := s.Follow(4, 25)
	if err != nil {
		t.Fatal(err)
	}
	g := newGrid(10, 10, 10, 24)
	dt := 300.0
	c := d * dt / (size * size)
	f := dt / size / (1/film + size/(2*d))
	for k := 1; k <= 24; k++ {
		for range int(4 * 3600 / dt) {
			g.step(c, f)
		}
		if k != 6 && k != 12 && k != 24 {
			continue
		}
		mean, cells := 0.0, 0.0
		for i := range g.wide {
			for j := range g.deep {
				if g.wood(i, j) {
					mean, cells = mean+g.at[i][j], cells+1
				}
			}
		}
		if got, want := float64(states[k].Mean()), mean/cells; math.Abs(got-want) > 0.02 {
			t.Errorf("after %d h: mean %.4f, grid %.4f", 4*k, got, want)
		}
		if got, want := float64(states[k].Cup(perPoint)), g.cup(size); math.Abs(got-want) > 0.12*math.Abs(want)+1e-6 {
			t.Errorf("after %d h: cup %.3g, grid %.3g", 4*k, got, want)
		} else {
			t.Logf("after %d h: mean %.4f and %.4f, cup %.3g and %.3g", 4*k, states[k].Mean(), mean/cells, got, want)
		}
	}
}
