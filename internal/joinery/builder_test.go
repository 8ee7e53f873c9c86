package joinery_test

import (
	"math/big"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/unit"
)

// builder makes pieces by hand: boxes in tenths of a millimetre.
type builder struct {
	*trial.Builder
	t *testing.T
}

func newBuilder(t *testing.T) *builder { return &builder{trial.New(), t} }

// The frames in use, by where length and width go.
var (
	grainRight = trial.GrainRight
	grainUp    = trial.LeftSide
	grainUpR   = trial.RightSide
	grainBack  = trial.GrainBack
	upright    = trial.BackPanel
	frontGrain = trial.Front
	sideGrain  = trial.SideLow
)

// lower runs the joinery and wants no faults.
func (b *builder) lower() ([]piece.Cut, []joinery.Lowered) {
	b.t.Helper()
	cuts, low, faults := joinery.Lower(&b.Piece, b.Ledger)
	for _, f := range faults {
		b.t.Errorf("fault %s %s: %v", f.Address, f.Code, f.Text)
	}
	return cuts, low
}

// voxels counts volumes of a set of finished parts exactly, on the grid of all
// the limits of bodies and cuts: an independent reading of the cuts. state calls
// back with each cell's volume and which of the parts have wood there and which
// bodies reach there.
func (b *builder) voxels(parts []string, cuts []piece.Cut, visit func(lo, hi [3]unit.Length, wood, body []bool)) {
	type bx = [3][2]unit.Length
	var bodies []bx
	var taken [][]bx
	var grid [3][]unit.Length
	note := func(x bx) {
		for i := range 3 {
			grid[i] = append(grid[i], x[i][0], x[i][1])
		}
	}
	for _, name := range parts {
		p := b.Find(name)
		var body bx
		for i := range 3 {
			body[i] = [2]unit.Length{p.Extent[i].Low.Nm, p.Extent[i].High.Nm}
		}
		note(body)
		bodies = append(bodies, body)
		var gone []bx
		for i := range cuts {
			if cuts[i].Part != p.Address || cuts[i].Slot == nil {
				continue
			}
			x := slotBox(p, cuts[i].Slot)
			note(x)
			gone = append(gone, x)
		}
		taken = append(taken, gone)
	}
	for i := range grid {
		grid[i] = sortedUnique(grid[i])
	}
	inside := func(x bx, at [3]unit.Length) bool {
		for i := range 3 {
			if at[i] < x[i][0] || at[i] >= x[i][1] {
				return false
			}
		}
		return true
	}
	for i := 0; i+1 < len(grid[0]); i++ {
		for j := 0; j+1 < len(grid[1]); j++ {
			for k := 0; k+1 < len(grid[2]); k++ {
				lo := [3]unit.Length{grid[0][i], grid[1][j], grid[2][k]}
				hi := [3]unit.Length{grid[0][i+1], grid[1][j+1], grid[2][k+1]}
				wood, body := make([]bool, len(parts)), make([]bool, len(parts))
				for n := range parts {
					body[n] = inside(bodies[n], lo)
					wood[n] = body[n]
					for _, g := range taken[n] {
						wood[n] = wood[n] && !inside(g, lo)
					}
				}
				visit(lo, hi, wood, body)
			}
		}
	}
}

// slotBox lays a slot into the piece by the definition of piece.Slot.
func slotBox(p *piece.Part, s *piece.Slot) [3][2]unit.Length {
	size := [3]unit.Length{p.Length.Nm, p.Width.Nm, p.Thickness.Nm}
	var local [3][2]unit.Length
	open, high := s.Open.Axis()
	local[open] = [2]unit.Length{0, s.Depth.Nm}
	if high {
		local[open] = [2]unit.Length{size[open] - s.Depth.Nm, size[open]}
	}
	local[s.Run] = [2]unit.Length{s.From.Nm, s.To.Nm}
	local[s.Across()] = [2]unit.Length{s.Near.Nm, s.Far.Nm}
	o := p.Origin()
	var out [3][2]unit.Length
	for k, d := range p.Frame.Directions() {
		a, sign := d.Axis()
		if sign > 0 {
			out[a] = [2]unit.Length{o[a] + local[k][0], o[a] + local[k][1]}
		} else {
			out[a] = [2]unit.Length{o[a] - local[k][1], o[a] - local[k][0]}
		}
	}
	return out
}

func sortedUnique(v []unit.Length) []unit.Length {
	for i := 1; i < len(v); i++ {
		for j := i; j > 0 && v[j] < v[j-1]; j-- {
			v[j], v[j-1] = v[j-1], v[j]
		}
	}
	out := v[:0]
	for i, x := range v {
		if i == 0 || x != out[len(out)-1] {
			out = append(out, x)
		}
	}
	return out
}

func cell(lo, hi [3]unit.Length) *big.Int {
	v := big.NewInt(int64(hi[0] - lo[0]))
	v.Mul(v, big.NewInt(int64(hi[1]-lo[1])))
	return v.Mul(v, big.NewInt(int64(hi[2]-lo[2])))
}

// mm3 and mm2 turn exact volumes and areas into millimetres.
func mm3(v unit.Value) float64 { return scaled(v, 18) }
func mm2(v unit.Value) float64 { return scaled(v, 12) }

func scaled(v unit.Value, zeros int64) float64 {
	r := v.Number()
	d := new(big.Int).Exp(big.NewInt(10), big.NewInt(zeros), nil)
	f, _ := new(big.Rat).Quo(r, new(big.Rat).SetInt(d)).Float64()
	return f
}

// seeded is a source of chance whose seed is told; SEED chooses another.
func seeded(t *testing.T, seed uint64) *rand.Rand {
	if other, err := strconv.ParseUint(os.Getenv("SEED"), 10, 64); err == nil {
		seed = other
	}
	t.Logf("seed %d", seed)
	return rand.New(rand.NewPCG(seed, 1))
}

// rounds is how often a law is tried: twenty times as often in the long tier.
func rounds(n int) int {
	if os.Getenv("LONG") != "" {
		n *= 20
	}
	return n
}
