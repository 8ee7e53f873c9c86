package evaluate

import (
	"errors"
	"strings"

	"scantling/internal/document"
	"scantling/internal/figure"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/proportion"
	"scantling/internal/share"
	"scantling/internal/timber"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// Functions are the pure functions that a ledger must know to re-do what this
// package enters in it.
func Functions() ledger.Functions {
	return formula.Functions(ledger.Functions{
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
		"channel_mouth":     channel(func(c share.Channel) unit.Length { return c.Mouth }),
		"channel_depth":     channel(func(c share.Channel) unit.Length { return c.Groove.Depth }),
		"channel_radius":    channel(func(c share.Channel) unit.Length { return c.Groove.Radius }),
	})
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
			species, err := timber.Default().Find(name.Text())
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

// roundNoses returns the shop's round-nose cutters, or the one asked for, and
// their line in the ledger.
func (w *world) roundNoses(asked string) ([]tool.Cutter, ledger.ID) {
	var tools []tool.Cutter
	var values []unit.Value
	for _, c := range w.shop.Cutters {
		if c.Tool.Shape == tool.RoundNose && (asked == "" || asked == c.ID) {
			tools = append(tools, c.Tool)
			values = append(values, unit.OfList(unit.OfText(c.ID), unit.OfLength(c.Tool.Diameter), unit.OfLength(c.Tool.CuttingLength)))
		}
	}
	return tools, w.ledger.Given(ledger.Entry{Name: "shop.round-nose-cutters", Value: unit.OfList(values...), Origin: ledger.Bought, Where: w.shop.Where})
}

// Call runs the functions that know the shop or the contents.
func (e env) Call(c *document.Call, args []formula.Value, name string) (formula.Value, bool) {
	switch c.Func {
	case "share":
		return e.share(c, args, name), true
	case "season", "season_dry":
		return e.season(c, c.Func, args[0], args[1], args[2], name), true
	case "loose":
		half := formula.Value{Kind: formula.Quantity, Is: unit.OfLength(unit.Millimetre / 2), Where: c.Place()}
		half.Entry = e.s.w.ledger.Given(ledger.Entry{Name: "loose-play", Value: half.Is, Origin: ledger.HouseRule, Where: c.Place()})
		return e.season(c, "season", args[1], args[0], half, name), true
	}
	return formula.Value{}, false
}

func (e env) share(c *document.Call, args []formula.Value, name string) formula.Value {
	w, list := e.s.w, args[0]
	if of, ok := list.Ref.(*contents); ok && list.Kind == formula.Reference {
		list = of.all()
	}
	if !list.OK() {
		return list
	}
	n, count, ok := e.s.maker.Count(args[1], 1, share.MaxGroups, "")
	if !ok {
		return formula.Value{}
	}
	if list.Kind != formula.List || list.Entry == 0 {
		w.fault(formula.CodeWrongKind, c.Args[0].Place(), message.Word("got", list.Word()), message.Word("want", "kind.list"))
		return formula.Value{}
	}
	id, err := w.ledger.Make(name, ledger.OpCall, "share", list.Entry, count.Entry)
	if err != nil {
		w.refused(err, c.Place())
		return formula.Value{}
	}
	id = w.ledger.At(id, c.Place())
	out := formula.Value{Kind: formula.List, Entry: id, Is: w.ledger.Value(id), Where: c.Place(), Ref: list.Ref}
	at := 0
	for k := range n {
		of, _ := out.Is.Item(int64(k + 1))
		group := formula.Value{Kind: formula.List, Items: list.Items[at : at+of.Len()], Where: c.Place(), Ref: list.Ref}
		nth := w.ledger.Given(ledger.Entry{Value: unit.OfCount(k + 1), Origin: ledger.Derived})
		group.Entry = w.make("", ledger.OpItem, id, nth)
		group.Is = w.ledger.Value(group.Entry)
		out.Items = append(out.Items, group)
		at += of.Len()
	}
	return out
}

// season works out what to leave for the seasons: size, materials, reserve.
func (e env) season(c *document.Call, fn string, size, materials, reserve formula.Value, name string) formula.Value {
	w, m := e.s.w, e.s.maker
	size, okS := m.Length(size, "")
	reserve, okR := m.Length(reserve, "")
	if !okS || !okR {
		return formula.Value{}
	}
	items := materials.Items
	if materials.Kind == formula.Reference {
		items = []formula.Value{materials}
	}
	s := w.shop.Climate.Season
	moisture := func(x timber.Moisture) unit.Value { return unit.OfFloat(unit.DimMoisture, float64(x)) }
	season := w.ledger.Given(ledger.Entry{Name: "shop.season", Value: unit.OfList(moisture(s.Now), moisture(s.Dry), moisture(s.Wet)),
		Origin: ledger.Reference, Source: timber.SourceEMC.String(), Status: string(timber.SourceEMC.Status), Where: w.shop.Where})
	ids := []ledger.ID{size.Entry, reserve.Entry, season}
	if len(items) == 0 {
		w.fault(formula.CodeWrongKind, c.Place(), message.Word("got", materials.Word()), message.Word("want", "kind.material"))
		return formula.Value{}
	}
	for _, item := range items {
		mat, ok := item.Ref.(*material)
		if !ok {
			w.fault(CodeWrongReference, item.Where, message.Word("want", "kind.material"), message.Word("got", item.Word()))
			return formula.Value{}
		}
		a := mat.stock()
		if a.species == "" {
			return formula.Value{} // reported with the material
		}
		if a.sheet {
			continue // board materials keep their size
		}
		wood := unit.OfList(unit.OfText(a.species), unit.OfText(sawnOf(mat, a)))
		ids = append(ids, w.ledger.Given(ledger.Entry{Name: "material." + mat.name() + ".wood", Value: wood, Origin: ledger.Bought, Where: mat.b.Where}))
	}
	id, err := w.ledger.Make(name, ledger.OpCall, fn, ids...)
	if err != nil {
		w.refused(err, c.Place())
		return formula.Value{}
	}
	id = w.ledger.At(id, c.Place())
	return formula.Value{Kind: formula.Quantity, Entry: id, Is: w.ledger.Value(id), Where: c.Place()}
}

// sawnOf says how the material is sawn, in the words of package timber.
func sawnOf(m *material, a answer) string {
	word := m.s.words(m.b, "sawn")
	if word == "" {
		word = a.sawn
	}
	if word == "flat" || word == "quarter" {
		return word + "-sawn"
	}
	return strings.TrimSpace(string(timber.SawnUnknown))
}
