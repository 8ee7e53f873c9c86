package equip

import (
	"scantling/internal/document"
	"scantling/internal/timber"
)

// maxTimbers bounds how many woods a shop may state.
const maxTimbers = 100

// timber reads a wood that the shop states: what it is like, and the figures that are
// known better.
func (r *reader) timber(b *document.Block) {
	if len(r.shop.Timbers) == maxTimbers {
		return
	}
	s := timber.Statement{Name: b.Label(), Botanical: r.words(b, "botanical"), Kind: timber.Kind(r.words(b, "kind"))}
	if s.Kind != "" && s.Kind != timber.Hardwood && s.Kind != timber.Softwood {
		r.unknownKind(b, string(s.Kind), []string{string(timber.Hardwood), string(timber.Softwood)})
		return
	}
	if b.Has("like") {
		like, err := r.shop.Wood(r.words(b, "like"))
		if err != nil {
			wood(r.of(b), nil, err, "like", "")
			return
		}
		s.Like = like
	}
	number(r, b, "radial", &s.Radial)
	number(r, b, "tangential", &s.Tangential)
	number(r, b, "shrink_radial", &s.ShrinkRadial)
	number(r, b, "shrink_tangential", &s.ShrinkTangential)
	number(r, b, "saturation", &s.Saturation)
	number(r, b, "gravity", &s.Gravity)
	number(r, b, "stiffness", &s.MOE)
	number(r, b, "bending", &s.MOR)
	number(r, b, "shear", &s.Shear)
	number(r, b, "hardness", &s.Hardness)
	species, err := s.Species()
	if err == nil {
		err = r.shop.State(species)
	}
	r.refused(err, b.Where)
}

func number[N ~float64](r *reader, b *document.Block, attribute string, to *N) {
	if x, ok := r.number(b, attribute); ok {
		*to = N(x)
	}
}
