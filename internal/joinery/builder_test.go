package joinery_test

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"scantling/internal/address"
	"scantling/internal/joinery"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// builder makes pieces by hand: boxes in tenths of a millimetre.
type builder struct {
	t *testing.T
	p piece.Piece
	l *ledger.Ledger
}

func newBuilder(t *testing.T) *builder {
	return &builder{t: t, l: ledger.New(nil)}
}

const tenth = unit.Millimetre / 10

func (b *builder) fig(name string, tenths int64) piece.Figure {
	return b.l.Leaf(name, unit.Length(tenths)*tenth, ledger.Document, "")
}

// The frames in use, by where length and width go; all are right-handed.
var (
	grainRight = piece.Frame{Length: piece.ToRight, Width: piece.ToBack, Thickness: piece.ToUp}
	grainUp    = piece.Frame{Length: piece.ToUp, Width: piece.ToBack, Thickness: piece.ToLeft}
	grainUpR   = piece.Frame{Length: piece.ToUp, Width: piece.ToFront, Thickness: piece.ToRight}
	grainBack  = piece.Frame{Length: piece.ToBack, Width: piece.ToRight, Thickness: piece.ToDown}
	upright    = piece.Frame{Length: piece.ToUp, Width: piece.ToRight, Thickness: piece.ToBack}
	frontGrain = piece.Frame{Length: piece.ToRight, Width: piece.ToUp, Thickness: piece.ToFront}
	sideGrain  = piece.Frame{Length: piece.ToBack, Width: piece.ToUp, Thickness: piece.ToRight}
)

// part adds a part from left, right, front, back, bottom, top.
func (b *builder) part(name string, f piece.Frame, at ...int64) *piece.Part {
	b.t.Helper()
	p := piece.Part{Address: address.Address(name), Name: name, Form: piece.Board, Material: "oak", Frame: f}
	for i := range 3 {
		p.Extent[i] = piece.Extent{Low: b.fig(name+" low", at[2*i]), High: b.fig(name+" high", at[2*i+1])}
	}
	var sizes [3]piece.Figure
	for k, d := range f.Directions() {
		a, _ := d.Axis()
		sizes[k] = b.l.Less(name+" size", p.Extent[a].High, p.Extent[a].Low)
	}
	p.Length, p.Width, p.Thickness = sizes[0], sizes[1], sizes[2]
	b.p.Parts = append(b.p.Parts, p)
	return &b.p.Parts[len(b.p.Parts)-1]
}

// joint adds a joint of depth tenths; change may set the rest.
func (b *builder) joint(name string, kind piece.JointKind, a, c string, depth int64, change func(*piece.Joint)) {
	j := piece.Joint{
		Address: address.Address(name), Family: address.Address(name), Kind: kind,
		A: address.Address(a), B: address.Address(c), Glue: "pva",
	}
	if depth != 0 {
		j.Depth = b.fig(name+" depth", depth)
	}
	if change != nil {
		change(&j)
	}
	b.p.Joints = append(b.p.Joints, j)
}

// lower runs the joinery and wants no faults.
func (b *builder) lower() ([]piece.Cut, []joinery.Lowered) {
	b.t.Helper()
	cuts, low, faults := joinery.Lower(&b.p, b.l)
	for _, f := range faults {
		b.t.Errorf("fault %s %s: %v", f.Address, f.Code, f.Text)
	}
	return cuts, low
}

func (b *builder) find(name string) *piece.Part {
	for i := range b.p.Parts {
		if string(b.p.Parts[i].Address) == name {
			return &b.p.Parts[i]
		}
	}
	b.t.Fatalf("no part %s", name)
	return nil
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
		p := b.find(name)
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

func seeded(t *testing.T, seed uint64) *rand.Rand {
	t.Logf("seed %d", seed)
	return rand.New(rand.NewPCG(seed, 1))
}
