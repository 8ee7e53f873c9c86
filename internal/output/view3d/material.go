package view3d

import (
	"strings"

	"scantling/internal/scene"
)

// shades of timber and sheet, by a word of their name; the first that fits.
var shades = []struct {
	word   string
	colour scene.Colour
}{
	{"walnut", scene.Colour{R: 0x8A, G: 0x6A, B: 0x52}},
	{"cherry", scene.Colour{R: 0xD0, G: 0x9A, B: 0x70}},
	{"mahogany", scene.Colour{R: 0xB0, G: 0x74, B: 0x56}},
	{"oak", scene.Colour{R: 0xD2, G: 0xB4, B: 0x86}},
	{"beech", scene.Colour{R: 0xDD, G: 0xB8, B: 0x92}},
	{"maple", scene.Colour{R: 0xEA, G: 0xD5, B: 0xB0}},
	{"ash", scene.Colour{R: 0xE4, G: 0xD2, B: 0xB2}},
	{"pine", scene.Colour{R: 0xEB, G: 0xCF, B: 0x9A}},
	{"plywood", scene.Colour{R: 0xE6, G: 0xDC, B: 0xC4}},
}

var plain = scene.Colour{R: 0xDC, G: 0xC2, B: 0x98}

// material returns the number of the surface of a material's role; parts of one
// species share it.
func (b *builder) material(role string) int {
	species, kind := "", "timber"
	for _, m := range b.plan.Piece.Materials {
		if m.Name == role {
			species = m.Species
			if m.Sheet {
				kind = "sheet"
			}
		}
	}
	key := kind + " " + species
	if n, ok := b.materials[key]; ok {
		return n
	}
	m := scene.Material{Name: species, Role: kind, Colour: plain, Opacity: 1}
	for _, s := range shades {
		if strings.Contains(species, s.word) {
			m.Colour = s.colour
			break
		}
	}
	n := len(b.scene.Materials)
	b.materials[key] = n
	b.scene.Materials = append(b.scene.Materials, m)
	return n
}
