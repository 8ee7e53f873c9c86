package shape

import (
	"fmt"
	"math/big"

	"scantling/internal/piece"
	"scantling/internal/unit"
)

// printed prints one cut of a part turned by t, in one form however it is
// described.
func printed(p *piece.Part, c *piece.Cut, t Turn) string {
	switch {
	case c.Slot != nil:
		return printedSlot(p, c.Slot, t)
	case c.Bore != nil:
		return printedBore(p, c.Bore, t)
	case c.Dip != nil:
		along := dipAxis(c.Dip)
		whole := p.Sizes()[along].Nm
		return fmt.Sprintf("dip %s %d %d %d\n", turnSide(c.Dip.Open, t), flip(c.Dip.Centre.Nm, whole, t[along]), c.Dip.Chord.Nm, c.Dip.Depth.Nm)
	case c.Ease != nil:
		return printedEase(p, c.Ease, t)
	case c.Slice != nil:
		return printedSlice(p, c.Slice, t)
	case c.Pocket != nil:
		return printedPocket(p, c.Pocket, t)
	}
	return ""
}

// printedSlot prints a plain slot as the box that it takes.
func printedSlot(p *piece.Part, s *piece.Slot, t Turn) string {
	whole := p.Sizes()
	if !straight(s) {
		return fmt.Sprintf("impossible slot %s %d\n", s.Open, s.Run)
	}
	open, _ := s.Open.Axis()
	x := s.Across()
	if Plain(p, s) {
		lo, hi := SlotBox(p, s)
		for a := range lo {
			lo[a], hi[a] = span(max(lo[a], 0), min(hi[a], whole[a].Nm), whole[a].Nm, t[a])
		}
		return fmt.Sprintf("box %d %d %d %d %d %d\n", lo[0], hi[0], lo[1], hi[1], lo[2], hi[2])
	}
	side := fmt.Sprint(turnSide(s.Open, t))
	if s.Depth.Nm >= whole[open].Nm && s.Corner.Nm <= 0 && !leans(s) {
		side = fmt.Sprint("through ", open) // the same from either side
	}
	from, to := span(max(s.From.Nm, 0), min(s.To.Nm, whole[s.Run].Nm), whole[s.Run].Nm, t[s.Run])
	near, far := span(s.Near.Nm, s.Far.Nm, whole[x].Nm, t[x])
	line := fmt.Sprintf("slot %s %d %d %d %d %d %d %d", side, s.Run, from, to, near, far, min(s.Depth.Nm, whole[open].Nm), s.Corner.Nm)
	if leans(s) {
		a, b := s.LeanNear.Nm, s.LeanFar.Nm
		if t[x] {
			a, b = b, a
		}
		// Right through, it matters how deep the lean is meant.
		line += fmt.Sprintf(" leans %d %d %d", a, b, s.Depth.Nm)
	}
	if round := roundEnds(p, s); round != [2]bool{} {
		if t[s.Run] {
			round[0], round[1] = round[1], round[0]
		}
		line += fmt.Sprintf(" ends %d %t %t", s.EndRadius.Nm, round[0], round[1])
	}
	return line + "\n"
}

func printedBore(p *piece.Part, b *piece.Bore, t Turn) string {
	whole := p.Sizes()
	axis, _ := b.Open.Axis()
	var at [2]unit.Length
	k := 0
	for a := range whole {
		if piece.Local(a) != axis {
			at[k] = flip(b.At[k].Nm, whole[a].Nm, t[a])
			k++
		}
	}
	switch {
	case sinks(b):
		depth := b.Depth.Nm
		if b.Through {
			depth = whole[axis].Nm
		}
		return fmt.Sprintf("sunk bore %s %d %d %d %d %t %d %d %t\n", turnSide(b.Open, t), at[0], at[1], b.Diameter.Nm, depth, b.Through,
			b.Sink.Diameter.Nm, b.Sink.Depth.Nm, b.Sink.Flat)
	case b.Through:
		return fmt.Sprintf("hole %d %d %d %d\n", axis, at[0], at[1], b.Diameter.Nm)
	}
	return fmt.Sprintf("bore %s %d %d %d %d\n", turnSide(b.Open, t), at[0], at[1], b.Diameter.Nm, b.Depth.Nm)
}

func printedEase(p *piece.Part, e *piece.Ease, t Turn) string {
	a, b := turnSide(e.Sides[0], t), turnSide(e.Sides[1], t)
	if a > b {
		a, b = b, a
	}
	form := "round"
	switch {
	case e.Chamfer:
		form = "chamfer"
	case e.Cove:
		form = "cove"
	}
	i, _ := a.Axis()
	j, _ := b.Axis()
	if i == j {
		return fmt.Sprintf("impossible ease %s %s\n", a, b)
	}
	along := 3 - i - j
	from, to := eased(p, e)
	whole := p.Sizes()[along].Nm
	from, to = span(from, to, whole, t[along])
	return fmt.Sprintf("ease %s %s %d %s %d %d\n", a, b, e.Radius.Nm, form, from, to)
}

// printedSlice prints the half space that a slice takes, n·x ≥ d, with the
// greatest component of n made 1: one plane has one print, whichever side it is
// said to take off and wherever its stations are.
func printedSlice(p *piece.Part, s *piece.Slice, t Turn) string {
	off, high := s.Off.Axis()
	first, second := others(off)
	if s.From[0].Nm == s.To[0].Nm || s.From[1].Nm == s.To[1].Nm {
		return fmt.Sprintf("impossible slice %s\n", s.Off)
	}
	// z = At + g (x - From) + h (y - From'), taken where z is beyond.
	ratio := func(a, b unit.Length) *big.Rat { return big.NewRat(int64(a), int64(b)) }
	g := ratio(s.At[1].Nm-s.At[0].Nm, s.To[0].Nm-s.From[0].Nm)
	h := ratio(s.At[2].Nm-s.At[0].Nm, s.To[1].Nm-s.From[1].Nm)
	var n [3]*big.Rat
	n[off], n[first], n[second] = big.NewRat(1, 1), new(big.Rat).Neg(g), new(big.Rat).Neg(h)
	d := ratio(s.At[0].Nm, 1)
	d.Sub(d, new(big.Rat).Mul(g, ratio(s.From[0].Nm, 1)))
	d.Sub(d, new(big.Rat).Mul(h, ratio(s.From[1].Nm, 1)))
	if !high {
		for _, x := range append(n[:], d) {
			x.Neg(x)
		}
	}
	greatest := new(big.Rat)
	for a, whole := range p.Sizes() {
		if t[a] { // x becomes whole - x
			d.Sub(d, new(big.Rat).Mul(n[a], ratio(whole.Nm, 1)))
			n[a].Neg(n[a])
		}
		if x := new(big.Rat).Abs(n[a]); x.Cmp(greatest) > 0 {
			greatest = x
		}
	}
	for _, x := range append(n[:], d) {
		x.Quo(x, greatest)
	}
	return fmt.Sprintf("slice %s %s %s %s\n", n[0].RatString(), n[1].RatString(), n[2].RatString(), d.RatString())
}

func printedPocket(p *piece.Part, k *piece.Pocket, t Turn) string {
	open, _ := k.Open.Axis()
	first, second := others(open)
	whole := p.Sizes()
	side := fmt.Sprintf("%s %d", turnSide(k.Open, t), k.Depth.Nm)
	if k.Through || k.Depth.Nm >= whole[open].Nm {
		side = fmt.Sprint("through ", open)
	}
	return fmt.Sprintf("pocket %s\n%s", side, closedLine(k.Outline, [2]unit.Length{whole[first].Nm, whole[second].Nm}, [2]bool{t[first], t[second]}))
}

// dipAxis returns the local axis along which a dip's centre is measured.
func dipAxis(d *piece.Dip) piece.Local {
	if a, _ := d.Open.Axis(); a == piece.AlongLength {
		return piece.AlongWidth
	}
	return piece.AlongLength
}
