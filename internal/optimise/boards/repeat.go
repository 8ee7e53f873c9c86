package boards

import (
	"math/rand/v2"
	"slices"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/work"
)

// repeatStale bounds how often fewer patterns are looked for in vain.
const repeatStale = 100

// repeat looks for a plan on the same boards with fewer different patterns, so
// that more boards are cut at the same settings of the stop. It takes a few
// patterns at a time and fills their boards anew, with what can be repeated most
// often first (after Haessler, "Controlling cutting pattern changes in
// one-dimensional trim problems", Operations Research 23, 1975). Boards with a
// useful rest stay as they are; where it is not said what is useful, the board
// with the longest rest does.
func (m *model) repeat(uses []cover.Use, meter *work.Meter) []cover.Use {
	r := &repeater{m: m, meter: meter, r: rand.New(rand.NewPCG(1, uint64(len(uses))))}
	kept, free := m.worthy(uses)
	r.uses = free
	once := !slices.ContainsFunc(m.kinds, func(k kind) bool { return k.d > 1 })
	for round, stale := 0, 0; len(r.uses) > 1 && stale < repeatStale && !once && !meter.Ended(); round++ {
		stale++
		if r.round(round) {
			stale = 0
		}
	}
	return m.sorted(joined(append(r.uses, kept...)))
}

// worthy divides a plan into the boards whose rest is to be kept and the others.
func (m *model) worthy(uses []cover.Use) (kept, free []cover.Use) {
	longest := -1
	for i, u := range uses {
		switch rest := m.rest(u.Pattern); {
		case len(m.stock[u.Pattern.Stock].caps) > 1 || m.useful(u.Pattern):
			kept = append(kept, u)
			continue
		case m.p.Useful.Length == 0 && rest > 0 && (longest < 0 || rest > m.rest(uses[longest].Pattern)):
			longest = i
		}
		free = append(free, u)
	}
	if longest >= 0 {
		free = free[:0]
		for i, u := range uses {
			switch {
			case len(m.stock[u.Pattern.Stock].caps) > 1:
			case i == longest:
				kept = append(kept, cover.Use{Pattern: u.Pattern, N: 1})
				if u.N > 1 {
					free = append(free, cover.Use{Pattern: u.Pattern, N: u.N - 1})
				}
			default:
				free = append(free, u)
			}
		}
	}
	return kept, free
}

// useful says whether the rest of a pattern's board is worth keeping.
func (m *model) useful(p *cover.Pattern) bool {
	useful := int64(m.p.Useful.Length / m.scale)
	return useful > 0 && m.rest(p)-m.kerf >= useful
}

type repeater struct {
	m     *model
	meter *work.Meter
	r     *rand.Rand
	uses  []cover.Use
	sums  subset
}

// round takes some patterns out and tries to do with fewer. The first round
// takes all, the next ones a few of those that are cut least often. It returns
// whether there are fewer now.
func (r *repeater) round(n int) bool {
	slices.SortStableFunc(r.uses, func(a, b cover.Use) int { return a.N - b.N })
	size := len(r.uses)
	if n > 0 {
		size = min(size, 2+r.r.IntN(4))
	}
	out := make([]bool, len(r.uses))
	for chosen := 0; chosen < size; {
		// Rare patterns more likely.
		if i := min(r.r.IntN(len(out)), r.r.IntN(len(out))); !out[i] {
			out[i] = true
			chosen++
		} else if size == len(out) {
			i = slices.Index(out, false)
			out[i] = true
			chosen++
		}
	}
	left, stock := make([]int, len(r.m.kinds)), make([]int, len(r.m.stock))
	var rest []cover.Use
	for i, u := range r.uses {
		if !out[i] {
			rest = append(rest, u)
			continue
		}
		stock[u.Pattern.Stock] += u.N
		for _, e := range u.Pattern.Use {
			left[e.Kind] += e.N * u.N
		}
	}
	for _, slackening := range []int64{1, 2, 4} {
		for _, forced := range []bool{false, true} {
			found, ok := r.fill(slices.Clone(left), slices.Clone(stock), size-1, slackening, forced)
			if ok {
				r.uses = joined(append(found, rest...))
				return true
			}
		}
	}
	return false
}

// fill cuts all that is left from the boards with at most the given number of
// patterns, each as often as it goes; a board may waste slackening times its
// share.
func (r *repeater) fill(left, stock []int, patterns int, slackening int64, forced bool) ([]cover.Use, bool) {
	var uses []cover.Use
	for first(left) >= 0 {
		if len(uses) == patterns {
			return nil, false
		}
		u, ok := r.most(left, stock, slackening, forced)
		if !ok {
			return nil, false
		}
		stock[u.Pattern.Stock] -= u.N
		for _, e := range u.Pattern.Use {
			left[e.Kind] -= e.N * u.N
		}
		uses = append(uses, u)
	}
	// Boards that are not needed any more would make the plan cheaper than the
	// search found: they are simply not bought.
	return uses, true
}

// most returns the pattern that can be cut most often without wasting too much.
func (r *repeater) most(left, stock []int, slackening int64, forced bool) (cover.Use, bool) {
	var slack, boards int64
	for k, n := range left {
		slack -= r.m.kinds[k].w * int64(n)
	}
	for i, n := range stock {
		slack += r.m.stock[i].caps[0] * int64(n)
		boards += int64(n)
	}
	if boards == 0 || slack < 0 {
		return cover.Use{}, false
	}
	var best cover.Use
	for i, n := range stock {
		if n == 0 {
			continue
		}
		for _, t := range times(left, n) {
			if t <= best.N {
				break
			}
			p, rest, ok := r.pattern(i, left, t, forced)
			if !ok {
				return cover.Use{}, false
			}
			// The waste of t boards must not exceed what there is, nor its share by far.
			if p != nil && rest*int64(t) <= slack && rest*boards <= slack*slackening {
				best = cover.Use{Pattern: p, N: t}
			}
		}
	}
	return best, best.N > 0
}

// times returns how often a pattern may be repeated: the numbers at which
// another kind or another piece comes in, most first.
func times(left []int, most int) []int {
	var out []int
	for _, n := range left {
		for d := 1; d <= 4 && n/d > 0; d++ {
			out = append(out, min(n/d, most))
		}
	}
	out = append(out, 1)
	slices.SortFunc(out, func(a, b int) int { return b - a })
	return slices.Compact(out)
}

// pattern fills a board of kind i as far as it goes with what there is t times,
// the longest such piece first if forced; it returns false when the work ends.
func (r *repeater) pattern(i int, left []int, t int, forced bool) (*cover.Pattern, int64, bool) {
	each := make([]int, len(left))
	for k, n := range left {
		each[k] = n / t
	}
	room, k := r.m.stock[i].caps[0], first(each)
	for k >= 0 && k < len(each) && (each[k] == 0 || r.m.kinds[k].w > room) {
		k++
	}
	if k < 0 || k == len(each) {
		return nil, 0, true
	}
	take := int64(0)
	if forced {
		each[k]--
		take = r.m.kinds[k].w
	}
	if !r.meter.Take(8 * int64(len(left))) {
		return nil, 0, false
	}
	seg, sum, ok := r.sums.fill(r.m, each, k, room-take, r.meter)
	if !ok {
		return nil, 0, false
	}
	if forced {
		seg = merge(seg, k)
	}
	if len(seg) == 0 {
		return nil, 0, true
	}
	p := newPattern(i, [][]cover.Entry{seg})
	if r.m.feedable(p) != p {
		return nil, 0, true
	}
	return p, room - take - sum, true
}
