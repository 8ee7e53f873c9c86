package mechanics

import (
	_ "embed" // the table
	"math"
	"sync"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

//go:embed data/friction.csv
var frictionCSV string

// Pairs of the friction table.
const (
	DryWood   = "dry wood on wood"
	WaxedWood = "waxed wood on wood"
)

var frictionOnce = sync.OnceValue(func() map[string]figure.Of[Friction] {
	out := map[string]figure.Of[Friction]{}
	for _, row := range figure.MustTable("friction.csv", frictionCSV).Rows() {
		low, _ := row.Number("low")
		high, _ := row.Number("high")
		out[row.Text("pair")] = figure.Between(Friction((low+high)/2), Friction(low), Friction(high),
			figure.Source{Key: "mechanics.friction", Title: row.Text("source"), Status: row.Status("status")})
		if err := row.Err(); err != nil {
			panic("mechanics: " + err.Error())
		}
	}
	return out
})

// FrictionOf returns the friction of a pair of surfaces; the value is the middle of
// the range. Error: "mechanics.no-friction".
func FrictionOf(pair string) (figure.Of[Friction], error) {
	f, ok := frictionOnce()[pair]
	if !ok {
		return figure.Of[Friction]{}, figure.Refuse("mechanics.no-friction", message.Text("pair", pair))
	}
	return f, nil
}

// SourceJam is the source of what statics says of a sticking drawer.
var SourceJam = figure.Source{Key: "mechanics.drawer-jam", Title: "statics", Status: figure.Computed}

// JamsBeyond returns how far off the middle a drawer may be pulled before it sticks
// for ever, however hard the pull: L/(2 mu) for a length L in its opening. The
// drawer twists until two corners bear; the couple of the pull, P e, is balanced by
// N L, and the friction 2 mu N reaches the pull at e = L/(2 mu).
func JamsBeyond(engaged unit.Length, mu Friction) unit.Length {
	if mu <= 0 {
		return unit.MaxLength
	}
	return length(engaged.Millimetres() / (2 * float64(mu)))
}

// NeverJams reports whether a drawer so wide and with so much of it in its opening
// runs even when it is pulled at one corner: width over length less than 1/mu.
func NeverJams(width, engaged unit.Length, mu Friction) bool {
	return JamsBeyond(engaged, mu) > width/2
}

// SticksAt returns how much of a drawer so wide must be in its opening for it to
// run when it is pulled at one corner: mu times the width. Pulled out farther it
// sticks on the way back.
func SticksAt(width unit.Length, mu Friction) unit.Length {
	return length(float64(mu) * width.Millimetres())
}

// Wobble returns how far the end of a drawer swings to one side when it stands
// out so far: the clearance over the length engaged is the angle.
func Wobble(clearance, engaged, out unit.Length) unit.Length {
	if engaged <= 0 {
		return unit.MaxLength
	}
	return length(clearance.Millimetres() / engaged.Millimetres() * out.Millimetres())
}

// WobbleAngle returns the angle of [Wobble].
func WobbleAngle(clearance, engaged unit.Length) Degrees {
	return Degrees(math.Atan2(clearance.Millimetres(), engaged.Millimetres()) * 180 / math.Pi)
}
