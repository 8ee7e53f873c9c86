package tape_test

import (
	"math/rand/v2"
	"testing"

	"scantling/internal/address"
	"scantling/internal/output/tape"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

var whatSizesDo = []plan.Goes{plan.Matches, plan.GoesIn, plan.Takes}

// wall is a random row of boards and openings from left to right, with a board below
// as long as all of it, and a shop that reads a random fraction.
func wall(r *rand.Rand) (*plan.Plan, plan.Row) {
	b := trial.New()
	p := &plan.Plan{Piece: &b.Piece}
	p.Shop.Denominator = []int{8, 16, 32, 64}[r.IntN(4)]
	row := plan.Row{Axis: piece.Right}
	at := int64(0)
	add := func(name string, low, high, bottom, top int64) {
		part := b.Part(name, trial.GrainRight, low, high, 0, 1000, bottom, top)
		goes := [3]plan.Going{}
		for i := range goes {
			goes[i].What = whatSizesDo[r.IntN(3)]
		}
		p.Parts = append(p.Parts, plan.PartRow{Mark: name, Members: []address.Address{part.Address}, Length: part.Length, Width: part.Width, Thickness: part.Thickness, Goes: goes})
	}
	for k := range 2 + r.IntN(5) {
		thick, room := 60+r.Int64N(200), 100+r.Int64N(4000)
		name := "board" + string(rune('a'+k))
		add(name, at, at+thick, 100, 3000)
		row.Terms = append(row.Terms, piece.Term{Figure: b.Fig(name, thick), Of: address.Address(name)}, piece.Term{Air: true, Figure: b.Fig("room", room)})
		at += thick + room
	}
	add("floor", 0, at, 0, 100)
	row.Start, row.Total = b.Fig("start", 0), b.Fig("total", at)
	return p, row
}

// TestRowsClose: in inches every part of a row has the size that the list gives it, the
// terms add up to the size of what is as long as the row, and all but one at most lie
// within a step of what they are; in millimetres nothing is changed.
func TestRowsClose(t *testing.T) {
	took := 0
	for seed := range uint64(2000) {
		p, row := wall(rand.New(rand.NewPCG(seed, 31)))
		own := tape.Of(p, unit.Inches)
		step := unit.Inch / unit.Length(p.Shop.Denominator)
		shown, total, takes := own.Row(row)
		sum := unit.Length(0)
		for i, l := range shown {
			sum += l
			if l%step != 0 {
				t.Fatalf("seed %d: %d nm is on no step", seed, l)
			}
			exact := row.Terms[i].Figure.Nm
			if i != takes && (l-exact).Abs() >= step {
				t.Fatalf("seed %d: %v is shown as %v", seed, exact, l)
			}
			if a := row.Terms[i].Of; a != "" && i != takes {
				for _, r := range p.Parts {
					if r.Mark == string(a) && own.Sizes(r)[0] != l {
						t.Fatalf("seed %d: %s is %v in the list and %v in the row", seed, a, own.Sizes(r)[0], l)
					}
				}
			}
		}
		if takes >= 0 {
			took++
		}
		floor := own.Sizes(p.Parts[len(p.Parts)-1])[0]
		if sum != total || total != floor {
			t.Fatalf("seed %d: terms add up to %v, the row is %v, the floor %v", seed, sum, total, floor)
		}
		exact, whole, none := tape.Of(p, unit.Metric).Row(row)
		for i := range exact {
			if exact[i] != row.Terms[i].Figure.Nm || whole != row.Total.Nm || none != -1 {
				t.Fatalf("seed %d: millimetres were rounded", seed)
			}
		}
	}
	t.Logf("in %d of 2000 rows one term takes what is left", took)
}

// TestNothingIsTooLarge: what goes in is never shown larger than it is, what takes
// something never smaller, neither by a step; so a part shown for an opening leaves at
// least the clearance that was planned.
func TestNothingIsTooLarge(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 31))
	for range 5000 {
		p := &plan.Plan{Piece: &piece.Piece{}}
		p.Shop.Denominator = []int{8, 16, 32, 64}[r.IntN(4)]
		step := unit.Inch / unit.Length(p.Shop.Denominator)
		own := tape.Of(p, unit.Inches)
		part, clear := unit.Length(r.Int64N(int64(unit.Metre))), unit.Length(r.Int64N(int64(unit.MM(3))))
		in, takes := own.Toward(part, plan.GoesIn), own.Toward(part+clear, plan.Takes)
		if in > part || part-in >= step || takes < part+clear || takes-part-clear >= step || takes-in < clear {
			t.Fatalf("%v in %v to 1/%d: %v in %v", part, part+clear, p.Shop.Denominator, in, takes)
		}
	}
}

func fig(nm unit.Length) plan.Figure { return plan.Figure{Nm: nm} }

// TestPathsTakeWhatGoesIn: a slot in several paths is never narrower by its settings
// than it should be, and its depth, if something stands in it, never less.
func TestPathsTakeWhatGoesIn(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 31))
	for range 3000 {
		p := &plan.Plan{Piece: &piece.Piece{}}
		p.Shop.Denominator = []int{16, 32, 64}[r.IntN(3)]
		own := tape.Of(p, unit.Inches)
		near := unit.Length(r.Int64N(int64(unit.MM(300))))
		far := near + unit.Length(r.Int64N(int64(unit.MM(20))))
		s := plan.Setting{Word: "fence to cutter edge", Figure: fig(far), Passes: []plan.Figure{fig(near), fig((near + far) / 2), fig(far)}, Goes: plan.Takes}
		shown, passes := own.Setting(s)
		if passes[2] != shown || passes[2]-passes[0] < far-near || shown < far {
			t.Fatalf("%v to %v: %v", near, far, passes)
		}
		deep := plan.Setting{Word: "height", Figure: fig(far), Passes: []plan.Figure{fig(far / 2), fig(far)}, Goes: plan.Takes}
		if shown, passes := own.Setting(deep); shown < far || passes[1] != shown || (passes[0]-far/2).Abs() > unit.Inch/32 {
			t.Fatalf("depth %v: %v", far, passes)
		}
		if shown, passes := tape.Of(p, unit.Metric).Setting(s); shown != far || passes[0] != near {
			t.Fatal("millimetres were rounded")
		}
	}
}

// TestCardsAddUp: the sums of a card close as they are printed, with its settings and
// the size of its work as they stand there.
func TestCardsAddUp(t *testing.T) {
	for seed := range uint64(3000) {
		r := rand.New(rand.NewPCG(seed, 32))
		p := &plan.Plan{Piece: &piece.Piece{}}
		p.Shop.Denominator = []int{16, 32, 64}[r.IntN(3)]
		step := unit.Inch / unit.Length(p.Shop.Denominator)
		own := tape.Of(p, unit.Inches)
		draw := func(most int64) unit.Length { return unit.MM(1) + unit.Length(r.Int64N(int64(unit.MM(most)))) }
		first, move, cutter, rest := draw(200), draw(6), draw(20), draw(200)
		last, width := first+move, first+move+cutter+rest
		p.Parts = []plan.PartRow{{Mark: "A1", Length: fig(unit.MM(9000)), Width: fig(width), Goes: [3]plan.Going{{}, {What: whatSizesDo[r.IntN(3)]}}}}
		s := plan.Setting{Word: "fence to cutter edge", Figure: fig(last), Passes: []plan.Figure{fig(first), fig(last)}, Goes: whatSizesDo[r.IntN(3)]}
		at, passes := own.Setting(s)
		across := plan.Sum{Total: fig(width), Terms: []plan.SumTerm{{Figure: fig(last)}, {Figure: fig(cutter)}, {Figure: fig(rest)}}}
		shown, total := own.Sum(across, "A1", []plan.Setting{s})
		if shown[0] != at || shown[0]+shown[1]+shown[2] != total || total != own.Sizes(p.Parts[0])[1] || (shown[2]-rest).Abs() >= 3*step {
			t.Fatalf("seed %d: %v = %v, setting %v, width %v", seed, shown, total, at, own.Sizes(p.Parts[0])[1])
		}
		paths := plan.Sum{Total: fig(last), Terms: []plan.SumTerm{{Figure: fig(first)}, {Figure: fig(move)}}}
		shown, total = own.Sum(paths, "A1", []plan.Setting{s})
		if shown[0] != passes[0] || shown[1] != passes[1]-passes[0] || total != at {
			t.Fatalf("seed %d: %v = %v, passes %v", seed, shown, total, passes)
		}
		between := plan.Sum{Total: fig(last + width), Terms: []plan.SumTerm{{Figure: fig(last)}, {Figure: fig(width)}}}
		if shown, total = own.Sum(between, "A1", []plan.Setting{s}); shown[0] != at || shown[0]+shown[1] != total {
			t.Fatalf("seed %d: two known terms %v = %v", seed, shown, total)
		}
		if shown, total = tape.Of(p, unit.Metric).Sum(across, "A1", nil); shown[0]+shown[1]+shown[2] != total {
			t.Fatalf("seed %d: in millimetres %v = %v", seed, shown, total)
		}
	}
}
