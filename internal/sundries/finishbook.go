package sundries

import (
	_ "embed" // the tables
	"slices"
	"strings"
	"sync"

	"scantling/internal/figure"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// Finish is one kind of finish; a figure that nobody gives is not known.
type Finish struct {
	name
	// Recoat is the time between two coats, Light until it may be used with care,
	// Cure until it is hard through.
	Recoat, Light, Cure figure.Of[Minutes]
	Coverage            figure.Of[Coverage]
	// Coats is how many are usual.
	Coats figure.Of[float64]
	// Coldest and Warmest bound the air that it dries in.
	Coldest, Warmest figure.Of[timber.Temperature]
	// Oil sinks in, Film lies on the wood, neither is a wax. Rags tells that rags
	// soaked with it heat up by themselves: drying oils (finishing author's page,
	// read).
	Oil, Film, Rags bool
}

//go:embed data/finishes.csv
var finishesCSV string

var finishesOnce = sync.OnceValue(func() []Finish {
	var out []Finish
	readRows("finishes.csv", finishesCSV, "finish", func(row *figure.Row, n name) {
		flags := strings.Fields(row.Text("flags"))
		out = append(out, Finish{name: n, Oil: slices.Contains(flags, "oil"), Film: slices.Contains(flags, "film"), Rags: slices.Contains(flags, "rags")})
	}, func(which string, f figure.Of[float64]) {
		x := &out[len(out)-1]
		switch which {
		case "recoat":
			x.Recoat = as[Minutes](f)
		case "light":
			x.Light = as[Minutes](f)
		case "cure":
			x.Cure = as[Minutes](f)
		case "coverage":
			x.Coverage = as[Coverage](f)
		case "coats":
			x.Coats = f
		case "coldest":
			x.Coldest = as[timber.Temperature](f)
		case "warmest":
			x.Warmest = as[timber.Temperature](f)
		default:
			panic("sundries: a finish has no " + which)
		}
	})
	return out
})

// Finishes returns the finishes of the catalogue.
func Finishes() []Finish { return slices.Clone(finishesOnce()) }

// FindFinish returns the finish that a name means.
//
// Error: "sundries.unknown-finish" with the names of all.
func FindFinish(asked string) (Finish, error) {
	of := func(f Finish) name { return f.name }
	if f, ok := find(finishesOnce(), asked, of); ok {
		return f, nil
	}
	return Finish{}, unknown("sundries.unknown-finish", finishesOnce(), asked, of)
}

// NewFinish names a finish of a shop's own that has the figures of another where
// its maker states none.
func NewFinish(called string, like Finish) Finish {
	like.name = name{Name: called}
	return like
}

// Check reports a finish, from a shop document, that cannot be. Key:
// "figure.number-range".
func (f Finish) Check() error {
	for _, m := range []figure.Of[Minutes]{f.Recoat, f.Light, f.Cure} {
		if err := figure.NumberRange("sundries.finish", "quantity.time", m.Value, 0, longest); err != nil {
			return err
		}
	}
	return figure.NumberRange("sundries.finish", "quantity.coverage", f.Coverage.Value, 0, 1000)
}

// Grit is an abrasive by its FEPA number.
type Grit struct {
	Number int
	// Grain is the mean size of its grains (ISO 6344-3, from memory).
	Grain figure.Of[unit.Length]
	// Use is what it is the usual last one for: "knife-marks", "before-film",
	// "before-oil", "between-coats", "rub-out", or empty.
	Use string
}

//go:embed data/abrasives.csv
var abrasivesCSV string

var gritsOnce = sync.OnceValue(func() []Grit {
	var out []Grit
	for _, row := range figure.MustTable("abrasives.csv", abrasivesCSV).Rows() {
		number, _ := row.Count("grit")
		um, _ := row.Number("mean_um")
		source := figure.Source{Key: "sundries.grit", Title: row.Text("source"), Status: row.Status("status")}
		out = append(out, Grit{int(number), figure.Exactly(unit.FromMillimetres(um/1000), source), row.Text("use")})
		if err := row.Err(); err != nil {
			panic("sundries: " + err.Error())
		}
	}
	return out
})

// Grits returns the abrasives, coarsest first.
func Grits() []Grit { return slices.Clone(gritsOnce()) }

// LastGrit returns the grit that wood is sanded to before a finish: 180 before one
// that lies on it as a film, 220 before an oil or wax.
func LastGrit(f Finish) int {
	use := "before-oil"
	if f.Film {
		use = "before-film"
	}
	for _, g := range gritsOnce() {
		if g.Use == use {
			return g.Number
		}
	}
	return 0
}

// Ladder returns the grits to sand with from the first to the last: of those that
// the shop has (the catalogue's where it names none), each as fine as can be with
// grit numbers no more than half as large again; where the shop lacks one between,
// the step is larger and steep is true. The rule of the step is finishing practice,
// from memory.
func Ladder(first, last int, have []int) (grits []int, steep bool) {
	if len(have) == 0 {
		for _, g := range gritsOnce() {
			have = append(have, g.Number)
		}
	}
	have = slices.Sorted(slices.Values(append(slices.Clone(have), first, last)))
	have = slices.Compact(have)
	at := first
	grits = []int{first}
	for at < last {
		next := 0
		for _, g := range have {
			if g <= at || g > last {
				continue
			}
			if next == 0 || 2*g <= 3*at {
				next = g
			}
		}
		steep = steep || 2*next > 3*at
		grits, at = append(grits, next), next
	}
	return grits, steep
}
