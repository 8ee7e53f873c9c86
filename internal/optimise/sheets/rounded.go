package sheets

import (
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/coarse"
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/work"
)

// rounded returns the models to search: models themselves where a side is at most
// so many units, few enough for tables, and otherwise models of small numbers, whose patterns
// are laid out anew in true sizes. What they prove is proved by their loose
// models. Where the rooms are the same, both are one.
func rounded(models []*model, most int64, meter *work.Meter) []*model {
	m := models[0]
	if m.counted(most) {
		return models
	}
	x, ok := m.axis(func(k *kind) (int64, int64) { return k.x, k.tx }, func(t *stock) int64 { return t.x }, most, meter)
	if !ok {
		return models
	}
	y, ok := m.axis(func(k *kind) (int64, int64) { return k.y, k.ty }, func(t *stock) int64 { return t.y }, most, meter)
	if !ok {
		return models
	}
	var out []*model
	for i, m := range models {
		if i > 0 { // the strips lie the other way
			x, y = y, x
		}
		m.loose = m.with(x, y, x.scale.Loose, y.scale.Loose)
		tight := m.loose
		if m.hasDefects() {
			tight = m // knapsacks do not see defects: strips in true sizes do
		} else if !x.scale.Same() || !y.scale.Same() {
			tight = m.with(x, y, x.scale.Tight, y.scale.Tight)
			tight.loose = m.loose
		}
		out = append(out, tight)
	}
	return out
}

// axis is what the sizes along an axis become.
type axis struct {
	scale coarse.Scale
	to    map[int64]int64
}

// axis finds a scale; sides returns a kind's size along the axis as it is and
// turned, room that of a sheet.
func (m *model) axis(sides func(*kind) (int64, int64), room func(*stock) int64, most int64, meter *work.Meter) (axis, bool) {
	copies := map[int64]int{}
	for i := range m.kinds {
		k := &m.kinds[i]
		as, turned := sides(k)
		copies[as] += k.d
		if k.turn {
			copies[turned] += k.d
		}
	}
	var list []coarse.Side
	for size, n := range copies {
		list = append(list, coarse.Side{Size: size, Copies: n})
	}
	slices.SortFunc(list, func(a, b coarse.Side) int { return int(min(1, max(-1, a.Size-b.Size))) })
	var rooms []int64
	for i := range m.stock {
		rooms = append(rooms, room(&m.stock[i]))
	}
	a := axis{scale: coarse.As(list, rooms), to: map[int64]int64{}}
	ok := true
	if slices.Max(rooms) > most {
		a.scale, ok = coarse.Axis(list, rooms, most, m.p.Cutting.Exact, meter)
	}
	for i, to := range a.scale.To {
		a.to[list[i].Size] = to
	}
	return a, ok
}

// with returns the model in small numbers with the given rooms, without defects.
func (m *model) with(x, y axis, wide, high []int64) *model {
	c := *m
	c.kinds, c.stock, c.largest = slices.Clone(m.kinds), slices.Clone(m.stock), 0
	for i := range c.kinds {
		k := &c.kinds[i]
		k.x, k.y, k.tx, k.ty = x.to[k.x], y.to[k.y], x.to[k.tx], y.to[k.ty]
		c.largest = max(c.largest, float64(k.x)*float64(k.y))
	}
	for i := range c.stock {
		c.stock[i].x, c.stock[i].y, c.stock[i].defects = max(1, wide[i]), max(1, high[i]), nil
	}
	c.exact, c.loose = m, &c
	return &c
}

func (m *model) hasDefects() bool {
	return slices.ContainsFunc(m.stock, func(t stock) bool { return len(t.defects) > 0 })
}

// truly gives pieces their true sizes.
func (m *model) truly(l lying) lying {
	k := &m.exact.kinds[l.Kind]
	if l.X, l.Y = k.x, k.y; l.Turned {
		l.X, l.Y = k.tx, k.ty
	}
	return l
}

// laid returns the pattern of strips as this model lays them, in true sizes; nil
// if they do not fit or cannot be sawn.
func (m *model) laid(stock int, strips []strip) *cover.Pattern {
	if m.exact == m {
		return m.feedable(m.newPattern(stock, strips))
	}
	var list []ceiling.Strip
	for _, s := range strips {
		var row ceiling.Strip
		for _, c := range s.columns {
			var stack []lying
			for _, it := range c.items {
				stack = append(stack, lying{Kind: it.kind, Turned: it.turned})
			}
			row = append(row, stack)
		}
		list = append(list, row)
	}
	p := m.stripped(stock, list)
	if p == nil {
		return nil
	}
	return m.feedable(p)
}
