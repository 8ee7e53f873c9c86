package blanks_test

import (
	"fmt"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/blanks"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
	"scantling/internal/words"
)

// tenth is the unit of the numbers below: a tenth of a millimetre.
const tenth = unit.Millimetre / 10

// bench puts rows, cuts and a shop together. Numbers are tenths of a millimetre.
type bench struct {
	in blanks.Input
}

// newBench has rough cherry 2400 × 165 × 27 in the rack, a jointer of 150, a
// thicknesser of 300 and machines that want 300 and 305.
func newBench() *bench {
	l := ledger.New(nil)
	return &bench{blanks.Input{
		Piece: &piece.Piece{}, Ledger: l, Allowances: blanks.Usual(l),
		Stock:  []blanks.Stock{board("cherry 27", 24000, 1650, 270, 4)},
		Limits: blanks.Limits{LeastPlane: unit.MM(305), LeastRout: unit.MM(305), Joint: unit.MM(150), Plane: unit.MM(300)},
	}}
}

func board(id string, length, width, thickness int64, have int) blanks.Stock {
	return blanks.Stock{ID: id, Species: "cherry", Length: unit.Length(length) * tenth, Width: unit.Length(width) * tenth, Thickness: unit.Length(thickness) * tenth,
		End: unit.MM(10), Edge: blanks.JointEdge, Have: have}
}

func sheet(id string, length, width, thickness int64, have int) blanks.Stock {
	return blanks.Stock{ID: id, Species: "ply", Sheet: true, Length: unit.Length(length) * tenth, Width: unit.Length(width) * tenth,
		Thickness: unit.Length(thickness) * tenth, End: unit.MM(5), Edge: unit.MM(5), Have: have}
}

func (b *bench) fig(tenths int64) piece.Figure {
	return b.in.Ledger.Leaf("given", unit.Length(tenths)*tenth, ledger.Document, "")
}

// row adds n equal parts of a mark.
func (b *bench) row(mark string, n int, length, width, thickness int64) *plan.PartRow {
	r := plan.PartRow{Mark: mark, Material: "case", Species: "cherry", Stage: "1", Length: b.fig(length), Width: b.fig(width), Thickness: b.fig(thickness)}
	for i := range n {
		a := address.Address("").Nth(mark, i+1)
		r.Members = append(r.Members, a)
		b.in.Piece.Parts = append(b.in.Piece.Parts, piece.Part{Address: a, Where: diag.Place{File: "x.hcl", Start: 1, End: 2}})
	}
	b.in.Rows = append(b.in.Rows, r)
	return &b.in.Rows[len(b.in.Rows)-1]
}

// slot adds a slot along the grain to all parts of the last row.
func (b *bench) slot(near, far int64) {
	for _, m := range b.in.Rows[len(b.in.Rows)-1].Members {
		b.in.Cuts = append(b.in.Cuts, piece.Cut{Part: m, Kind: piece.Groove, Slot: &piece.Slot{
			Open: piece.FaceHigh, Run: piece.AlongLength, Near: b.fig(near), Far: b.fig(far), Depth: b.fig(50)}})
	}
}

// channels adds a row of channels to all parts of the last row: the centre of the
// first, the pitch, the mouth.
func (b *bench) channels(n, first, pitch, mouth int64) {
	r := b.in.Rows[len(b.in.Rows)-1]
	for _, m := range r.Members {
		s := piece.Series{Address: m + ".channel", Part: m, Kind: piece.Channel, Across: piece.AlongWidth, Whole: r.Width}
		at := int64(0)
		for i := range n {
			near, far := first+i*pitch-mouth/2, first+i*pitch+mouth/2
			s.Terms = append(s.Terms, piece.Term{Figure: b.fig(near - at)}, piece.Term{Air: true, Figure: b.fig(mouth)})
			at = far
		}
		s.Terms = append(s.Terms, piece.Term{Figure: b.fig(int64(r.Width.Nm/tenth) - at)})
		b.in.Piece.Series = append(b.in.Piece.Series, s)
		for i := range n {
			b.slot(first+i*pitch-mouth/2, first+i*pitch+mouth/2)
		}
	}
}

// derive derives, and holds what is law for every outcome.
func (b *bench) derive(t testing.TB) ([]plan.Workpiece, diag.List) {
	t.Helper()
	out, diags := blanks.Derive(b.in)
	for _, f := range b.laws(out, diags) {
		t.Error(f)
	}
	return out, diags
}

// find returns the workpieces of a kind.
func find(all []plan.Workpiece, kind plan.WorkpieceKind) []plan.Workpiece {
	var out []plan.Workpiece
	for _, w := range all {
		if w.Kind == kind {
			out = append(out, w)
		}
	}
	return out
}

func tenths(f piece.Figure) int64 { return int64(f.Nm / tenth) }

func keys(why []message.Message) string {
	var out []string
	for _, m := range why {
		out = append(out, m.Key)
	}
	return fmt.Sprint(out)
}

// laws lists what is wrong with an outcome whatever goes in.
func (b *bench) laws(all []plan.Workpiece, diags diag.List) []string {
	var faults []string
	fault := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	for _, d := range b.in.Ledger.Verify() {
		fault("%s", d)
	}
	byID := map[string]plan.Workpiece{}
	parts := map[address.Address]int{}
	for _, w := range all {
		if _, twice := byID[w.ID]; twice {
			fault("%s stands twice", w.ID)
		}
		for _, f := range w.From {
			if _, ok := byID[f]; !ok {
				fault("%s is made from %s, which does not stand before it", w.ID, f)
			}
		}
		byID[w.ID] = w
		for _, f := range append([]piece.Figure{w.Length, w.Width, w.Thickness}, w.Joints...) {
			if err := b.in.Ledger.VerifyFigure(f); err != nil {
				fault("%s: %v", w.ID, err)
			}
		}
		for _, m := range w.Why {
			for _, missing := range words.Missing(m) {
				fault("%s: %v", w.ID, missing)
			}
		}
		switch w.Kind {
		case plan.BlankPiece, plan.PanelPiece:
			for _, p := range w.Parts {
				parts[p]++
			}
		}
		b.within(w, byID, fault)
	}
	refused := map[address.Address]bool{}
	for _, d := range diags {
		refused[d.Address] = true
		for _, missing := range words.Missing(d.Text) {
			fault("%s: %v", d.Code, missing)
		}
		if d.Where.File == "" || d.Severity != diag.Error {
			fault("%s has no place or is no error: %+v", d.Code, d)
		}
	}
	for _, r := range b.in.Rows {
		for _, m := range r.Members {
			if want := 1; parts[m] != want && !refused[r.Members[0]] {
				fault("%s comes out of %d workpieces", m, parts[m])
			}
		}
	}
	return faults
}

// within holds a workpiece against its stock, the machines and its strips.
func (b *bench) within(w plan.Workpiece, byID map[string]plan.Workpiece, fault func(string, ...any)) {
	for _, s := range b.in.Stock {
		if s.ID != w.Stock {
			continue
		}
		if w.Length.Nm > s.Length-2*s.End && !s.Turns {
			fault("%s is %v long, the stock %v", w.ID, w.Length.Nm, s.Length)
		}
		if w.Width.Nm > s.Width-2*s.Edge && !s.Turns {
			fault("%s is %v wide, the stock %v", w.ID, w.Width.Nm, s.Width)
		}
		if w.Thickness.Nm > s.Thickness {
			fault("%s is thicker than its stock", w.ID)
		}
	}
	if j := b.in.Limits.Joint; j > 0 && w.Kind == plan.StripPiece && w.Width.Nm > j {
		fault("%s is %v wide, the jointer takes %v", w.ID, w.Width.Nm, j)
	}
	if p := b.in.Limits.Plane; p > 0 && (w.Kind == plan.NarrowPanel || w.Kind == plan.PanelPiece && !w.InWidths) && w.Width.Nm > p {
		fault("%s is %v wide, the thicknesser takes %v", w.ID, w.Width.Nm, p)
	}
	if w.Kind != plan.PanelPiece {
		return
	}
	var strips []string
	for _, id := range w.From {
		if s := byID[id]; s.Kind == plan.NarrowPanel {
			strips = append(strips, s.From...)
		} else {
			strips = append(strips, id)
		}
	}
	sum, strip := unit.Length(0), b.in.Allowances.Strip.Nm
	for i, id := range strips {
		s := byID[id]
		if s.Length.Nm != w.Length.Nm || s.Thickness.Nm != w.Thickness.Nm {
			fault("%s is not as long or thick as its panel", id)
		}
		sum += s.Width.Nm - 2*strip
		if i < len(w.Joints) && w.Joints[i].Nm != sum-b.in.Allowances.Edge.Nm {
			fault("joint %d of %s is at %v, its strips end at %v", i+1, w.ID, w.Joints[i].Nm, sum-b.in.Allowances.Edge.Nm)
		}
	}
	if sum != w.Width.Nm || len(w.Joints) != len(strips)-1 || len(strips) < 2 {
		fault("%s is %v wide, its %d strips %v, with %d joints", w.ID, w.Width.Nm, len(strips), sum, len(w.Joints))
	}
}
