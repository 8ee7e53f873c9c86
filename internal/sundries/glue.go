package sundries

import (
	"scantling/internal/figure"
	"scantling/internal/mechanics"
	"scantling/internal/message"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// Minutes is a time.
type Minutes float64

// ClampAt21 is how long yellow PVA glue stays in its clamps at 21 degrees. It has
// its full strength after a day.
var ClampAt21 = figure.Exactly(Minutes(60), figure.Source{Key: "sundries.clamp-time", Title: "woodworking magazine quoting a glue maker", Status: figure.Read})

// Coldest is the least temperature for PVA glue: 4 to 7 degrees for yellow, 13 for
// white.
var Coldest = figure.Between(timber.Temperature(7), 4, 13, figure.Source{Key: "sundries.coldest", Title: "glue makers' data sheets", Status: figure.Read})

// ClampTime returns how long yellow PVA stays clamped at a temperature: an hour at
// 21 degrees, doubled for every 8.3 degrees (15 degrees Fahrenheit) below; no less
// above. Error: "figure.number-range" below 4 degrees, where it does not set.
func ClampTime(t timber.Temperature) (figure.Of[Minutes], error) {
	if err := figure.NumberRange("sundries.clamp-time", "quantity.temperature", t, Coldest.Low, 50); err != nil {
		return figure.Of[Minutes]{}, err
	}
	colder := max(0, (70-(float64(float64(t)*1.8)+32))/15)
	m := Minutes(float64(ClampAt21.Value) * mechanics.Power(2, colder))
	return figure.Exactly(m, ClampAt21.Source), nil
}

// Pressing returns the pressure on a glue line that the wood's weight asks for:
// 100 to 150 psi for light woods, 175 to 250 for dense ones (glue makers' data
// sheets, read), in megapascals.
func Pressing(dense bool) figure.Of[mechanics.Stress] {
	source := figure.Source{Key: "sundries.clamp-pressure", Title: "glue makers' data sheets", Status: figure.Read}
	if dense {
		return figure.Between(mechanics.PSI(200), mechanics.PSI(175), mechanics.PSI(250), source)
	}
	return figure.Between(mechanics.PSI(125), mechanics.PSI(100), mechanics.PSI(150), source)
}

// ClampForce returns the whole force on a glue line: the pressure times the area.
func ClampForce(p mechanics.Stress, length, width unit.Length) mechanics.Force {
	return mechanics.Force(float64(p) * length.Millimetres() * width.Millimetres())
}

// Clamps returns how many clamps of a force give it, at least two.
//
// Error: "sundries.no-clamp" where one clamp gives nothing.
func Clamps(whole, each mechanics.Force) (int, error) {
	if each <= 0 || whole/each > 10000 {
		return 0, figure.Refuse("sundries.no-clamp", message.Ratio("force", float64(each)))
	}
	n := int(whole / each)
	if mechanics.Force(n)*each < whole {
		n++
	}
	return max(2, n), nil
}
