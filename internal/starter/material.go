package starter

import (
	"strings"

	"scantling/internal/document"
	"scantling/internal/unit"
)

// timber is what a role asks for at first: what the built-in shops have.
type timber struct {
	asks  string
	thick unit.Length
}

// boards by role; the trade's usual sizes for small work (common practice, no
// source).
var boards = map[string]timber{
	"front":  {"cherry board", unit.MM(14)},
	"drawer": {"hard maple board", unit.MM(10)},
	"tray":   {"cherry board", unit.MM(15)},
}

var otherBoard = timber{"cherry board", unit.MM(14)}

// sheets by system.
var sheets = map[unit.System]string{
	unit.Metric: "birch plywood 4",
	unit.Inches: "birch plywood 1/4 in",
}

// role returns the name of the material that an input of the recipe asks for.
func role(b *document.Block) string {
	if t, ok := b.Given().Value.(*document.Text); ok {
		if words, plain := t.Plain(); plain && words != "" {
			return words
		}
	}
	return b.Label()
}

// materials writes a material for each role that the recipe asks for.
func (w *writer) materials() {
	w.remark("What it is made of: timber and sheets that shop.hcl has in its rack.")
	written := map[string]bool{}
	for _, b := range w.file.Of("input") {
		if b.Given() == nil || b.Given().Name != "material" || written[role(b)] {
			continue
		}
		written[role(b)] = true
		head := "material " + quote(role(b))
		if strings.HasSuffix(b.Label(), "sheet") {
			w.block(head, row{"asks", quote(sheets[w.system]), "nominal; the shop says what it measures"})
			continue
		}
		t, ok := boards[role(b)]
		if !ok {
			t = otherBoard
		}
		w.block(head, row{"asks", quote(t.asks), label(b)}, row{"thickness", w.inUnits(t.thick), "what it is dressed to"})
	}
}
