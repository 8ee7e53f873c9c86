package shop

import (
	"embed"

	"scantling/internal/unit"
)

//go:embed library/*.shop.hcl
var library embed.FS

// Default returns the document of the built-in shop for a system of units: its
// name and its text. It is a small workshop with common machines; a maker's own
// shop document goes in its place.
func Default(system unit.System) (name string, text []byte) {
	name = "metric.shop.hcl"
	if system == unit.Inches {
		name = "inch.shop.hcl"
	}
	text, err := library.ReadFile("library/" + name)
	if err != nil {
		panic("shop: " + err.Error()) // embedded
	}
	return name, text
}
