package equip

import (
	"slices"

	"scantling/internal/document"
	"scantling/internal/figure"
	"scantling/internal/shop"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// machineWords are other words for the kinds of machine.
var machineWords = map[string]tool.Kind{
	"thicknesser": tool.ThicknessPlaner, "planer": tool.ThicknessPlaner, "surface planer": tool.Jointer,
	"pillar drill": tool.DrillPress, "miter saw": tool.MitreSaw, "circular saw bench": tool.TableSaw,
}

func (r *reader) machine(b *document.Block) (shop.Machine, bool) {
	word := r.words(b, "kind")
	kind, ok := machineWords[word]
	if !ok {
		kind = tool.Kind(word)
	}
	if !slices.Contains(tool.Kinds(), kind) {
		r.unknownKind(b, word, kindNames(tool.Kinds()))
		return shop.Machine{}, false
	}
	m := tool.Machine{Name: b.Label(), Kind: kind}
	for _, limit := range []struct {
		attribute string
		to        *figure.Of[unit.Length]
	}{
		{"least_length", &m.Least.Length}, {"least_width", &m.Least.Width}, {"least_rip", &m.Least.Width},
		{"least_thickness", &m.Least.Thickness}, {"most_length", &m.Greatest.Length}, {"most_width", &m.Greatest.Width},
		{"most_thickness", &m.Greatest.Thickness}, {"most_height", &m.Greatest.Thickness},
		{"kerf", &m.Kerf}, {"accuracy", &m.Accuracy},
	} {
		if b.Has(limit.attribute) {
			*limit.to = tool.Stated(limit.attribute, r.length(b, limit.attribute))
		}
	}
	if l := r.length(b, "shank"); l > 0 {
		m.Collets = []unit.Length{l}
	}
	m.Base = r.length(b, "base")
	if b.Has("plunges") {
		if m.Plunges = tool.PlungesNo; r.yes(b, "plunges") {
			m.Plunges = tool.PlungesYes
		}
	}
	if n, ok := r.count(b, "least_speed", 1, 60000); ok {
		m.LeastSpeed = tool.Speed(n)
	}
	if n, ok := r.count(b, "most_speed", 1, 60000); ok {
		m.GreatestSpeed = tool.Speed(n)
	}
	return shop.Machine{ID: b.Label(), Tool: m, Fence: r.length(b, "most_fence"), Throat: r.length(b, "throat"), Where: b.Where}, true
}

var cutterWords = map[string]tool.Shape{
	"round nose": tool.RoundNose, "core box": tool.RoundNose, "rounding over": tool.RoundOver, "rounding-over": tool.RoundOver, "v groove": tool.VGroove,
}

func (r *reader) cutter(b *document.Block) (shop.Cutter, bool) {
	word := r.words(b, "kind")
	shape, ok := cutterWords[word]
	if !ok {
		shape = tool.Shape(word)
	}
	if !slices.Contains(tool.Shapes(), shape) {
		r.unknownKind(b, word, kindNames(tool.Shapes()))
		return shop.Cutter{}, false
	}
	c := tool.Cutter{
		Name: b.Label(), Shape: shape, Diameter: r.length(b, "diameter"), CuttingLength: r.length(b, "cutting_length"),
		Shank: r.length(b, "shank"), Radius: r.length(b, "radius"),
	}
	if c.Diameter == 0 && c.Radius > 0 {
		c.Diameter = 2 * c.Radius
	}
	if n, ok := r.count(b, "rpm_most", 1, 60000); ok {
		c.Greatest = tool.Speed(n)
	}
	if n, ok := r.count(b, "teeth", 1, 200); ok {
		c.Teeth = n
	}
	return shop.Cutter{ID: b.Label(), Tool: c, Lowers: r.yes(b, "lowers"), Where: b.Where}, r.refused(c.Check(), b.Where)
}
