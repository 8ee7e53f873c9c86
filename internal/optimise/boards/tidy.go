package boards

import (
	"cmp"
	"slices"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/work"
)

// tidyBoards bounds the boards that are looked at for a better remnant.
const tidyBoards = 24

// tidy moves pieces between boards of equal cost to the plan, so that what is
// left over lies together: of two boards with a rest, one is filled as far as it
// goes from the pieces of both. The two rests keep their sum and the greater one
// rises with every step, so it ends.
func (m *model) tidy(uses []cover.Use, meter *work.Meter) []cover.Use {
	single := m.singles(uses)
	if len(single) < 2 {
		return uses
	}
	sums := &subset{}
	for again := true; again; {
		again = false
		slices.SortStableFunc(single, func(a, b *cover.Pattern) int { return cmp.Compare(m.rest(b), m.rest(a)) })
		for i := range min(tidyBoards, len(single)) {
			for j := range min(tidyBoards, len(single)) {
				if i == j || meter.Ended() {
					continue
				}
				if a, b, ok := m.gather(single[i], single[j], sums, meter); ok {
					single[i], single[j], again = a, b, true
				}
			}
		}
	}
	return m.grouped(single)
}

// rest returns what is left over of a board, 0 where it is in several lengths.
func (m *model) rest(p *cover.Pattern) int64 {
	if t := &m.stock[p.Stock]; len(t.caps) == 1 {
		return t.caps[0] - m.filled(p)
	}
	return 0
}

// singles lists every board of a plan by itself, or nothing if there are many.
func (m *model) singles(uses []cover.Use) []*cover.Pattern {
	var out []*cover.Pattern
	for _, u := range uses {
		if len(out)+u.N > 1000 {
			return nil
		}
		for range u.N {
			out = append(out, u.Pattern)
		}
	}
	return out
}

// gather fills board a from the pieces of a and b, and returns both anew if the
// rests lie better together.
func (m *model) gather(a, b *cover.Pattern, sums *subset, meter *work.Meter) (*cover.Pattern, *cover.Pattern, bool) {
	ta, tb := &m.stock[a.Stock], &m.stock[b.Stock]
	if len(ta.caps) > 1 || len(tb.caps) > 1 || m.rest(a) == 0 || m.rest(b) == 0 {
		return nil, nil, false
	}
	left := make([]int, len(m.kinds))
	for _, p := range []*cover.Pattern{a, b} {
		for _, e := range p.Use {
			left[e.Kind] += e.N
		}
	}
	seg, sum, ok := sums.fill(m, left, 0, ta.caps[0], meter)
	if !ok {
		return nil, nil, false
	}
	total := m.filled(a) + m.filled(b)
	if total-sum > tb.caps[0] || total == sum {
		return nil, nil, false // nothing may be left uncut, and a board saved is the search's affair
	}
	ra, rb := ta.caps[0]-sum, tb.caps[0]-(total-sum)
	if max(ra, rb) <= max(m.rest(a), m.rest(b)) {
		return nil, nil, false
	}
	for _, e := range seg {
		left[e.Kind] -= e.N
	}
	var other []cover.Entry
	for k, n := range left {
		if n > 0 {
			other = append(other, cover.Entry{Kind: k, N: n})
		}
	}
	x, y := newPattern(a.Stock, [][]cover.Entry{seg}), newPattern(b.Stock, [][]cover.Entry{other})
	if m.feedable(x) != x || m.feedable(y) != y {
		return nil, nil, false
	}
	return x, y, true
}

// grouped puts equal boards together, the fullest first.
func (m *model) grouped(single []*cover.Pattern) []cover.Use {
	uses := make([]cover.Use, len(single))
	for i, p := range single {
		uses[i] = cover.Use{Pattern: p, N: 1}
	}
	return m.sorted(joined(uses))
}

// joined puts equal patterns together.
func joined(uses []cover.Use) []cover.Use {
	var out []cover.Use
	for _, u := range uses {
		i := slices.IndexFunc(out, func(o cover.Use) bool {
			return o.Pattern.Stock == u.Pattern.Stock && slices.Equal(o.Pattern.Use, u.Pattern.Use)
		})
		if i < 0 {
			out = append(out, u)
		} else {
			out[i].N += u.N
		}
	}
	return out
}

// sorted puts the boards in order of their kind, the fullest first.
func (m *model) sorted(uses []cover.Use) []cover.Use {
	uses = slices.Clone(uses)
	slices.SortStableFunc(uses, func(a, b cover.Use) int {
		return cmp.Or(cmp.Compare(a.Pattern.Stock, b.Pattern.Stock), cmp.Compare(m.rest(a.Pattern), m.rest(b.Pattern)),
			slices.CompareFunc(a.Pattern.Use, b.Pattern.Use, func(x, y cover.Entry) int {
				return cmp.Or(cmp.Compare(x.Kind, y.Kind), cmp.Compare(y.N, x.N))
			}))
	})
	return uses
}
