package scantling_test

import (
	"testing"

	"scantling/internal/output/tape"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestInchesOfTheExamples reads every example off an inch tape of three fractions: rows
// and sums of cards close as they are printed, what is fitted is never larger than it
// is, and no slot of two paths is narrower than what goes in.
func TestInchesOfTheExamples(t *testing.T) {
	for _, name := range []string{"needle-chest", "drawer-insert", "bedside-table", "record-rack", "spice-chest"} {
		p := planExample(t, name, nil).Plan
		for _, denominator := range []int{16, 32, 64} {
			p.Shop.Denominator = denominator
			own := tape.Of(p, unit.Inches)
			went := inchRows(t, name, p, own)
			cards := inchCards(t, name, p, own)
			if denominator == 32 {
				t.Logf("%s: %d sizes go in or take, %d rows, %d sums of cards", name, went, len(p.Rows), cards)
			}
		}
	}
}

func inchRows(t *testing.T, name string, p *plan.Plan, own *tape.Tape) (went int) {
	t.Helper()
	for _, r := range p.Parts {
		for n, l := range own.Sizes(r) {
			exact := r.Sizes()[n].Nm
			if r.Goes[n].What != plan.Matches {
				went++
			}
			if r.Goes[n].What == plan.GoesIn && l > exact || r.Goes[n].What == plan.Takes && l < exact {
				t.Errorf("%s: %s %q is shown as %v, and is %v", name, r.Mark, r.Goes[n].What, l, exact)
			}
		}
	}
	for _, row := range p.Rows {
		sum := unit.Length(0)
		shown, total, _ := own.Row(row)
		for _, l := range shown {
			sum += l
		}
		if sum != total {
			t.Errorf("%s: %s comes to %v, printed %v", name, row.Address, sum, total)
		}
	}
	for _, f := range p.Piece.Fits {
		for _, s := range p.Piece.Spaces {
			if s.Address == f.Inside {
				fitted(t, name, p, own, f, s)
			}
		}
	}
	return went
}

// fitted holds the parts that reach through a fitted group to the opening as measured:
// what is printed for them leaves the clearance that was planned.
func fitted(t *testing.T, name string, p *plan.Plan, own *tape.Tape, f piece.Fit, s piece.Space) {
	t.Helper()
	for _, r := range p.Parts {
		for _, a := range r.Members {
			for _, part := range p.Piece.Parts {
				if part.Address != a || !f.Moves.Has(a) {
					continue
				}
				local, _ := part.Frame.LocalOf(piece.Right)
				whole, clear := part.Sizes()[local].Nm, s.Clear[piece.Right].Nm
				if whole == clear-f.Sides.Nm && clear-own.Sizes(r)[local] < f.Sides.Nm {
					t.Errorf("%s: %s leaves %v of %v at the sides", name, a, clear-own.Sizes(r)[local], f.Sides.Nm)
				}
			}
		}
	}
}

func inchCards(t *testing.T, name string, p *plan.Plan, own *tape.Tape) (sums int) {
	t.Helper()
	check := func(card string, s plan.Sum, mark string, settings []plan.Setting) {
		sums++
		shown, total := own.Sum(s, mark, settings)
		sum := unit.Length(0)
		for i, l := range shown {
			sum += l
			for _, set := range settings {
				if at, passes := own.Setting(set); len(passes) == 0 && s.Terms[i].Figure.Nm == set.Figure.Nm && s.Terms[i].Word == set.Word && l != at {
					t.Errorf("%s, card %s: %s is set to %v and added up as %v", name, card, set.Word, at, l)
				}
			}
		}
		if sum != total {
			t.Errorf("%s, card %s: %v is printed as %v", name, card, sum, total)
		}
	}
	for _, c := range p.Setups {
		for _, s := range c.Sums {
			check(c.ID, s, "", c.Settings)
		}
		for _, pm := range c.Placements {
			for _, s := range pm.Sums {
				check(c.ID, s, pm.Mark, pm.Settings)
			}
			for _, set := range pm.Settings {
				_, passes := own.Setting(set)
				if n := len(passes); n > 1 && set.Goes == plan.Takes && passes[n-1]-passes[0] < set.Passes[n-1].Nm-set.Passes[0].Nm {
					t.Errorf("%s, card %s: paths %v apart, and %v are needed", name, c.ID, passes[n-1]-passes[0], set.Passes[n-1].Nm-set.Passes[0].Nm)
				}
			}
		}
	}
	return sums
}

// TestInchCardsOfABoard: an edition in inches prints a divider's stop as the list prints
// the divider, and the height of a groove in the title as in the setting.
func TestInchCardsOfABoard(t *testing.T) {
	p := planExample(t, "needle-chest", map[string]string{"edition": `"in"`}).Plan
	if p.Units() != unit.Inches {
		t.Fatalf("the edition is in %s", p.Units())
	}
	own, stops, titles := tape.Of(p, p.Units()), 0, 0
	for _, c := range p.Setups {
		for _, set := range c.Settings {
			if a, ok := c.Title.Arg("height"); ok && set.Word == "height" {
				titles++
				if at, _ := own.Setting(set); at != own.Toward(a.Nm, map[unit.Rounding]plan.Goes{unit.Up: plan.Takes, unit.Down: plan.GoesIn}[a.Round]) {
					t.Errorf("%s: the title and the setting differ", c.ID)
				}
			}
		}
		for _, pm := range c.Placements {
			for _, set := range pm.Settings {
				if set.Word != "stop to blade" || len(pm.Cuts) > 0 {
					continue
				}
				for _, r := range p.Parts {
					if at, _ := own.Setting(set); r.Mark == pm.Mark && r.Length.Nm == set.Figure.Nm {
						if stops++; at != own.Sizes(r)[0] {
							t.Errorf("%s: %s is %v in the list and cut to %v", c.ID, r.Mark, own.Sizes(r)[0], at)
						}
					}
				}
			}
		}
	}
	if stops < 3 || titles < 3 {
		t.Errorf("%d stops and %d titles: the test tests too little", stops, titles)
	}
}

// TestInchFitByHand is the arithmetic of one row by hand: of an
// opening of 200.8 and a drawer of 200 the tape of 1/32 reads 7 29/32 and 7 27/32.
//
//	200.8 / 25.4 = 7.9055 in = 252.98 / 32, up 253 / 32 = 7 29/32
//	200 / 25.4 = 7.8740 in = 251.97 / 32, down 251 / 32 = 7 27/32
func TestInchFitByHand(t *testing.T) {
	p := &plan.Plan{Piece: &piece.Piece{}}
	p.Shop.Denominator = 32
	own, show := tape.Of(p, unit.Inches), p.Show(unit.Inches)
	got := show.Format(own.Toward(unit.FromMillimetres(200.8), plan.Takes)) + ", " + show.Format(own.Toward(unit.MM(200), plan.GoesIn))
	if got != "7 29/32, 7 27/32" {
		t.Error(got)
	}
}
