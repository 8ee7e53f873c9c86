package shortlist

import (
	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/work"
)

// Question is what is asked.
type Question struct {
	X, Y   int64
	Pieces []ceiling.Piece // in all ways that they may lie
	Left   []int           // by kind
	Value  []int64         // by kind, what is sought
	// Guide is by kind the value times Scale, less the price of the kind's
	// limit; Limits is all limits at their prices. Any prices from zero up are
	// sound; good ones make the search short.
	Guide  []int64
	Limits int64
	Scale  int64
	// Floor is the value that must be exceeded, Step what divides all values.
	Floor, Step int64
}

// Answer is what was found.
type Answer struct {
	// Filling, or Strips under stages, is worth Value, more than the floor; nil
	// if nothing was found.
	Filling *ceiling.Parcel
	Strips  []ceiling.Strip
	Value   int64
	// Complete says that nothing worth more than Value, or where nothing was
	// found than the floor, exists.
	Complete bool
}

// Search answers for any number of stages, with lists of up to length fillings.
// It returns false if the meter ended, or the tables would be too large, before
// it was through; what was found counts all the same.
func Search(q Question, length int, meter *work.Meter) (Answer, bool) {
	s := newRectangles(q, length, meter)
	if s == nil {
		return Answer{Value: q.Floor}, false
	}
	ok := s.run()
	a := Answer{Value: s.floor, Complete: ok && !s.full}
	if s.best >= 0 {
		a.Filling = s.parcel(s.best, q.X, q.Y)
	}
	return a, ok
}

// SearchStages is as [Search] for strips, columns and pieces stacked in them.
// Pieces must come widest first.
func SearchStages(q Question, rules ceiling.Rules, length int, meter *work.Meter) (Answer, bool) {
	s := newStaged(q, rules, length, meter)
	if s == nil {
		return Answer{Value: q.Floor}, false
	}
	ok := s.run()
	a := Answer{Value: s.floor, Complete: ok && !s.full}
	if s.best >= 0 {
		a.Strips = s.pool.strips(s.best)
	}
	return a, ok
}
