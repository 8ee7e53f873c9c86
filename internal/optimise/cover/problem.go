package cover

import (
	"cmp"
	"iter"
	"math/big"
	"slices"
	"strconv"

	"scantling/internal/optimise/work"
)

// Plenty stands for the number of pieces of a stock that is not limited.
const Plenty = 1 << 30

// Entry is a number of pieces of one kind.
type Entry struct {
	Kind, N int
}

// Pattern is the filling of one piece of stock. It is not changed once made.
type Pattern struct {
	Stock int
	Use   []Entry // by kind, every kind once
	// Filling is how the pieces lie, in the oracle's own terms.
	Filling any
}

// Use is a number of pieces of stock with the same pattern.
type Use struct {
	Pattern *Pattern
	N       int
}

// Stock is one kind of stock.
type Stock struct {
	Cost  int64
	Limit int // Plenty: none
}

// Problem is what is to be covered.
type Problem struct {
	Demand []int
	Stock  []Stock
	// Step divides every cost.
	Step int64
	// Oracle returns an oracle for the use of one goroutine, in the task of that
	// number: tasks may go about it in different ways.
	Oracle func(task int) Oracle
}

// Ask is what an oracle is asked: which patterns are worth more than they cost.
type Ask struct {
	Left  []int   // the most of each kind in one pattern
	Stock []int   // how many pieces of stock are left: none are asked for where it is 0
	Value []int64 // of one piece of each kind
	Price []int64 // of each stock
	// Cuts lessen a pattern's worth: by its price for each set that it holds.
	// There are none unless the oracle is [Counting].
	Cuts []Cut
	// Together are kinds of which a pattern holds all, one piece each, or none;
	// Apart are two that it does not both hold. Both are for kinds of which one
	// piece is wanted, and for oracles that are [Counting].
	Together [][]int
	Apart    [][2]int
	// Prove asks for proven worths, at any expense of work.
	Prove bool
}

// Reply is what an oracle answers.
type Reply struct {
	Found []*Pattern // worth more than their price
	// Worth is, for each stock, a value that no pattern exceeds; it is so
	// only if Exact is set.
	Worth []int64
	Exact bool
	// Slow says that exact answers take long, so that a bound need not be
	// sharper than its rounding asks.
	Slow bool
}

// Oracle knows what fits on a piece of stock.
type Oracle interface {
	// Price answers an Ask; it returns false if the meter ended too early.
	Price(Ask, *work.Meter) (Reply, bool)
	// Uniform returns a pattern of up to most pieces of one kind, or nil.
	Uniform(stock, kind, most int) *Pattern
	// Means is the number of variants that Complete has.
	Means() int
	// Complete covers all that is left at a cost below money by quick means, or
	// returns false.
	Complete(variant int, left, stock []int, money int64, meter *work.Meter) ([]Use, int64, bool)
	// Finish does the same by trying out everything, where little is left,
	// with effort from 1 up. Its last result says that nothing was left out.
	Finish(left, stock []int, money int64, effort int, meter *work.Meter) ([]Use, int64, bool)
}

// NewPattern puts the entries in order and sums those of one kind.
func NewPattern(stock int, entries []Entry, filling any) *Pattern {
	entries = slices.Clone(entries)
	slices.SortFunc(entries, func(a, b Entry) int { return cmp.Compare(a.Kind, b.Kind) })
	use := entries[:0]
	for _, e := range entries {
		if last := len(use) - 1; last >= 0 && use[last].Kind == e.Kind {
			use[last].N += e.N
		} else {
			use = append(use, e)
		}
	}
	return &Pattern{Stock: stock, Use: use, Filling: filling}
}

// Times returns how often p can be cut before it makes too many of some kind.
func (p *Pattern) Times(left []int) int {
	n := -1
	for _, e := range p.Use {
		if k := left[e.Kind] / e.N; n < 0 || k < n {
			n = k
		}
	}
	return max(n, 0)
}

func (p *Pattern) key() string {
	b := strconv.AppendInt(nil, int64(p.Stock), 10)
	for _, e := range p.Use {
		b = append(strconv.AppendInt(append(b, ' '), int64(e.Kind), 10), ':')
		b = strconv.AppendInt(b, int64(e.N), 10)
	}
	return string(b)
}

// Cost returns what the boards of a plan cost.
func (p *Problem) Cost(uses []Use) int64 {
	var sum int64
	for _, u := range uses {
		sum += p.Stock[u.Pattern.Stock].Cost * int64(u.N)
	}
	return sum
}

// dearest returns the greatest cost of a stock, at least 1.
func (p *Problem) dearest() int64 {
	most := int64(1)
	for _, s := range p.Stock {
		most = max(most, s.Cost)
	}
	return most
}

// RoundUp returns the least possible total cost that is not below r.
func (p *Problem) RoundUp(r *big.Rat) int64 {
	q := new(big.Rat).Quo(r, big.NewRat(p.Step, 1))
	n := new(big.Int).Add(q.Num(), new(big.Int).Sub(q.Denom(), big.NewInt(1)))
	n.Div(n, q.Denom())
	n.Mul(n, big.NewInt(p.Step))
	if !n.IsInt64() {
		return 0
	}
	return n.Int64()
}

// pool is all patterns that were ever generated, each once: those of a shared
// pool that is only read, and its own.
type pool struct {
	base     *pool
	patterns []*Pattern
	seen     map[string]*Pattern
}

func newPool(base *pool) *pool { return &pool{base: base, seen: map[string]*Pattern{}} }

// add returns the pattern of the pool that equals p: p itself if it is new.
func (l *pool) add(p *Pattern) *Pattern {
	key := p.key()
	if q := l.seen[key]; q != nil {
		return q
	}
	if l.base != nil {
		if q := l.base.seen[key]; q != nil {
			return q
		}
	}
	l.seen[key] = p
	l.patterns = append(l.patterns, p)
	return p
}

// all walks the patterns, the shared ones first.
func (l *pool) all() iter.Seq[*Pattern] {
	return func(yield func(*Pattern) bool) {
		if l.base != nil {
			for _, p := range l.base.patterns {
				if !yield(p) {
					return
				}
			}
		}
		for _, p := range l.patterns {
			if !yield(p) {
				return
			}
		}
	}
}

// box is how many pieces of each stock may be used at least and at most.
type box struct{ lo, hi []int }

func (b box) clone() box { return box{slices.Clone(b.lo), slices.Clone(b.hi)} }
