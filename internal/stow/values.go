package stow

import (
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// values gathers what formulas may take of a lot.
func (x *reading) values() {
	lot, l := &x.lot, x.ledger()
	x.length("wide", lot.Needs[0])
	x.length("deep", lot.Needs[1])
	x.length("high", lot.Needs[2])
	x.length("tall", lot.Size[2])
	x.length("play", lot.Play)
	x.length("lining", lot.Lining)
	x.length("finger", lot.Finger)
	x.length("divider", lot.Divider)
	x.length("around", lot.Around)
	x.length("above", lot.Above)
	x.length("cell_wide", lot.Cell[0])
	x.length("cell_deep", lot.Cell[1])
	x.length("pitch_wide", l.Sum(x.name+".pitch_wide", lot.Cell[0], lot.Divider))
	x.length("pitch_deep", l.Sum(x.name+".pitch_deep", lot.Cell[1], lot.Divider))
	for name, f := range map[string]piece.Figure{"diameter": lot.Diameter, "thick": lot.Thick, "cap": lot.Cap, "shoulder": lot.Shoulder, "divider_high": lot.DividerHigh} {
		if f.Entry != 0 {
			x.length(name, f)
		}
	}
	for name, id := range x.counts {
		x.lot.Values[name] = formula.Value{Kind: formula.Quantity, Is: l.Value(id), Entry: id}
	}
	x.made("places", ledger.OpMul, x.product(x.counts["columns"], x.counts["rows"]), x.counts["stack"])
	x.made("free", ledger.OpSub, x.product(x.lot.Values["places"].Entry, x.counts["among"]), x.counts["count"])
	if lot.DividerHigh.Entry != 0 { // what stands out of the cells, on the same lining
		x.length("proud", l.Less(x.name+".proud", l.Figure(x.product(x.counts["stack"], lot.Size[2].Entry)), lot.DividerHigh))
	}
	x.crossings()
	if x.kind == Sheet {
		x.length("long", l.Figure(x.product(x.counts["wanted"], lot.Cell[x.runs].Entry)))
	}
	if lot.Mass.Entry != 0 {
		x.lot.Values["mass"] = formula.Value{Kind: formula.Quantity, Is: lot.Mass.Value, Entry: lot.Mass.Entry}
		x.made("load", ledger.OpMul, x.lot.Values["places"].Entry, lot.Mass.Entry)
	}
}

// crossings gives what the slots of dividers that cross are cut to.
func (x *reading) crossings() {
	lot, l := &x.lot, x.ledger()
	if lot.Divider.Nm == 0 || lot.Columns < 2 || lot.Rows < 2 {
		return
	}
	half := l.Half("", lot.Divider)
	x.length("slot_first_wide", l.Sum(x.name+".slot_first_wide", lot.Cell[0], half))
	x.length("slot_first_deep", l.Sum(x.name+".slot_first_deep", lot.Cell[1], half))
	x.called("slot_width", "crossing_width", lot.Divider)
	if lot.DividerHigh.Nm > 0 {
		x.called("slot_depth", "crossing_depth", lot.DividerHigh)
	}
	x.made("slots", ledger.OpMul, x.product(x.plain(2), x.less(x.counts["columns"])), x.less(x.counts["rows"]))
}

// called gives a length by one of the trade's functions.
func (x *reading) called(name, fn string, of piece.Figure) {
	f, err := x.ledger().Call(x.name+"."+name, fn, of.Entry)
	if err != nil {
		x.failed = true
		x.Maker.Refused(err, x.Block.Where)
		return
	}
	x.length(name, f)
}

func (x *reading) length(name string, f piece.Figure) {
	x.lot.Values[name] = formula.Value{Kind: formula.Quantity, Is: unit.OfLength(f.Nm), Entry: f.Entry}
}

func (x *reading) made(name string, op ledger.Op, a, b ledger.ID) {
	id, err := x.ledger().Make(x.name+"."+name, op, "", a, b)
	if err != nil {
		x.failed = true
		return
	}
	x.lot.Values[name] = formula.Value{Kind: formula.Quantity, Is: x.ledger().Value(id), Entry: id}
}
