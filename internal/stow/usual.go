package stow

import (
	_ "embed" // the table
	"strings"
	"sync"

	"scantling/internal/figure"
	"scantling/internal/unit"
)

// Usual is a thing of everyday life with its usual sizes; what does not apply is
// nought.
type Usual struct {
	Name, Kind       string
	Wide, Deep, Tall unit.Length
	Diameter, Thick  unit.Length
	Mass             unit.Value
	Source           figure.Source
}

//go:embed data/usual.csv
var usualCSV string

var usualOnce = sync.OnceValue(func() []Usual {
	var out []Usual
	for _, row := range figure.MustTable("usual.csv", usualCSV).Rows() {
		u := Usual{Name: row.Text("name"), Kind: row.Text("kind")}
		u.Wide, _ = row.Millimetres("wide_mm")
		u.Deep, _ = row.Millimetres("deep_mm")
		u.Tall, _ = row.Millimetres("tall_mm")
		u.Diameter, _ = row.Millimetres("diameter_mm")
		u.Thick, _ = row.Millimetres("thick_mm")
		if grams, ok := row.Count("mass_g"); ok {
			u.Mass = unit.OfInt(unit.DimMass, int64(grams))
		}
		u.Source = figure.Source{Key: "contents.usual." + strings.ReplaceAll(u.Name, " ", "-"), Title: row.Text("source"), Status: row.Status("status")}
		if err := row.Err(); err != nil {
			panic("stow: " + err.Error())
		}
		out = append(out, u)
	}
	return out
})

// Usuals returns the table's things, in its order.
func Usuals() []Usual { return append([]Usual(nil), usualOnce()...) }

// FindUsual returns the thing of a name, whatever its case.
func FindUsual(name string) (Usual, bool) {
	for _, u := range usualOnce() {
		if strings.EqualFold(u.Name, strings.TrimSpace(name)) {
			return u, true
		}
	}
	return Usual{}, false
}

// UsualNames returns the names of all.
func UsualNames() []string {
	out := make([]string, len(usualOnce()))
	for i, u := range usualOnce() {
		out[i] = u.Name
	}
	return out
}

// size is the usual size that an attribute stands for; nought where there is none.
func (u Usual) size(attribute string) unit.Length {
	switch attribute {
	case "wide":
		return u.Wide
	case "deep":
		return u.Deep
	case "tall":
		return u.Tall
	case "diameter":
		return u.Diameter
	case "thick":
		return u.Thick
	}
	return 0
}
