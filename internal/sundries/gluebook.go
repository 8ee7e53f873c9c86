package sundries

import (
	_ "embed" // the table
	"slices"
	"sync"

	"scantling/internal/figure"
	"scantling/internal/mechanics"
	"scantling/internal/message"
	"scantling/internal/timber"
)

// Spread is how much glue a joint takes, in grams to the square metre.
type Spread float64

// Glue is one kind of glue with what its maker or the trade says of it; a figure
// that nobody gives is not known.
type Glue struct {
	name
	// Open is how long it may lie before the parts meet, Closed until they are
	// pressed, Clamp how long they stay so at 21 degrees, Cure until it is hard.
	Open, Closed, Clamp, Cure figure.Of[Minutes]
	// Coldest is the least temperature that it sets at.
	Coldest figure.Of[timber.Temperature]
	// Light and Dense are the pressures for light and dense woods.
	Light, Dense figure.Of[mechanics.Stress]
	Spread       figure.Of[Spread]
	// Water is its class of resistance to water by EN 204, D1 to D4, or empty.
	Water string
}

//go:embed data/glues.csv
var gluesCSV string

var gluesOnce = sync.OnceValue(func() []Glue {
	var out []Glue
	readRows("glues.csv", gluesCSV, "glue", func(row *figure.Row, n name) {
		out = append(out, Glue{name: n, Water: row.Text("water_class")})
	}, func(which string, f figure.Of[float64]) {
		g := &out[len(out)-1]
		switch which {
		case "open":
			g.Open = as[Minutes](f)
		case "closed":
			g.Closed = as[Minutes](f)
		case "clamp":
			g.Clamp = as[Minutes](f)
		case "cure":
			g.Cure = as[Minutes](f)
		case "coldest":
			g.Coldest = as[timber.Temperature](f)
		case "light":
			g.Light = as[mechanics.Stress](f)
		case "dense":
			g.Dense = as[mechanics.Stress](f)
		case "spread":
			g.Spread = as[Spread](f)
		default:
			panic("sundries: a glue has no " + which)
		}
	})
	return out
})

// Glues returns the glues of the catalogue, the commonest first.
func Glues() []Glue { return slices.Clone(gluesOnce()) }

// FindGlue returns the glue that a name means.
//
// Error: "sundries.unknown-glue" with the names of all.
func FindGlue(asked string) (Glue, error) {
	of := func(g Glue) name { return g.name }
	if g, ok := find(gluesOnce(), asked, of); ok {
		return g, nil
	}
	return Glue{}, unknown("sundries.unknown-glue", gluesOnce(), asked, of)
}

// NewGlue names a glue of a shop's own that has the figures of another where its
// maker states none.
func NewGlue(called string, like Glue) Glue {
	like.name = name{Name: called}
	return like
}

// ClampAt returns how long the parts stay clamped at a temperature: the time at 21
// degrees, doubled for every 8.3 degrees (15 degrees Fahrenheit) below and no less
// above (woodworking magazine quoting a glue maker, read).
//
// Errors: "sundries.too-cold" with the two temperatures below the least that it
// sets at, "figure.number-range" above 50 degrees, "sundries.unknown-clamp" where
// no time is known.
func (g Glue) ClampAt(t timber.Temperature) (figure.Of[Minutes], error) {
	if !g.Clamp.Known() {
		return figure.Of[Minutes]{}, figure.Refuse("sundries.unknown-clamp", message.Text("glue", g.Name)).Or("sundries.state-it")
	}
	if g.Coldest.Known() && t < g.Coldest.Value {
		return figure.Of[Minutes]{}, figure.Refuse("sundries.too-cold", message.Text("glue", g.Name), message.Ratio("got", float64(t)), message.Ratio("least", float64(g.Coldest.Value))).
			Or("sundries.warm-up").Or("sundries.other-glue")
	}
	if err := figure.NumberRange("sundries.clamp-time", "quantity.temperature", t, -30, 50); err != nil {
		return figure.Of[Minutes]{}, err
	}
	colder := max(0, (70-(float64(float64(t)*1.8)+32))/15)
	times := mechanics.Power(2, colder)
	scaled := func(m Minutes) Minutes { return Minutes(float64(m) * times) }
	return figure.Between(scaled(g.Clamp.Value), scaled(g.Clamp.Low), scaled(g.Clamp.High), g.Clamp.Source), nil
}

// Check reports a glue, from a shop document, that cannot be. Key:
// "figure.number-range".
func (g Glue) Check() error {
	for _, m := range []figure.Of[Minutes]{g.Open, g.Closed, g.Clamp, g.Cure} {
		if err := figure.NumberRange("sundries.glue", "quantity.time", m.Value, 0, longest); err != nil {
			return err
		}
	}
	return figure.NumberRange("sundries.glue", "quantity.temperature", g.Coldest.Value, -30, 50)
}

// longest bounds the times that a document may state: a year.
const longest Minutes = 365 * 24 * 60
