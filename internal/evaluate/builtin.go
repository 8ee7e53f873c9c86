package evaluate

import (
	"sync"

	"scantling/internal/document"
	"scantling/internal/recipe"
	"scantling/internal/shop"
	"scantling/internal/unit"
)

// The built-in documents are read once: files are not changed after reading, so
// that evaluations may share them.
var (
	builtinRecipes = sync.OnceValue(func() map[string]*document.File {
		out := map[string]*document.File{}
		for _, r := range recipe.All() {
			out[r.Name], _ = document.Read(document.Source{Name: r.File, Text: r.Text}, document.Limits{})
		}
		return out
	})
	builtinMetric = sync.OnceValue(func() *document.File { return builtinShop(unit.Metric) })
	builtinInch   = sync.OnceValue(func() *document.File { return builtinShop(unit.Inches) })
)

func builtinShop(system unit.System) *document.File {
	name, text := shop.Default(system)
	f, _ := document.Read(document.Source{Name: name, Text: text}, document.Limits{})
	return f
}

func defaultShop(system unit.System) *document.File {
	if system == unit.Inches {
		return builtinInch()
	}
	return builtinMetric()
}
