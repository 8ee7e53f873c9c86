package share

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// MaxThings bounds a row and what is dealt out.
const MaxThings = 4096

// Thing is one thing of a row.
type Thing struct {
	// Key is the thing's name in the document; rows are addressed by it.
	Key string
	// Mouth is the width of its channel at the surface, or of its cell.
	Mouth unit.Length
	// Body is the thing's own width, above the surface too.
	Body unit.Length
	// Head is the width of its head where it has a thicker end; zero is none.
	Head unit.Length
}

func (t Thing) widest() unit.Length { return max(t.Head, t.Body) }

// Lie says how neighbours of a row lie to each other.
type Lie int

// The ways to lie.
const (
	SameWay    Lie = iota // all heads at one end
	HeadToTail            // turned end for end by turns
)

// Rule holds what a row must keep to.
type Rule struct {
	// Land is the least left between two mouths, Margin beyond the outer ones.
	Land, Margin unit.Length
	// Play is the least between the things themselves (heads or bodies), WallPlay
	// between the outer things and the row's ends.
	Play, WallPlay unit.Length
	Lie            Lie
	// Even gives all neighbours the pitch of the pair that needs most.
	Even bool
	// Step rounds each pitch up; zero leaves it.
	Step unit.Length
}

// Pitch returns the least distance between the centres of two neighbours, rounded
// up to the nanometre or the rule's step: their half mouths and the land between
// them, or what stands above the surface and its play, whichever is more. Lying
// the same way it follows the heads; head to tail each head lies beside the
// other's body, which also keeps apart the heads of a thing and the next but one.
func (r Rule) Pitch(a, b Thing) unit.Length { return half(r.pitch2(a, b)) }

// pitch2 is twice the pitch, so that halves of odd sizes are exact.
func (r Rule) pitch2(a, b Thing) unit.Length {
	need := a.Mouth + b.Mouth + 2*r.Land
	if r.Lie == SameWay {
		need = max(need, a.widest()+b.widest()+2*r.Play)
	} else {
		need = max(need, a.widest()+b.Body+2*r.Play, a.Body+b.widest()+2*r.Play)
	}
	return need.Round(2*r.Step, unit.Up)
}

// Takes returns the width that a thing takes up in a row of its like, so that
// things are dealt out by what they need and not by what they measure.
func (r Rule) Takes(t Thing) unit.Length { return r.Pitch(t, t) }

func half(double unit.Length) unit.Length { return double.Round(2, unit.Up) / 2 }

// Slot is the place of one thing in a row: its mouth from Left on.
type Slot struct {
	Key         string
	Left, Mouth unit.Length
}

// Centre returns the middle of the mouth (an odd nanometre falls away).
func (s Slot) Centre() unit.Length { return s.Left + s.Mouth/2 }

// Right returns the far edge of the mouth.
func (s Slot) Right() unit.Length { return s.Left + s.Mouth }

// Row is a row of mouths in a width.
type Row struct {
	Width unit.Length
	Slots []Slot
}

// Term is one length of a row's sum.
type Term struct {
	// Kind is "margin", "mouth" or "land"; Key the thing's for a mouth.
	Kind, Key string
	Length    unit.Length
}

// Terms returns the row as the sum that a maker adds up: margin, mouth, land,
// mouth ... margin. It adds up to Width exactly.
func (r Row) Terms() []Term {
	out := make([]Term, 0, 2*len(r.Slots)+1)
	at, kind := unit.Length(0), "margin"
	for _, s := range r.Slots {
		out = append(out, Term{kind, "", s.Left - at}, Term{"mouth", s.Key, s.Mouth})
		at, kind = s.Right(), "land"
	}
	return append(out, Term{"margin", "", r.Width - at})
}

// Least returns the narrowest row that holds the things in their order.
//
// Errors: "share.too-many-things" above [MaxThings]; "figure.length-range" for
// sizes below zero or above 10 m.
func Least(things []Thing, r Rule) (Row, error) {
	if err := r.check(things); err != nil {
		return Row{}, err
	}
	if len(things) == 0 {
		return Row{Width: 2 * r.Margin}, nil
	}
	even := unit.Length(0)
	if r.Even {
		even = r.even2(things)
	}
	row := Row{Slots: make([]Slot, len(things))}
	for i, t := range things {
		left := max(r.Margin, half(t.widest()-t.Mouth)+r.WallPlay)
		if i > 0 {
			left = max(left, row.after(things, i, max(r.pitch2(things[i-1], t), even)))
		}
		row.Slots[i] = Slot{t.Key, left, t.Mouth}
		row.Width = max(row.Width, left+t.Mouth+max(r.Margin, half(t.widest()-t.Mouth)+r.WallPlay))
	}
	return row, nil
}

// after returns the left edge of thing i for twice its distance from the one
// before it.
func (row Row) after(things []Thing, i int, distance2 unit.Length) unit.Length {
	return half(2*row.Slots[i-1].Left + things[i-1].Mouth - things[i].Mouth + distance2)
}

// even2 is twice the pitch that serves every pair.
func (r Rule) even2(things []Thing) unit.Length {
	most := unit.Length(0)
	for i := 1; i < len(things); i++ {
		most = max(most, r.pitch2(things[i-1], things[i]))
	}
	return most
}

func (r Rule) check(things []Thing) error {
	if len(things) > MaxThings {
		return tooMany(len(things))
	}
	for _, l := range []unit.Length{r.Land, r.Margin, r.Play, r.WallPlay, r.Step} {
		if err := figure.LengthRange("share.row", "quantity.land", l, 0, maxRadius); err != nil {
			return err
		}
	}
	for _, t := range things {
		for _, l := range []unit.Length{t.Mouth, t.Body, t.Head} {
			if err := figure.LengthRange("share.row", "quantity.thing", l, 0, maxRadius); err != nil {
				return err
			}
		}
	}
	return nil
}

func tooMany(n int) error {
	return figure.Refuse("share.too-many-things", message.Count("got", n), message.Count("most", MaxThings)).Or("share.split-contents")
}
