package share

import (
	"math/big"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Stand is how high things stand in what holds them.
type Stand struct {
	// Thing is one thing's height, Stack how many stand on each other, Lining what
	// lies under them and Above what is left over them.
	Thing         unit.Length
	Stack         int
	Lining, Above unit.Length
}

// High returns the clear height that they need.
func (s Stand) High() unit.Length { return s.Lining + unit.Length(s.Stack)*s.Thing + s.Above }

// Proud returns how far they stand above an edge at a height over the floor, as a
// divider's top; below nought they are under it.
func (s Stand) Proud(edge unit.Length) unit.Length { return s.High() - s.Above - edge }

// Grown returns how many places to make for things that are to become more: the
// count and its growth (0.3 is 30 %), rounded up. Exact.
func Grown(count int, growth *big.Rat) (int, error) {
	if count < 0 || count > MaxCount || growth == nil || growth.Sign() < 0 || growth.Cmp(big.NewRat(1000, 1)) > 0 {
		return 0, figure.Refuse("share.growth", message.Count("count", count))
	}
	n := new(big.Rat).Mul(new(big.Rat).SetInt64(int64(count)), growth)
	n.Add(n, new(big.Rat).SetInt64(int64(count)))
	whole, rest := new(big.Int).QuoRem(n.Num(), n.Denom(), new(big.Int))
	if rest.Sign() > 0 {
		whole.Add(whole, big.NewInt(1))
	}
	return int(whole.Int64()), nil
}

// FingerBetween returns the least clear room between two things that are taken
// with thumb and finger: 13 mm, from 12 to 16. Common practice, no source.
func FingerBetween() figure.Of[unit.Length] {
	return figure.Between(unit.MM(13), unit.MM(12), unit.MM(16), figure.PracticeSource("share.finger-between"))
}

// LeastGrip returns the least that a thing must stand out of its cell to be
// picked up: 15 mm, from 12 to 20. Common practice, no source.
func LeastGrip() figure.Of[unit.Length] {
	return figure.Between(unit.MM(15), unit.MM(12), unit.MM(20), figure.PracticeSource("share.least-grip"))
}
