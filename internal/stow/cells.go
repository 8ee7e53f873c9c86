package stow

import (
	"scantling/internal/ledger"
	"scantling/internal/share"
	"scantling/internal/unit"
)

// stated reads a count; where it is not said, the usual one stands.
func (x *reading) stated(attribute string, least, usual int) (int, ledger.ID) {
	name := x.name + "." + attribute
	if !x.Has(attribute) {
		return usual, x.ledger().Given(ledger.Entry{Name: name, Value: unit.OfCount(usual), Origin: ledger.Default})
	}
	n, v, ok := x.Maker.Count(x.Value(attribute, name), least, share.MaxThings, name)
	x.failed = x.failed || !ok
	return n, v.Entry
}

// wishes reads the counts that the block states.
func (x *reading) wishes() bool {
	lot := &x.lot
	if !x.Has("count") {
		x.Missing("count")
		return false
	}
	lot.Count, x.counts["count"] = x.stated("count", 1, 1)
	lot.Among, x.counts["among"] = x.stated("among", 1, 1)
	lot.Stack, x.counts["stack"] = x.stated("stack", 1, 1)
	lot.Columns, x.counts["columns"] = x.stated("columns", 1, 0)
	lot.Rows, x.counts["rows"] = x.stated("rows", 1, 0)
	lot.Spare, x.spare = x.stated("spare", 0, 0)
	x.growth = x.ledger().Given(ledger.Entry{Name: x.name + ".growth", Value: unit.OfInt(unit.DimRatio, 0), Origin: ledger.Default})
	if x.Has("growth") {
		if v, ok := x.ratio("growth"); ok {
			x.growth = v.Entry
		}
	}
	if x.kind == Sheet && lot.Columns == 0 && lot.Rows == 0 { // sheets stand in one row
		one := x.ledger().Given(ledger.Entry{Value: unit.OfCount(1), Origin: ledger.Default})
		if x.runs == 0 {
			lot.Rows, x.counts["rows"] = 1, one
		} else {
			lot.Columns, x.counts["columns"] = 1, one
		}
	}
	return !x.failed
}

// cells works out how many cells there are.
func (x *reading) cells() bool {
	if !x.wishes() {
		return false
	}
	lot, c := &x.lot, x.counts
	cells, ok := x.call("cells_each", c["count"], x.growth, x.spare, c["among"], c["stack"])
	if !ok {
		return false
	}
	n, _ := x.ledger().Value(cells).Int()
	if lot.Columns > 0 && lot.Rows > 0 && lot.Columns*lot.Rows < int(n) {
		x.tooFew(int(n))
		return false
	}
	columns, okC := x.call("columns", cells, c["columns"], c["rows"])
	rows, okR := x.call("rows", cells, c["columns"], c["rows"])
	wanted, okW := x.call("cells_each", c["count"], x.growth, x.spare, x.plain(1), x.plain(1))
	if !okC || !okR || !okW {
		return false
	}
	c["columns"], c["rows"], c["wanted"] = columns, rows, wanted
	lot.Columns, lot.Rows, lot.Wanted = x.count("columns"), x.count("rows"), x.count("wanted")
	return true
}

// count is a count that has been worked out.
func (x *reading) count(name string) int {
	n, _ := x.ledger().Value(x.counts[name]).Int()
	return int(n)
}

// call makes a count by one of the trade's functions; a refusal is reported.
func (x *reading) call(fn string, args ...ledger.ID) (ledger.ID, bool) {
	id, err := x.ledger().Make(x.name+"."+fn, ledger.OpCall, fn, args...)
	if err != nil {
		x.failed = true
		x.Maker.Refused(err, x.Block.Where)
	}
	return id, err == nil
}
