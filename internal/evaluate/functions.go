package evaluate

import (
	"strings"

	"scantling/internal/document"
	"scantling/internal/equip"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/rules"
	"scantling/internal/share"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// Functions are the pure functions that a ledger must know to re-do what this
// package enters in it.
func Functions() ledger.Functions { return formula.Functions(rules.Functions()) }

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
	case "mouth", "sinks", "swing":
		return e.ofLengths(c, args, name), true
	case "spread":
		return e.spread(c, args, name), true
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
		e.s.maker.Refused(err, c.Place())
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
			w.fault(formula.CodeWrongReference, item.Where, message.Word("want", "kind.material"), message.Word("got", item.Word()))
			return formula.Value{}
		}
		a := mat.stock()
		if a.Species == "" {
			return formula.Value{} // reported with the material
		}
		if a.Sheet {
			continue // board materials keep their size
		}
		species, err := w.shop.Wood(a.Species)
		if err != nil {
			return formula.Value{} // reported with the material
		}
		wood := unit.OfList(species.Value(), unit.OfText(sawnOf(mat, a)))
		ids = append(ids, w.ledger.Given(ledger.Entry{Name: "material." + mat.name() + ".wood", Value: wood, Origin: ledger.Bought, Where: mat.b.Where}))
	}
	id, err := w.ledger.Make(name, ledger.OpCall, fn, ids...)
	if err != nil {
		e.s.maker.Refused(err, c.Place())
		return formula.Value{}
	}
	id = w.ledger.At(id, c.Place())
	return formula.Value{Kind: formula.Quantity, Entry: id, Is: w.ledger.Value(id), Where: c.Place()}
}

// sawnOf says how the material is sawn, in the words of package timber.
func sawnOf(m *material, a equip.Answer) string {
	word := m.s.words(m.b, "sawn")
	if word == "" {
		word = a.Sawn
	}
	if word == "flat" || word == "quarter" {
		return word + "-sawn"
	}
	return strings.TrimSpace(string(timber.SawnUnknown))
}
