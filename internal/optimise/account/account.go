package account

import (
	"cmp"
	"math"
	"math/big"
	"slices"

	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// Account shares out the stock that an answer takes. Parts, Kerf, Trim, Defects,
// Remnant and Rest add up to Whole. Lengths in nanometres for boards, areas in
// square nanometres for sheets.
type Account struct {
	Whole *big.Int
	Parts *big.Int
	// Kerf is sawdust, with what a blade takes that is narrower than itself.
	Kerf *big.Int
	Trim *big.Int
	// Defects is what of the waste is defect.
	Defects *big.Int
	// Remnant is worth keeping, Rest is not.
	Remnant *big.Int
	Rest    *big.Int
	// Unavoidable is how much of the whole, beyond the parts, no way of cutting
	// could do without, by the proven bound; nil where the stock is of several
	// sizes or prices, so that a bound on the cost is none on the wood.
	Unavoidable *big.Int
}

// Of accounts for the answer to a problem.
func Of(p problem.Problem, a problem.Answer) Account {
	out := Account{
		Whole: new(big.Int), Parts: new(big.Int), Kerf: new(big.Int), Trim: new(big.Int),
		Defects: new(big.Int), Remnant: new(big.Int), Rest: new(big.Int),
	}
	for _, d := range a.Diagrams {
		s := p.Stock[d.Stock]
		t := tally{p: p, stock: s, copies: big.NewInt(int64(d.Copies)), out: &out}
		whole := t.area(s.Size)
		t.add(out.Whole, whole)
		t.add(out.Trim, new(big.Int).Sub(whole, t.area(s.Usable(p.Form))))
		t.node(d.Root)
	}
	if s := p.Stock[0]; p.Goal == problem.LeastCost && len(p.Stock) == 1 && s.Cost > 0 {
		t := tally{p: p, out: &out}
		pieces := (a.Bound + s.Cost - 1) / s.Cost
		least := new(big.Int).Mul(t.area(s.Size), big.NewInt(int64(pieces)))
		out.Unavoidable = least.Sub(least, out.Parts)
	}
	return out
}

// tally adds up the pieces of one diagram.
type tally struct {
	p      problem.Problem
	stock  problem.Stock
	copies *big.Int
	out    *Account
}

// area is a length for boards.
func (t *tally) area(s problem.Size) *big.Int {
	if t.p.Form == problem.Boards {
		return big.NewInt(int64(s.Length))
	}
	return new(big.Int).Mul(big.NewInt(int64(s.Length)), big.NewInt(int64(s.Width)))
}

func (t *tally) add(to, n *big.Int) { to.Add(to, new(big.Int).Mul(n, t.copies)) }

func (t *tally) node(n *problem.Node) {
	if n == nil {
		return
	}
	switch n.Kind {
	case problem.Sawn:
		t.sawn(n)
	case problem.Finished:
		t.add(t.out.Parts, t.area(n.Size))
	case problem.Remnant:
		t.add(t.out.Remnant, t.area(n.Size))
	default:
		t.waste(n.Point, n.Size)
	}
}

// sawn shares a sawn piece between its two halves, the blade and what the blade
// leaves of no use.
func (t *tally) sawn(n *problem.Node) {
	near, far := n.Size, n.Size
	begin := n.Point
	if n.Direction == problem.Rip {
		near.Width = n.At
		far.Width = max(n.Width-n.At-t.p.Kerf, 0)
	} else {
		near.Length = n.At
		far.Length = max(n.Length-n.At-t.p.Kerf, 0)
	}
	lost := t.area(n.Size)
	lost.Sub(lost, t.area(near))
	lost.Sub(lost, t.area(far))
	t.add(t.out.Kerf, lost)
	if n.Near != nil {
		t.node(n.Near)
	} else {
		t.waste(begin, near)
	}
	if n.Far != nil {
		t.node(n.Far)
		return
	}
	if n.Direction == problem.Rip {
		begin.Across += n.At + t.p.Kerf
	} else {
		begin.Along += n.At + t.p.Kerf
	}
	t.waste(begin, far)
}

// waste counts a piece that is of no use: what of it is defect, and the rest.
func (t *tally) waste(at problem.Point, s problem.Size) {
	whole := t.area(s)
	bad := t.defects(at, s)
	t.add(t.out.Defects, bad)
	t.add(t.out.Rest, whole.Sub(whole, bad))
}

// defects returns how much of a rectangle is covered by defects, each place
// counted once.
func (t *tally) defects(at problem.Point, s problem.Size) *big.Int {
	type span struct{ a0, a1, c0, c1 unit.Length }
	var bad []span
	var cuts []unit.Length
	boards := t.p.Form == problem.Boards
	for _, d := range t.stock.Defects {
		b := span{max(d.Along, at.Along), min(d.Along+d.Length, at.Along+s.Length), 0, 1}
		if !boards {
			b.c0, b.c1 = max(d.Across, at.Across), min(d.Across+d.Width, at.Across+s.Width)
		}
		if b.a0 < b.a1 && b.c0 < b.c1 {
			bad, cuts = append(bad, b), append(cuts, b.a0, b.a1)
		}
	}
	slices.Sort(cuts)
	cuts = slices.Compact(cuts)
	slices.SortFunc(bad, func(x, y span) int { return cmp.Compare(x.c0, y.c0) })
	sum := new(big.Int)
	for i := 1; i < len(cuts); i++ {
		var covered unit.Length
		end := unit.Length(math.MinInt64)
		for _, b := range bad {
			if b.a0 > cuts[i-1] || b.a1 < cuts[i] {
				continue
			}
			covered += max(b.c1-max(b.c0, end), 0)
			end = max(end, b.c1)
		}
		sum.Add(sum, new(big.Int).Mul(big.NewInt(int64(covered)), big.NewInt(int64(cuts[i]-cuts[i-1]))))
	}
	return sum
}

// Shares returns parts, kerf, trim, defects, remnant and rest in thousandths of the
// whole. They add up to 1000: what is left over by rounding goes to those with the
// greatest rests.
func (a Account) Shares() [6]int {
	var out [6]int
	if a.Whole.Sign() <= 0 {
		return out
	}
	var rests [6]*big.Int
	order := []int{0, 1, 2, 3, 4, 5}
	left := 1000
	for i, term := range [6]*big.Int{a.Parts, a.Kerf, a.Trim, a.Defects, a.Remnant, a.Rest} {
		q, r := new(big.Int).DivMod(new(big.Int).Mul(term, big.NewInt(1000)), a.Whole, new(big.Int))
		out[i], rests[i] = int(q.Int64()), r
		left -= out[i]
	}
	slices.SortStableFunc(order, func(i, j int) int { return rests[j].Cmp(rests[i]) })
	for _, i := range order[:left] {
		out[i]++
	}
	return out
}

// UnavoidableShare is Unavoidable in thousandths of the whole, rounded down; false
// where it is not known.
func (a Account) UnavoidableShare() (int, bool) {
	if a.Unavoidable == nil || a.Whole.Sign() <= 0 {
		return 0, false
	}
	q := new(big.Int).Mul(a.Unavoidable, big.NewInt(1000))
	return int(q.Div(q, a.Whole).Int64()), true
}
