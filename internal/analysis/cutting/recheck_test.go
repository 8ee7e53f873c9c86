package cutting_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"scantling/internal/analysis/cutting"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/optimise/problem"
	"scantling/internal/plan"
	"scantling/internal/unit"
	"scantling/internal/words"
)

// bench puts a question together; lengths are millimetres.
type bench struct{ in cutting.Input }

func newBench() *bench {
	l := ledger.New(nil)
	return &bench{cutting.Input{
		Ledger: l, Kerf: l.Leaf("kerf", unit.MM(3), ledger.HouseRule, "the saw"),
		KeepLength: unit.MM(300), KeepWidth: unit.MM(50), FeedLong: unit.MM(150),
		Budget: problem.Budget{Work: 400_000, Workers: 1},
	}}
}

func (b *bench) fig(mm int64) ledger.Figure {
	return b.in.Ledger.Leaf("given", unit.MM(mm), ledger.Bought, "")
}

// board adds boards with 10 off each end and 2 off each edge.
func (b *bench) board(id string, length, width int64, have int, price int64) *cutting.Stock {
	b.in.Stock = append(b.in.Stock, cutting.Stock{ID: id, Label: id, Length: b.fig(length), Width: b.fig(width), Thickness: b.fig(27),
		End: b.fig(10), Edge: b.fig(2), Have: have, Price: price, Buyable: true})
	return &b.in.Stock[len(b.in.Stock)-1]
}

// sheet adds sheets with 5 off every side.
func (b *bench) sheet(id string, length, width int64, have int) *cutting.Stock {
	s := b.board(id, length, width, have, 1000)
	s.Sheet, s.End, s.Edge = true, b.fig(5), b.fig(5)
	return s
}

// pieces adds n equal workpieces of a mark.
func (b *bench) pieces(stock, mark string, n int, length, width int64) {
	for range n {
		b.in.Workpieces = append(b.in.Workpieces, plan.Workpiece{
			ID: fmt.Sprintf("blank.%s.%d", mark, len(b.in.Workpieces)+1), Kind: plan.BlankPiece, Mark: mark, Stock: stock, Count: 1,
			Length: b.fig(length), Width: b.fig(width), Thickness: b.fig(18),
		})
	}
}

func (b *bench) decide(t testing.TB) (cutting.Result, diag.List) {
	t.Helper()
	res, diags := cutting.Decide(t.Context(), b.in)
	for _, f := range recheck(b.in, res, diags) {
		t.Error(f)
	}
	return res, diags
}

// box is a rectangle in whole nanometres.
type box struct{ along, across, length, width unit.Length }

func boxOf(r plan.Rect) box { return box{r.Along.Nm, r.Across.Nm, r.Length.Nm, r.Width.Nm} }

// recheck saws every diagram up by itself and counts what comes off. It knows
// nothing of how diagrams are found.
func recheck(in cutting.Input, res cutting.Result, diags diag.List) []string {
	var faults []string
	fault := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	for _, d := range in.Ledger.Verify() {
		fault("%s", d)
	}
	pieces, stock := map[string]plan.Workpiece{}, map[string]cutting.Stock{}
	for _, w := range in.Workpieces {
		pieces[w.ID] = w
	}
	for _, s := range in.Stock {
		stock[s.ID] = s
	}
	made, boards := map[string]int{}, map[string]int{}
	for _, d := range res.Diagrams {
		boards[d.Stock] += d.Count
		one(in, d, stock[d.Stock], pieces, fault)
		for _, p := range d.Pieces {
			if len(p.Workpieces()) != d.Count {
				fault("%s: %d workpieces at a place of %d boards", d.ID, len(p.Workpieces()), d.Count)
			}
			for _, w := range p.Workpieces() {
				if made[w]++; res.From[w] != d.ID {
					fault("%s comes from %q, not %q", w, res.From[w], d.ID)
				}
				if pieces[w].Mark != p.Mark {
					fault("%s: %s is marked %s", d.ID, w, p.Mark)
				}
			}
		}
		for _, missing := range words.Missing(d.Bound) {
			fault("%s: %v", d.ID, missing)
		}
	}
	for _, w := range in.Workpieces {
		if made[w.ID] != 1 && len(diags) == 0 {
			fault("%s is cut %d times", w.ID, made[w.ID])
		}
	}
	for _, u := range res.Used {
		if u.Rack > u.Stock.Have || u.Rack+u.Buy != boards[u.Stock.ID] {
			fault("%s: %d of %d in the rack and %d bought, %d are cut", u.Stock.ID, u.Rack, u.Stock.Have, u.Buy, boards[u.Stock.ID])
		}
		if u.Buy > 0 && u.Rack < u.Stock.Have && len(u.Stock.Defects) == 0 {
			fault("%s: %d are bought and %d of %d in the rack left", u.Stock.ID, u.Buy, u.Stock.Have-u.Rack, u.Stock.Have)
		}
	}
	for _, d := range diags {
		for _, missing := range words.Missing(d.Text) {
			fault("%s: %v", d.Code, missing)
		}
	}
	return faults
}

// one saws one diagram up.
func one(in cutting.Input, d plan.Diagram, s cutting.Stock, pieces map[string]plan.Workpiece, fault func(string, ...any)) {
	kerf := in.Kerf.Nm
	hand := []box{{0, 0, s.Length.Nm, s.Width.Nm}}
	if !s.Sheet { // the jointer makes a board's edges straight
		hand[0] = box{0, s.Edge.Nm, s.Length.Nm, s.Width.Nm - 2*s.Edge.Nm}
	}
	dust := 0.0
	for i, c := range d.Cuts {
		r := boxOf(c.In)
		at := slices.Index(hand, r)
		rip := c.Kind == cutting.Rip || c.Kind == cutting.TrimEdge
		size, other := r.length, r.width
		if rip {
			size, other = other, size
		}
		if at < 0 || c.N != i+1 || c.At.Nm < 0 || c.At.Nm > size {
			fault("%s: cut %d at %v of %v is of nothing in hand", d.ID, c.N, c.At.Nm, r)
			return
		}
		if (c.Kind == cutting.Rip || c.Kind == cutting.Crosscut) && (max(r.length, r.width) < in.FeedLong || min(r.length, r.width) < in.FeedShort) {
			fault("%s: cut %d feeds a piece of %v × %v", d.ID, c.N, r.length, r.width)
		}
		near, far := r, r
		if rip {
			near.width, far.across, far.width = c.At.Nm, r.across+c.At.Nm+kerf, r.width-c.At.Nm-kerf
		} else {
			near.length, far.along, far.length = c.At.Nm, r.along+c.At.Nm+kerf, r.length-c.At.Nm-kerf
		}
		hand = slices.Delete(hand, at, at+1)
		for _, x := range []box{near, far} {
			if x.length > 0 && x.width > 0 {
				hand = append(hand, x)
			}
		}
		if c.Kind == cutting.Rip || c.Kind == cutting.Crosscut {
			dust += min(kerf, size-c.At.Nm).Millimetres() * other.Millimetres()
		}
	}
	lies(in, d, s, pieces, hand, fault)
	w := d.Waste
	if sum := w.Parts + w.Kerf + w.Trim + w.Defects + w.Remnant + w.Rest; math.Abs(sum-w.Whole) > 1e-6 || math.Abs(w.Kerf-dust) > 1e-3 {
		fault("%s: the waste adds up to %f of %f; %f of dust, counted %f", d.ID, sum, w.Whole, w.Kerf, dust)
	}
}

// lies holds pieces and rests against what is in hand at the end, the trims and
// each other.
func lies(in cutting.Input, d plan.Diagram, s cutting.Stock, pieces map[string]plan.Workpiece, hand []box, fault func(string, ...any)) {
	usable := box{s.End.Nm, s.Edge.Nm, s.Length.Nm - 2*s.End.Nm, s.Width.Nm - 2*s.Edge.Nm}
	take := func(what string, r box) {
		if r.along < usable.along || r.across < usable.across || r.along+r.length > usable.along+usable.length || r.across+r.width > usable.across+usable.width {
			fault("%s: %s at %v leaves the trimmed stock %v", d.ID, what, r, usable)
		}
		if i := slices.Index(hand, r); i >= 0 {
			hand = slices.Delete(hand, i, i+1)
		} else {
			fault("%s: %s at %v is not in hand", d.ID, what, r)
		}
	}
	for i, p := range d.Pieces {
		r := boxOf(p.Rect)
		take(p.Workpiece, r)
		if p.Turned {
			if !s.Turns {
				fault("%s: %s lies against the grain", d.ID, p.Workpiece)
			}
			r.length, r.width = r.width, r.length
		}
		for _, id := range p.Workpieces() {
			if w := pieces[id]; w.Length.Nm != r.length || w.Width.Nm != r.width {
				fault("%s: %s comes out %v × %v", d.ID, id, r.length, r.width)
			}
		}
		for _, q := range d.Pieces[:i] {
			a, b, k := boxOf(p.Rect), boxOf(q.Rect), in.Kerf.Nm
			if a.along < b.along+b.length+k && b.along < a.along+a.length+k && a.across < b.across+b.width+k && b.across < a.across+a.width+k {
				fault("%s: %s and %s are nearer than a kerf", d.ID, p.Workpiece, q.Workpiece)
			}
		}
	}
	for _, l := range d.Left {
		take("a rest", boxOf(l.Rect))
		if keep := l.Rect.Length.Nm >= in.KeepLength && l.Rect.Width.Nm >= in.KeepWidth; keep != l.Keep {
			fault("%s: a rest of %v × %v is kept: %v", d.ID, l.Rect.Length.Nm, l.Rect.Width.Nm, l.Keep)
		}
	}
	for _, r := range hand { // what is left in hand was trimmed off
		if r.along+r.length > usable.along && r.along < usable.along+usable.length && r.across+r.width > usable.across && r.across < usable.across+usable.width {
			fault("%s: %v is left in hand and nobody says so", d.ID, r)
		}
	}
}
