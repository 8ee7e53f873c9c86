package equip

import (
	"cmp"
	"slices"

	"scantling/internal/document"
	"scantling/internal/figure"
	"scantling/internal/hardware"
	"scantling/internal/shop"
)

// fitting reads a fitting with its price and, where its kind is stated, the sizes
// that were measured of it.
func (r *reader) fitting(b *document.Block) (shop.Fitting, bool) {
	have, _ := r.count(b, "count", 0, maxCount)
	out := shop.Fitting{ID: b.Label(), Price: r.price(b), Have: have, Where: b.Where}
	if !b.Has("kind") {
		return out, true
	}
	if word := r.words(b, "kind"); !slices.Contains(hardware.FittingKinds(), hardware.FittingKind(word)) {
		r.unknownKind(b, word, kindNames(hardware.FittingKinds()))
		return out, false
	}
	f := hardware.Fitting{
		Kind: hardware.FittingKind(r.words(b, "kind")), Name: b.Label(),
		Length: r.length(b, "length"), Width: r.length(b, "width"), Thickness: r.length(b, "thickness"),
		Diameter: r.length(b, "diameter"), Projection: r.length(b, "projection"), Depth: r.length(b, "depth"),
		PlateLength: r.length(b, "plate_length"), PlateWidth: r.length(b, "plate_width"), Plate: r.length(b, "plate"),
		Screw: r.words(b, "screw"), ScrewLength: r.length(b, "screw_length"),
	}
	f.Screws, _ = r.count(b, "screws", 0, 50)
	f.Source = figure.Source{Key: "hardware.fitting." + string(f.Kind), Status: figure.Stated}
	err := f.Check()
	if f.Screws > 0 {
		_, known := hardware.FindScrew(f.Screw, f.ScrewLength)
		err = cmp.Or(err, known)
	}
	if err != nil {
		r.refused(err, b.Where)
		return out, false
	}
	out.Sizes = &f
	return out, true
}
