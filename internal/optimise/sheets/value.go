package sheets

import (
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

// lagrange is what one unit of value is in the multipliers' numbers.
const lagrange = 1 << 10

// multiplyShare is the part of the work that multiply may take: one in so many.
const multiplyShare = 2

// nearly: of prices whose ceilings are apart by less than one in so many, the
// later ones are the better guide, as they tell more kinds apart.
const nearly = 256

// multiply tightens the ceiling on the value of one sheet: the limits on copies
// are given prices, which are paid for pieces that are cut and gained for those
// that may be (Lagrangian relaxation; Beasley, "An exact two-dimensional
// non-guillotine cutting tree search procedure", Operations Research 33, 1985,
// uses it for another cutting problem). Everything is in whole numbers, so every
// ceiling is proved. The fillings found on the way are mended and offered.
func (s *search) multiply(meter *work.Meter) {
	m := s.models[0]
	if !m.loose.fine() {
		return
	}
	left, _ := m.demand()
	value := m.values()
	price := s.exact[0].pricesByArea() // of the limit on each kind
	reduced := make([]int64, len(value))
	step, stale := 0.3, 0
	along := make([]float64, len(value)) // where the prices are going
	o := newOracle(s.models)
	o.raster.Large = true
	for range 300 {
		if s.done() || meter.Ended() || step < 1e-3 {
			return
		}
		limits := int64(0)
		for k := range value {
			reduced[k] = max(0, value[k]*lagrange-price[k])
			limits += price[k] * int64(left[k])
		}
		top, used, ok := s.ceilingAt(o, reduced, left, meter)
		if !ok {
			return
		}
		bound := (top + limits) / lagrange / m.step * m.step
		if s.reduced == nil || bound < s.level+s.level/nearly {
			s.reduced = slices.Clone(reduced)
		}
		if s.level == 0 || bound < s.level {
			s.level, stale = bound, 0
		} else if stale++; stale >= 8 {
			step, stale = step/2, 0
		}
		if bound < s.bound {
			s.bound, s.proof = bound, problem.ByColumns
		}
		if !s.adjust(price, along, left, used, step, top+limits) {
			return // no limit is passed: nothing more to gain
		}
	}
}

// adjust moves the prices along the excess of copies and where they went before
// (Camerini, Fratta and Maffioli, "On improving relaxation methods by modified
// gradient techniques", Mathematical Programming Study 3, 1975); it returns
// false if there is no excess and no price could fall.
func (s *search) adjust(price []int64, along []float64, left, used []int, step float64, top int64) bool {
	value := s.models[0].values()
	norm := 0.0
	for k := range price {
		d := used[k] - left[k]
		if d <= 0 && price[k] == 0 {
			along[k] = 0
			continue
		}
		along[k] = float64(d) + float64(0.8*along[k])
		norm += float64(along[k] * along[k])
	}
	if norm == 0 {
		return false
	}
	gap := float64(top + s.cost*lagrange)
	for k := range price {
		price[k] = max(0, min(price[k]+int64(step*gap*along[k]/norm), value[k]*lagrange))
	}
	return true
}

// ceilingAt returns a ceiling at the given values, how often the filling that
// reaches it uses each kind, and offers fillings within the limits.
func (s *search) ceilingAt(o *oracle, values []int64, left []int, meter *work.Meter) (int64, []int, bool) {
	many := make([]int, len(left))
	for k := range many {
		if many[k] = left[k]; left[k] > 0 {
			many[k] = problem.MaxPieces
		}
	}
	used := make([]int, len(left))
	if s.p.Cutting.Stages == 0 {
		m := s.models[0]
		if !m.loose.raster(&o.raster, 0, values, left, meter) {
			return 0, nil, false
		}
		o.raster.Filling(many).Walk(func(p *ceiling.Parcel) {
			if p.Piece != nil {
				used[p.Piece.Kind]++
			}
		})
		p := m.loose.parcelled(0, o.raster.Filling(left))
		if p == nil && m.loose != m && m.raster(&o.closer, 0, values, left, meter) {
			p = m.parcelled(0, o.closer.Filling(left))
		}
		s.mend(p)
		return o.raster.Top(), used, true
	}
	var top int64
	for _, m := range s.models {
		if !m.loose.stages(&o.guide, 0, values, left, true, meter) {
			return 0, nil, false
		}
		b := bounded{f: filler{m: m.loose, value: values, order: m.loose.byValue(values)}, guide: &o.guide, breath: 2, meter: meter}
		if o.guide.Worth() >= top {
			top = o.guide.Worth()
			used = uses(b.strips(0, many), len(many))
		}
		b.breath = 4
		p := b.sheet(0, left)
		if p == nil && m.loose != m && m.stages(&o.near, 0, values, left, true, meter) {
			b.f.m, b.f.order, b.guide = m, m.byValue(values), &o.near
			p = b.sheet(0, left)
		}
		s.mend(p)
	}
	return top, used, true
}

// mend offers a filling; value correction has its turn where it is not staged.
func (s *search) mend(p *cover.Pattern) {
	if p == nil || len(s.p.Stock[0].Defects) > 0 {
		return
	}
	s.offer([]cover.Use{{Pattern: p, N: 1}}, -worth(p, s.models[0].values()))
}
