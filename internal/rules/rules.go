package rules

import (
	"errors"
	"maps"

	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/proportion"
	"scantling/internal/share"
	"scantling/internal/timber"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// Functions returns the functions by the names that ledger entries call them by.
func Functions() ledger.Functions {
	out := ledger.Functions{
		"share":      dealt,
		"season":     seasonal(grows),
		"season_dry": seasonal(shrinks),
		"housing_depth": proportioned(func(side, _, step unit.Length) (figure.Of[unit.Length], error) {
			return proportion.HousingDepth(side, step)
		}),
		"stopped_end":       stoppedEnd,
		"rebate_depth":      proportioned(cornerDepth),
		"back_rebate_depth": proportioned(backDepth),
		"groove_depth":      proportioned(grooveDepth),
		"nose_reach":        noseReach,
		"channel_mouth":     channel(func(c share.Channel) unit.Length { return c.Mouth }),
		"channel_depth":     channel(func(c share.Channel) unit.Length { return c.Groove.Depth }),
		"channel_radius":    channel(func(c share.Channel) unit.Length { return c.Groove.Radius }),
	}
	maps.Copy(out, ofContents())
	maps.Copy(out, ofTenons())
	maps.Copy(out, ofCorners())
	return out
}

var errArguments = errors.New("arguments that the function does not take")

func lengths(a []unit.Value) ([]unit.Length, error) {
	out := make([]unit.Length, len(a))
	for i, v := range a {
		l, ok := v.Length()
		if !ok {
			return nil, errArguments
		}
		out[i] = l
	}
	return out, nil
}

func cornerDepth(side, other, step unit.Length) (figure.Of[unit.Length], error) {
	r, err := proportion.CornerRebate(side, other, step)
	return r.Depth, err
}

func backDepth(side, back, step unit.Length) (figure.Of[unit.Length], error) {
	r, err := proportion.BackRebate(side, back, step)
	return r.Width, err
}

func grooveDepth(side, bottom, step unit.Length) (figure.Of[unit.Length], error) {
	g, err := proportion.BottomGroove(side, bottom, step)
	return g.Depth, err
}

// proportioned makes a rule of two thicknesses and a step a function.
func proportioned(rule func(side, other, step unit.Length) (figure.Of[unit.Length], error)) func([]unit.Value) (unit.Value, error) {
	return func(a []unit.Value) (unit.Value, error) {
		l, err := lengths(a)
		if err != nil || len(l) != 3 {
			return unit.Value{}, errArguments
		}
		f, err := rule(l[0], l[1], l[2])
		return unit.OfLength(f.Value), err
	}
}

func stoppedEnd(a []unit.Value) (unit.Value, error) {
	l, err := lengths(a)
	if err != nil || len(l) != 2 {
		return unit.Value{}, errArguments
	}
	f, err := proportion.StoppedEnd(l[0], l[1])
	return unit.OfLength(f.Value), err
}

// dealt shares a list of rods or lengths out to so many groups, each as wide as
// its things' heads or bodies.
func dealt(a []unit.Value) (unit.Value, error) {
	if len(a) != 2 || a[0].Dim() != unit.DimList {
		return unit.Value{}, errArguments
	}
	n, ok := a[1].Int()
	if !ok || n < 1 || n > share.MaxGroups {
		return unit.Value{}, errArguments
	}
	groups, err := share.Deal(a[0].List(), widthOf, int(n))
	if err != nil {
		return unit.Value{}, err
	}
	out := make([]unit.Value, len(groups))
	for i, g := range groups {
		out[i] = unit.OfList(g...)
	}
	return unit.OfList(out...), nil
}

// widthOf is what a rod (key, diameter, length, head's diameter and length) or a
// bare length takes up across.
func widthOf(v unit.Value) unit.Length {
	if l, ok := v.Length(); ok {
		return l
	}
	widest := unit.Length(0)
	for _, i := range []int64{2, 4} {
		item, _ := v.Item(i)
		if l, ok := item.Length(); ok {
			widest = max(widest, l)
		}
	}
	return widest
}

func grows(m timber.Material, s timber.Season, size, play unit.Length) (unit.Length, error) {
	leave, err := timber.Inset{Material: m, Season: s, Play: play}.OpeningFor(size)
	return leave.Today, err
}

func shrinks(m timber.Material, s timber.Season, size, play unit.Length) (unit.Length, error) {
	swing, err := m.Swing(size, s)
	return swing.Shrinks() + play, err
}

// seasonal makes what the seasons do to a size a function: size, reserve, the
// moisture now, dry and wet, and for each material its species and how it is
// sawn. The greatest of the materials counts.
func seasonal(what func(timber.Material, timber.Season, unit.Length, unit.Length) (unit.Length, error)) func([]unit.Value) (unit.Value, error) {
	return func(a []unit.Value) (unit.Value, error) {
		if len(a) < 3 {
			return unit.Value{}, errArguments
		}
		l, err := lengths(a[:2])
		if err != nil || a[2].Len() != 3 {
			return unit.Value{}, errArguments
		}
		var ends [3]timber.Moisture
		for i := range ends {
			m, _ := a[2].Item(int64(i + 1))
			ends[i] = timber.Moisture(m.Float())
		}
		most := l[1]
		for _, wood := range a[3:] {
			name, _ := wood.Item(1)
			sawn, _ := wood.Item(2)
			species, err := timber.FromValue(name)
			if err != nil {
				return unit.Value{}, err
			}
			m := timber.Material{Species: species, Sawn: timber.Sawn(sawn.Text()), Across: timber.Width}
			leave, err := what(m, timber.Season{Now: ends[0], Dry: ends[1], Wet: ends[2]}, l[0], l[1])
			if err != nil {
				return unit.Value{}, err
			}
			most = max(most, leave)
		}
		return unit.OfLength(most), nil
	}
}

// channel makes one figure of a rod's channel a function: diameter, the widest
// mouth, and the round-nose cutters (name, diameter, cutting length).
func channel(what func(share.Channel) unit.Length) func([]unit.Value) (unit.Value, error) {
	return func(a []unit.Value) (unit.Value, error) {
		if len(a) != 3 {
			return unit.Value{}, errArguments
		}
		l, err := lengths(a[:2])
		if err != nil {
			return unit.Value{}, err
		}
		var cutters []tool.Cutter
		for _, v := range a[2].List() {
			name, _ := v.Item(1)
			sizes, err := lengths(v.List()[1:])
			if err != nil || len(sizes) != 2 {
				return unit.Value{}, errArguments
			}
			cutters = append(cutters, tool.Cutter{Name: name.Text(), Shape: tool.RoundNose, Diameter: sizes[0], CuttingLength: sizes[1]})
		}
		c, err := share.ChannelFor(l[0], cutters, max(l[1], 1))
		return unit.OfLength(what(c)), err
	}
}
