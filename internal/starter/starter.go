package starter

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"scantling/internal/document"
	"scantling/internal/recipe"
	"scantling/internal/shop"
	"scantling/internal/unit"
)

// ShopName is what the design calls its shop document.
const ShopName = "shop.hcl"

// Shop returns the text of a shop document to start from: the built-in shop of
// the units.
func Shop(system unit.System) []byte {
	_, text := shop.Default(system)
	return text
}

// FileName proposes a name for the design document of a recipe.
func FileName(r recipe.Recipe) string {
	return strings.ReplaceAll(r.Name, " ", "-") + ".piece.hcl"
}

// Design returns the text of a design document that uses the recipe. It returns
// an error for a recipe that is not one; the built-in ones are.
func Design(r recipe.Recipe, system unit.System) ([]byte, error) {
	f, faults := document.Read(document.Source{Name: r.File, Text: r.Text}, document.DefaultLimits)
	if faults.HasErrors() || f.Kind != document.Recipe {
		return nil, fmt.Errorf("%s is no recipe that can be read", r.File)
	}
	w := writer{recipe: r, file: f, system: system}
	w.head()
	w.inputs()
	w.contents()
	w.materials()
	w.use()
	return []byte(w.text.String()), nil
}

type writer struct {
	text   strings.Builder
	recipe recipe.Recipe
	file   *document.File
	system unit.System
}

// row is one attribute with a remark.
type row struct{ name, value, remark string }

// block writes a block with its signs of equality and its remarks in line.
func (w *writer) block(head string, rows ...row) {
	name, value := 0, 0
	for _, r := range rows {
		name = max(name, len(r.name))
		if r.remark != "" {
			value = max(value, utf8.RuneCountInString(r.value))
		}
	}
	fmt.Fprintf(&w.text, "\n%s {\n", head)
	for _, r := range rows {
		line := fmt.Sprintf("  %-*s = %s", name, r.name, r.value)
		if r.remark != "" {
			line += strings.Repeat(" ", max(0, value-utf8.RuneCountInString(r.value))) + " # " + r.remark
		}
		w.text.WriteString(line + "\n")
	}
	w.text.WriteString("}\n")
}

func (w *writer) remark(text string) {
	fmt.Fprintf(&w.text, "\n# %s\n", text)
}

func (w *writer) head() {
	w.text.WriteString("scantling = 1\n")
	w.block("piece "+quote(title(w.recipe.Name)),
		row{"about", quote(w.recipe.About), ""},
		row{"units", quote(string(w.system)), "what a bare number is where a length stands"},
		row{"shop", quote(ShopName), "your rack, machines and cutters: put in what you have"},
	)
}

// inputs writes those inputs that are plain values as inputs of the piece, so
// that the app draws a control for each.
func (w *writer) inputs() {
	w.remark("What may be changed. Give an input from = and to = and it keeps within them.")
	for _, b := range w.file.Of("input") {
		given := b.Given()
		if given == nil || !w.asks(b) {
			continue
		}
		rows := []row{{"label", quote(label(b)), ""}}
		for _, name := range []string{given.Name, "from", "to", "choices"} {
			if a := b.Attribute(name); a != nil {
				rows = append(rows, row{name, w.value(a, given.Name == "length"), ""})
			}
		}
		w.block("input "+quote(b.Label()), rows...)
	}
}

// asks reports whether an input of the recipe becomes one of the piece: materials
// and what is held have blocks of their own.
func (w *writer) asks(b *document.Block) bool {
	switch b.Given().Name {
	case "material", "things", "head":
		return false
	}
	return !w.along(b)
}

// along reports whether an input is the length of the things held.
func (w *writer) along(b *document.Block) bool { return w.holds() != nil && b.Label() == "long" }

// holds returns the input for the things that the recipe holds, if it has one.
func (w *writer) holds() *document.Block {
	for _, b := range w.file.Of("input") {
		if a := b.Given(); a != nil && a.Name == "things" {
			return b
		}
	}
	return nil
}

// contents writes rods to hold, for recipes that hold something.
func (w *writer) contents() {
	if w.holds() == nil {
		return
	}
	w.remark("What it must hold. The recipe's other sizes suit these; change them together.")
	rows := []row{
		{"label", quote("What it holds"), ""},
		{"rod", `["2 mm", "2.5 mm", "3 mm", "4 mm"]`, "their diameters"},
		{"each", "2", "how many of each"},
		{"length", w.inUnits(unit.MM(350)), "overall"},
	}
	if b := w.file.Input("head"); b != nil {
		rows = append(rows, row{"head", w.value(b.Given(), true), "measure yours"})
	}
	w.block(`contents "things"`, append(rows, row{"play", w.inUnits(unit.MM(3)), "along them"})...)
}

// use puts the recipe to work, every input said.
func (w *writer) use() {
	w.remark("The recipe, with every input said. A formula may stand in the place of any of them.")
	var rows []row
	for _, b := range w.file.Of("input") {
		if b.Given() == nil {
			continue
		}
		value := "input." + b.Label()
		switch name := b.Given().Name; {
		case name == "material":
			value = "material." + role(b)
		case name == "things":
			value = "contents.things"
		case name == "head":
			value = "contents.things.head"
		case w.along(b):
			value = "contents.things.length + contents.things.play"
		}
		rows = append(rows, row{b.Label(), value, label(b)})
	}
	w.block("use "+quote(w.recipe.Name), rows...)
}

func label(b *document.Block) string {
	if a := b.Attribute("label"); a != nil {
		if t, ok := a.Value.(*document.Text); ok {
			if words, plain := t.Plain(); plain {
				return words
			}
		}
	}
	return b.Label()
}

func title(name string) string {
	if name == "" {
		return name
	}
	return strings.ToUpper(name[:1]) + name[1:]
}
