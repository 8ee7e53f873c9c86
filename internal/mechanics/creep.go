package mechanics

import (
	_ "embed" // the table
	"sync"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

//go:embed data/creep.csv
var creepCSV string

// Service says how damp a piece lives.
type Service int

// The service classes: heated rooms, unheated ones under a roof, out of doors.
const (
	Dry Service = 1 + iota
	Sheltered
	Outdoors
)

// Materials of the creep table.
const (
	CreepSolid         = "solid"
	CreepPlywood       = "plywood"
	CreepParticleboard = "particleboard"
	CreepMDF           = "mdf"
	CreepHardboard     = "hardboard"
	CreepOSB           = "osb"
)

var creepOnce = sync.OnceValue(func() map[string][3]figure.Of[Ratio] {
	out := map[string][3]figure.Of[Ratio]{}
	for _, row := range figure.MustTable("creep.csv", creepCSV).Rows() {
		source := figure.Source{Key: "mechanics.creep", Title: "EN 1995-1-1", Edition: "2004", Clause: "Table 3.2", Status: row.Status("status")}
		var classes [3]figure.Of[Ratio]
		for i, column := range []string{"class_1", "class_2", "class_3"} {
			if k, ok := row.Number(column); ok {
				classes[i] = figure.Exactly(Ratio(k), source)
			}
		}
		if row.Text("material") == CreepSolid {
			// The Wood Handbook's rule of thumb reaches higher: twice the elastic sag
			// where it stays dry, three times where the moisture changes.
			classes[0].High, classes[1].High = 1, 2
		}
		out[row.Text("material")] = classes
		if err := row.Err(); err != nil {
			panic("mechanics: " + err.Error())
		}
	}
	return out
})

// Creep returns how much is added to a sag in years of lasting load, as a part of
// the sag at once: kdef of EN 1995-1-1:2004, Table 3.2 (from memory); for solid
// wood the high end is the Wood Handbook's rule (FPL-GTR-190, chapter 5, from
// memory). Error: "mechanics.no-creep" for what the table lacks.
func Creep(material string, s Service) (figure.Of[Ratio], error) {
	classes, ok := creepOnce()[material]
	if !ok || s < Dry || s > Outdoors || !classes[s-1].Known() {
		return figure.Of[Ratio]{}, figure.Refuse("mechanics.no-creep", message.Text("material", material), message.Count("class", int(s)))
	}
	return classes[s-1], nil
}

// Lasting returns the sag after years: the sag at once times one and the creep, the
// share of the load that stays being quasi (EN 1995-1-1:2004, 2.2.3).
func Lasting(sag unit.Length, creep, stays Ratio) unit.Length {
	return length(sag.Millimetres() * (1 + float64(float64(creep)*float64(stays))))
}
