package corner

import (
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/work"
)

// Filler answers questions one after the other. The prices of limits that one ends
// with are those that the next begins with.
type Filler struct {
	table table
	price []int64 // by kind: of a copy
	value []int64 // by kind: less that price
	used  []int
	beam  beam
}

// mostSteps bounds the changes of prices for one question; the beam is tried at the
// first few, at every fourth then, and much wider in the end.
const (
	mostSteps  = 30
	firstSteps = 5
	laterEvery = 4
	wideFrom   = 10
	wider      = 10
)

// Fill returns fillings worth more than the floor: none if none was found or the
// meter ended.
func (f *Filler) Fill(q Question, meter *work.Meter) []*ceiling.Parcel {
	if !f.table.frame(q, meter) {
		return nil
	}
	if len(f.price) != len(q.Value) {
		f.price, f.value, f.used = make([]int64, len(q.Value)), make([]int64, len(q.Value)), make([]int, len(q.Value))
	}
	var fillings []*ceiling.Parcel
	best, lowest, scale := slices.Clone(f.price), int64(0), 0.5
	for n := range mostSteps {
		limits := f.lessen(q)
		if !f.table.fill(f.value, meter) {
			break
		}
		top := f.table.top() + limits
		if n == 0 || top < lowest {
			lowest = top
			copy(best, f.price)
		} else {
			scale *= 0.8
		}
		if top <= q.Floor {
			break
		}
		if n < firstSteps || n%laterEvery == 0 {
			width := q.Width
			if n > wideFrom {
				width *= wider
			}
			fillings = f.beam.search(&f.table, q, width, q.Floor-limits, meter)
		}
		if !f.correct(q, top, scale) || len(fillings) > 0 || meter.Ended() {
			break
		}
	}
	if len(fillings) == 0 {
		copy(f.price, best)
	}
	return fillings
}

// lessen takes the prices of limits off the values and returns what the limits
// are worth together.
func (f *Filler) lessen(q Question) int64 {
	limits := int64(0)
	for k := range f.value {
		f.price[k] = min(f.price[k], q.Value[k])
		f.value[k] = q.Value[k] - f.price[k]
		limits += f.price[k] * int64(q.Left[k])
	}
	return limits
}

// correct raises the prices of kinds that the table's filling uses too often, and
// lowers those of others (subgradient steps: Held, Wolfe and Crowder, "Validation of
// subgradient optimization", Mathematical Programming 6, 1974). It returns false if
// nothing is to be corrected.
func (f *Filler) correct(q Question, top int64, scale float64) bool {
	f.table.uses(f.used)
	norm := 0.0
	for k, n := range f.used {
		if n > q.Left[k] || f.price[k] > 0 {
			norm += float64(float64(n-q.Left[k]) * float64(n-q.Left[k]))
		}
	}
	if norm == 0 {
		return false
	}
	for k, n := range f.used {
		if n > q.Left[k] || f.price[k] > 0 {
			step := scale * float64(top-q.Floor) * float64(n-q.Left[k]) / norm
			f.price[k] = max(0, min(q.Value[k], f.price[k]+int64(step)))
		}
	}
	return true
}
