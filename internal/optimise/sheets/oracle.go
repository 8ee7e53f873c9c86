package sheets

import (
	"math/rand/v2"
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/corner"
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/shortlist"
	"scantling/internal/optimise/work"
)

// oracle knows what fits on a sheet.
type oracle struct {
	models  []*model       // the ways to lay the strips
	guide   ceiling.Stages // of the loose model
	raster  ceiling.Raster
	near    ceiling.Stages // of a model that is not its own loose one
	closer  ceiling.Raster
	seed    uint64
	correct []*correction
	chance  *rand.Rand      // of samples
	fillers []corner.Filler // by stock
	// cornered says that corner fillings are sought before others.
	cornered bool
}

func newOracle(models []*model) *oracle {
	o := &oracle{models: models, chance: rand.New(rand.NewPCG(5, 0x5a17))}
	for _, m := range models {
		o.correct = append(o.correct, newCorrection(m.exact, 77))
	}
	return o
}

// Price looks for the patterns that are worth most. Its worths are ceilings
// over any number of copies.
func (o *oracle) Price(ask cover.Ask, meter *work.Meter) (cover.Reply, bool) {
	reply := cover.Reply{Worth: make([]int64, len(ask.Price)), Exact: o.staged()}
	if o.cornered {
		if o.corners(ask, &reply, meter); len(reply.Found) > 0 {
			reply.Exact = false
			return reply, true
		}
	}
	for _, m := range o.models {
		f := filler{m: m, value: ask.Value, order: m.byValue(ask.Value), tries: 3}
		for i := range m.stock {
			if ask.Stock[i] == 0 {
				continue
			}
			if !m.loose.stages(&o.guide, i, ask.Value, ask.Left, reply.Exact, meter) {
				return reply, false
			}
			reply.Worth[i] = max(reply.Worth[i], o.guide.Worth())
			if o.guide.Worth() <= ask.Price[i] && reply.Exact {
				continue
			}
			for _, p := range append(o.knapsacks(f, i, ask, reply.Exact, meter), f.sheet(i, ask.Left)) {
				if p != nil && worth(p, ask.Value) > ask.Price[i] {
					reply.Found = append(reply.Found, p)
				}
			}
			if len(reply.Found) == 0 && reply.Exact && ask.Prove {
				o.tighten(i, ask, &reply, meter)
			}
			if len(reply.Found) == 0 && reply.Exact && (reply.Worth[i] > ask.Price[i] || !ask.Prove) {
				o.listed(m, i, ask, &reply, meter)
			}
			if meter.Ended() { // of the stock that follows no worth is known
				reply.Exact = false
				return reply, len(reply.Found) > 0
			}
		}
	}
	ok := true
	if o.models[0].p.Cutting.Stages == 0 {
		if ask.Prove {
			reply, ok = o.unlimited(ask, reply, meter)
		}
		if len(reply.Found) == 0 && ask.Prove && !meter.Ended() {
			o.sampled(ask, &reply, meter)
		}
	}
	return reply, ok
}

// knapsackSheets bounds the sheets that are filled at the same prices.
const knapsackSheets = 4

// knapsacks fills sheets strip by strip, guided by the ceilings of their model:
// each with what those before left, as long as they are worth more than their
// price, so that the patterns found together make many kinds.
func (o *oracle) knapsacks(f filler, i int, ask cover.Ask, all bool, meter *work.Meter) []*cover.Pattern {
	b := bounded{f: f, guide: &o.guide, breath: 3, meter: meter}
	if len(f.m.stock[i].defects) > 0 { // the knapsacks do not see defects
		return nil
	}
	if f.m.loose != f.m {
		if b.guide = &o.near; !f.m.stages(b.guide, i, ask.Value, ask.Left, all, meter) {
			return nil
		}
	}
	var out []*cover.Pattern
	left := slices.Clone(ask.Left)
	for range knapsackSheets {
		p := b.sheet(i, left)
		if p == nil || worth(p, ask.Value) <= ask.Price[i] {
			break
		}
		out = append(out, p)
		for _, e := range p.Use {
			left[e.Kind] -= e.N
		}
	}
	return out
}

// listed seeks a pattern with short lists; where nothing was left out and nothing
// found, no pattern is worth more than its price. What the loose model finds may
// not fit in true sizes: then no more is proved than that.
func (o *oracle) listed(m *model, i int, ask cover.Ask, reply *cover.Reply, meter *work.Meter) {
	if len(m.stock[i].defects) > 0 || len(m.p.Sequences) > 0 || m.p.Feed != (problem.Feed{}) {
		return
	}
	alone := len(o.models) == 1 || m.p.Cutting.Stages == 0
	for length := 1; length <= 64; length *= 4 {
		a, p, ok := m.loose.lists(i, ask, length, meter)
		if a.Complete && alone && p == nil {
			reply.Worth[i] = min(reply.Worth[i], a.Value)
		}
		if p == nil && m.loose != m && a.Value > ask.Price[i] {
			_, p, ok = m.lists(i, ask, length, meter)
		}
		if p != nil {
			reply.Found = append(reply.Found, p)
			return
		}
		if a.Complete || !ok || !ask.Prove {
			return
		}
	}
}

// lists makes one run of short lists and returns the pattern that it found, nil
// if there is none in true sizes.
func (m *model) lists(i int, ask cover.Ask, length int, meter *work.Meter) (shortlist.Answer, *cover.Pattern, bool) {
	q := shortlist.Question{X: m.stock[i].x, Y: m.stock[i].y, Pieces: m.order(widest), Left: ask.Left, Value: ask.Value, Guide: ask.Value, Scale: 1, Floor: ask.Price[i], Step: 1}
	var a shortlist.Answer
	var ok bool
	if m.p.Cutting.Stages == 0 {
		a, ok = shortlist.Search(q, length, meter)
	} else {
		a, ok = shortlist.SearchStages(q, m.rules(), length, meter)
	}
	if a.Strips != nil {
		return a, m.stripped(i, a.Strips), ok
	}
	if a.Filling != nil {
		return a, m.parcelled(i, a.Filling), ok
	}
	return a, nil, ok
}

// tightenings bounds the steps of one tightening.
const tightenings = 25

// tighten lowers a ceiling by prices on the limits of copies, see multiply. It
// is for sheets that one model alone describes.
func (o *oracle) tighten(i int, ask cover.Ask, reply *cover.Reply, meter *work.Meter) {
	if len(o.models) > 1 {
		return
	}
	m := o.models[0].loose
	b := bounded{f: filler{m: m, tries: 3}, guide: &o.guide, breath: 3, meter: meter}
	many := make([]int, len(ask.Left))
	for k, n := range ask.Left {
		many[k] = min(n*1000, 1000)
	}
	price, reduced := make([]int64, len(many)), make([]int64, len(many))
	step := 1.0
	for range tightenings {
		limits, norm := int64(0), 0.0
		for k := range reduced {
			reduced[k] = max(0, ask.Value[k]-price[k])
			limits += price[k] * int64(ask.Left[k])
		}
		if !m.stages(&o.guide, i, reduced, ask.Left, true, meter) {
			return
		}
		top := o.guide.Worth() + limits
		if top < reply.Worth[i] {
			reply.Worth[i] = top
		} else {
			step *= 0.7
		}
		if reply.Worth[i] <= ask.Price[i] {
			return
		}
		b.f.value, b.f.order = reduced, m.byValue(reduced)
		strips := b.strips(i, many)
		if strips == nil {
			return
		}
		used := uses(strips, len(many))
		for k, n := range used {
			if n > 0 {
				norm += float64(float64(n-ask.Left[k]) * float64(n-ask.Left[k]))
			}
		}
		if norm == 0 {
			return
		}
		for k, n := range used {
			if n > 0 {
				d := float64(n - ask.Left[k])
				price[k] = max(0, min(ask.Value[k], price[k]+int64(step*float64(top-ask.Price[i])*d/norm)))
			}
		}
	}
}

// staged says whether ceilings over stages bound what a sheet can be worth.
// Beside the narrow parts of a sequence there may be room that they do not see.
func (o *oracle) staged() bool {
	return stagedOnly(o.models[0].p) && !o.uneven()
}

func (o *oracle) uneven() bool {
	return slices.ContainsFunc(o.models[0].kinds, func(k kind) bool { return k.uneven })
}

// fewPieces: where so few are wanted, their limits tell, and short lists over all
// rectangles are worth their time.
const fewPieces = 64

// unlimited adds what any number of stages allows.
func (o *oracle) unlimited(ask cover.Ask, reply cover.Reply, meter *work.Meter) (cover.Reply, bool) {
	m := o.models[0]
	reply.Exact = !o.uneven()
	for i := range m.stock {
		if ask.Stock[i] == 0 {
			reply.Worth[i] = 0
			continue
		}
		if !m.loose.raster(&o.raster, i, ask.Value, ask.Left, meter) {
			reply.Exact = false
			return reply, !meter.Ended() || len(reply.Found) > 0
		}
		reply.Worth[i] = o.raster.Top()
		if reply.Worth[i] <= ask.Price[i] || len(m.stock[i].defects) > 0 || len(m.p.Sequences) > 0 {
			continue
		}
		p := m.loose.parcelled(i, o.raster.Filling(ask.Left))
		if p == nil && m.loose != m && m.raster(&o.closer, i, ask.Value, ask.Left, meter) {
			p = m.parcelled(i, o.closer.Filling(ask.Left))
		}
		if p != nil && worth(p, ask.Value) > ask.Price[i] {
			reply.Found = append(reply.Found, p)
		} else if len(reply.Found) == 0 && reply.Exact && m.p.Pieces() <= fewPieces {
			o.listed(m, i, ask, &reply, meter)
		}
	}
	return reply, true
}

// Uniform fills a sheet with one kind.
func (o *oracle) Uniform(i, k, most int) *cover.Pattern {
	var best *cover.Pattern
	for _, m := range o.models {
		m = m.exact
		left := make([]int, len(m.kinds))
		left[k] = most
		value := make([]int64, len(m.kinds))
		value[k] = 1
		f := filler{m: m, value: value, tries: 1}
		for _, l := range m.order(highest) {
			if l.Kind == k {
				f.order = append(f.order, l)
			}
		}
		if p := f.sheet(i, left); p != nil && (best == nil || p.Use[0].N > best.Use[0].N) {
			best = p
		}
	}
	return best
}

// Means returns 4: rounds of value correction.
func (o *oracle) Means() int { return 4 }

// Complete makes a round of value correction.
func (o *oracle) Complete(variant int, left, stockLeft []int, money int64, meter *work.Meter) ([]cover.Use, int64, bool) {
	if meter.Ended() {
		return nil, 0, false
	}
	c := o.correct[variant%len(o.correct)]
	uses, cost, ok := c.round(left, stockLeft, money, meter)
	return uses, cost, ok && cost < money
}

// Finish does nothing: trying everything out takes too long for sheets.
func (o *oracle) Finish([]int, []int, int64, int, *work.Meter) ([]cover.Use, int64, bool) {
	return nil, 0, false
}
