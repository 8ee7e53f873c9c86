package timber

import (
	"math"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Swing is what a size across the grain becomes over a season.
type Swing struct {
	// Now is the size at the bench.
	Now unit.Length
	// Dry and Wet are the sizes at the ends, with the range that the coefficient's
	// range gives. The least Dry and the greatest Wet are the worst cases.
	Dry, Wet figure.Of[unit.Length]
}

// Shrinks returns the greatest loss from now to the dry end, never negative.
func (s Swing) Shrinks() unit.Length { return max(0, s.Now-s.Dry.Low) }

// Grows returns the greatest gain from now to the wet end, never negative.
func (s Swing) Grows() unit.Length { return max(0, s.Wet.High-s.Now) }

// Swing returns what a size becomes at both ends of the season. Errors as in
// [Material.Change] and [Season.Check].
func (m Material) Swing(size unit.Length, s Season) (Swing, error) {
	l, err := m.season(size, s)
	if err != nil {
		return Swing{}, err
	}
	at := func(to Moisture) figure.Of[unit.Length] {
		by := func(c Coefficient) unit.Length { return size + nearest(float64(float64(size)*l.factor(c, s.Now, to))) }
		a, b := by(l.c.Low), by(l.c.High)
		return figure.Between(by(l.c.Value), min(a, b), max(a, b), l.source())
	}
	return Swing{size, at(s.Dry), at(s.Wet)}, nil
}

func (m Material) season(size unit.Length, s Season) (law, error) {
	if err := checkSize(size); err != nil {
		return law{}, err
	}
	if err := s.Check(); err != nil {
		return law{}, err
	}
	return m.law(s.Now, s.Dry, s.Wet)
}

// growth returns how many times its size now the part becomes at most, at any
// moment from now on, by the greatest coefficient.
func (l law) growth(s Season) float64 {
	return 1 + max(0, l.factor(l.c.High, s.Now, s.Wet))
}

func (l law) loss(s Season) float64 {
	return 1 + min(0, l.factor(l.c.High, s.Now, s.Dry))
}

// Inset is a moving size in an opening that does not move: a drawer front's
// height between dividers, a tray's width between a drawer's sides, a panel's
// width between the bottoms of its grooves.
type Inset struct {
	Material Material
	Season   Season
	// Play is the clearance that must be left at the wet end and today.
	Play unit.Length
	// Loosest is the greatest clearance allowed at the dry end; zero is no limit.
	Loosest unit.Length
}

// Leave is the answer for an inset size: what to make it today, what it leaves.
type Leave struct {
	// Opening and Part are the fixed size and the moving one as made today.
	Opening, Part unit.Length
	// Today, Wet and Dry are the clearances left now and, by the worst
	// coefficient, at the wet and at the dry end.
	Today, Wet, Dry unit.Length
	Source          figure.Source
}

// PartFor returns the greatest size that the part may have today in the opening
// so that Play is left at the wet end (and today), rounded down to the nanometre.
//
// Errors: those of [Material.Swing]; "timber.no-room" where the opening is not
// greater than the play; "timber.too-loose" where the part then leaves more than
// Loosest at the dry end (the answer is returned beside the error).
func (i Inset) PartFor(opening unit.Length) (Leave, error) {
	l, err := i.law(opening)
	if err != nil {
		return Leave{}, err
	}
	if opening <= i.Play {
		return Leave{}, figure.Refuse("timber.no-room", message.Length("opening", opening), message.Length("play", i.Play)).
			Or("timber.widen-opening")
	}
	part := unit.Length(math.Floor(float64(opening-i.Play) / l.growth(i.Season)))
	for part > 0 && opening-grown(part, l.growth(i.Season)) < i.Play {
		part-- // the division's own rounding: at most a nanometre or two
	}
	return i.leave(l, opening, part)
}

// OpeningFor returns the least opening for a part of the size today, rounded up
// to the nanometre. Errors as in [Inset.PartFor].
func (i Inset) OpeningFor(part unit.Length) (Leave, error) {
	l, err := i.law(part)
	if err != nil {
		return Leave{}, err
	}
	return i.leave(l, grown(part, l.growth(i.Season))+i.Play, part)
}

// At returns what a part of the size today leaves in the opening over the
// season, without judging it but for Loosest. Negative clearances bind.
// Errors as in [Inset.PartFor].
func (i Inset) At(opening, part unit.Length) (Leave, error) {
	l, err := i.law(max(opening, part))
	if err != nil {
		return Leave{}, err
	}
	return i.leave(l, opening, part)
}

func (i Inset) law(size unit.Length) (law, error) {
	if err := figure.LengthRange("timber.inset", "quantity.play", i.Play, 0, unit.MaxLength); err != nil {
		return law{}, err
	}
	return i.Material.season(size, i.Season)
}

func (i Inset) leave(l law, opening, part unit.Length) (Leave, error) {
	dry := opening - unit.Length(math.Floor(float64(float64(part)*l.loss(i.Season))))
	out := Leave{opening, part, opening - part, opening - grown(part, l.growth(i.Season)), dry, l.source()}
	if i.Loosest > 0 && dry > i.Loosest {
		return out, figure.Refuse("timber.too-loose", message.Length("dry", dry), message.Length("loosest", i.Loosest)).
			Or("timber.quieter-wood").Or("timber.quarter-sawn").Or("timber.narrower-part")
	}
	return out, nil
}

func grown(part unit.Length, factor float64) unit.Length {
	return unit.Length(math.Ceil(float64(float64(part) * factor)))
}
