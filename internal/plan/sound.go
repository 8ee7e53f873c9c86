package plan

import (
	"fmt"
	"reflect"

	"scantling/internal/address"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Unsound returns everything in which a plan contradicts itself: figures that are
// not what their ledger entries say, entries whose arithmetic does not give their
// value, rows, series and sums that do not close, parts that are not as large as
// their extents, panels that are not as wide as their strips, pieces of a diagram
// that overlap, leave the stock, are not the size of their workpiece or are cut
// never or twice, stages that do not hold their rows, names of workpieces that do
// not exist, a cost that is not the sum of its lines. The texts are for tests and
// logs. The functions that ledger entries call must be known to the ledger.
func (p *Plan) Unsound() []string {
	c := checker{plan: p}
	c.figures()
	for _, d := range p.Ledger.Verify() {
		c.add("%s", d)
	}
	c.parts()
	c.rows()
	c.sums()
	c.workpieces()
	c.diagrams()
	c.stages()
	c.cost()
	return c.faults
}

type checker struct {
	plan   *Plan
	faults []string
}

func (c *checker) add(format string, args ...any) {
	c.faults = append(c.faults, fmt.Sprintf(format, args...))
}

var figureType = reflect.TypeFor[Figure]()

// figures holds every figure of the plan against its ledger entry.
func (c *checker) figures() {
	ledger := c.plan.Ledger
	var walk func(v reflect.Value, where string)
	walk = func(v reflect.Value, where string) {
		if v.Type() == figureType {
			f := v.Interface().(Figure)
			if f == (Figure{}) {
				return
			}
			if err := ledger.VerifyFigure(f); err != nil {
				c.add("%s: %v", where, err)
			}
			return
		}
		switch v.Kind() {
		case reflect.Struct:
			for i := range v.NumField() {
				if f := v.Type().Field(i); f.IsExported() && f.Name != "Ledger" {
					walk(v.Field(i), where+"."+f.Name)
				}
			}
		case reflect.Slice, reflect.Array:
			for i := range v.Len() {
				walk(v.Index(i), fmt.Sprintf("%s[%d]", where, i+1))
			}
		case reflect.Pointer:
			if !v.IsNil() {
				walk(v.Elem(), where)
			}
		}
	}
	walk(reflect.ValueOf(c.plan).Elem(), "plan")
}

// parts holds sizes against extents, and rows of the list against their parts.
func (c *checker) parts() {
	byAddress := map[address.Address]piece.Part{}
	for _, p := range c.plan.Piece.Parts {
		byAddress[p.Address] = p
		for local, d := range p.Frame.Directions() {
			axis, _ := d.Axis()
			if got, want := p.Sizes()[local].Nm, p.Extent[axis].Size(); got != want {
				c.add("%s: size %d is %v, its extent %v", p.Address, local, got, want)
			}
		}
	}
	for _, r := range c.plan.Parts {
		for _, m := range r.Members {
			p := byAddress[m]
			if p.Length.Nm != r.Length.Nm || p.Width.Nm != r.Width.Nm || p.Thickness.Nm != r.Thickness.Nm {
				c.add("row %s is not the size of %s", r.Mark, m)
			}
		}
	}
	for _, s := range c.plan.Piece.Spaces {
		for axis, e := range s.Extent {
			if want := e.Size() - c.lost(piece.Axis(axis), e); s.Clear[axis].Nm != want {
				c.add("%s: clear size %d is %v, its extent less what is sawn away %v", s.Address, axis, s.Clear[axis].Nm, want)
			}
		}
	}
}

// lost is what is sawn away of a stretch with the lids that come off between its ends.
func (c *checker) lost(axis piece.Axis, e piece.Extent) unit.Length {
	var lost unit.Length
	for _, s := range c.plan.Piece.Sawn {
		if axis == piece.Up && e.Low.Nm <= s.Lost.Low.Nm && e.High.Nm >= s.Lost.High.Nm {
			lost += s.Takes.Nm
		}
	}
	return lost
}

func (c *checker) rows() {
	for _, r := range c.plan.Rows {
		c.closes("row "+string(r.Address), r.Terms, r.Total.Nm)
	}
	for _, s := range c.plan.Piece.Series {
		c.closes("series "+string(s.Address), s.Terms, s.Whole.Nm)
	}
}

func (c *checker) closes(what string, terms []piece.Term, total unit.Length) {
	sum := unit.Length(0)
	for _, t := range terms {
		if t.Figure.Nm < 0 {
			c.add("%s has a term below nought", what)
		}
		sum += t.Figure.Nm
	}
	if sum != total {
		c.add("%s adds up to %d nm, its total is %d nm", what, sum, total)
	}
}

func (c *checker) sums() {
	check := func(what string, sums []Sum) {
		for _, s := range sums {
			total := unit.Length(0)
			for _, t := range s.Terms {
				total += t.Figure.Nm
			}
			if total != s.Total.Nm {
				c.add("%s: a sum adds up to %d nm, its total is %d nm", what, total, s.Total.Nm)
			}
		}
	}
	for _, s := range c.plan.Setups {
		check(s.ID, s.Sums)
		for _, pm := range s.Placements {
			check(fmt.Sprintf("%s placement %d", s.ID, pm.N), pm.Sums)
		}
	}
}
