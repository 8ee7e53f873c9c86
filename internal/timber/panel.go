package timber

import (
	_ "embed" // the table
	"strings"
	"sync"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

//go:embed data/panels.csv
var panelsCSV string

// Panel is a kind of sheet goods in a range of thicknesses. A figure that no source
// gives is the zero figure.
type Panel struct {
	Kind     string
	Over, To unit.Length
	Density  figure.Of[Density]
	// Along and Across are the bending moduli along and across the grain of the
	// outer plies, or of any two directions of boards without grain.
	Along, Across figure.Of[Stiffness]
}

var panelsOnce = sync.OnceValue(func() []Panel {
	var out []Panel
	for _, row := range figure.MustTable("panels.csv", panelsCSV).Rows() {
		p := Panel{Kind: row.Text("kind")}
		p.Over, _ = row.Millimetres("over_mm")
		p.To, _ = row.Millimetres("to_mm")
		source := figure.Source{Key: "timber.panel", Title: row.Text("source"), Clause: row.Text("clause"), Status: row.Status("status")}
		if x, ok := row.Number("density"); ok {
			p.Density = figure.Exactly(Density(x), source)
		}
		for name, to := range map[string]*figure.Of[Stiffness]{"along": &p.Along, "across": &p.Across} {
			if x, ok := row.Number(name); ok {
				low, _ := row.Number(name + "_low")
				high, _ := row.Number(name + "_high")
				*to = figure.Between(Stiffness(x), Stiffness(low), Stiffness(high), source)
			}
		}
		if err := row.Err(); err != nil {
			panic("timber: " + err.Error())
		}
		out = append(out, p)
	}
	return out
})

// Panels returns the sheet goods of the table, in its order.
func Panels() []Panel { return append([]Panel(nil), panelsOnce()...) }

// FindPanel returns the sheet goods of a kind at a thickness; the name's last words
// count, so that "exterior birch plywood" is birch plywood, and a thickness outside
// the kind's rows takes the nearest row, with status memory.
//
// Error: "timber.unknown-panel" for a kind that the table lacks.
func FindPanel(kind string, thickness unit.Length) (Panel, error) {
	name := strings.ToLower(strings.TrimSpace(kind))
	if name == "ply" || strings.HasSuffix(name, " ply") {
		name += "wood"
	}
	var best Panel
	bestAway := unit.Length(-1)
	for _, p := range panelsOnce() {
		if !strings.HasSuffix(name, p.Kind) || len(p.Kind) < len(best.Kind) {
			continue
		}
		away := max(0, p.Over-thickness, thickness-p.To)
		if len(p.Kind) > len(best.Kind) || bestAway < 0 || away < bestAway {
			best, bestAway = p, away
		}
	}
	if bestAway < 0 {
		return Panel{}, figure.Refuse("timber.unknown-panel", message.Text("name", clip(kind))).Or("timber.state-stiffness")
	}
	if bestAway > 0 {
		for _, s := range []*figure.Source{&best.Along.Source, &best.Across.Source, &best.Density.Source} {
			if s.Status != "" {
				s.Status = figure.Weaker(s.Status, figure.Memory)
			}
		}
	}
	return best, nil
}
