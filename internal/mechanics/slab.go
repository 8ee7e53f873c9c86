package mechanics

import (
	"scantling/internal/figure"
	"scantling/internal/unit"
)

// Points is a moisture content, or a difference of two, in percent of dry mass.
type Points float64

// Diffusivity is how fast moisture spreads in wood, in m2/s.
type Diffusivity float64

// Hours is a time.
type Hours float64

// Film is the transfer of moisture from a bare surface to still air, in m/s.
type Film float64

// Spreading of moisture across the grain at room temperature, by the wood's weight.
// From memory of the drying literature; the ranges are as wide as they look.
var (
	LightWood = figure.Between(Diffusivity(2.1e-10), 1.5e-10, 3e-10, sourceDiffusion)
	DenseWood = figure.Between(Diffusivity(0.7e-10), 0.3e-10, 1.5e-10, sourceDiffusion)

	sourceDiffusion = figure.Source{Key: "mechanics.diffusion", Title: "drying literature", Status: figure.Memory}
)

// FilmOf is the transfer from bare wood to the still air of a room. From
// memory; a coat of finish or a wrapping makes it many times less.
var FilmOf = figure.Between(Film(2e-7), 1e-7, 4e-7, figure.Source{Key: "mechanics.film", Title: "drying literature", Status: figure.Memory})

// DiffusivityFor returns the figure for a wood by its specific gravity: light up to
// 0.45, dense from 0.6, between them in proportion.
func DiffusivityFor(g Gravity) figure.Of[Diffusivity] {
	share := min(1, max(0, (float64(g)-0.45)/0.15))
	mix := func(a, b Diffusivity) Diffusivity {
		return Diffusivity(float64(float64(a)*(1-share)) + float64(float64(b)*share))
	}
	return figure.Between(mix(LightWood.Value, DenseWood.Value), mix(LightWood.Low, DenseWood.Low), mix(LightWood.High, DenseWood.High), sourceDiffusion)
}

// TimeConstant returns the time in which the first wave of a difference falls to
// 1/e in a board with both faces open: h2/(pi2 D).
func TimeConstant(thickness unit.Length, d Diffusivity) Hours {
	if d <= 0 {
		return 0
	}
	h := thickness.Millimetres() / 1000
	const pi2 = 9.86960440108935861883
	return Hours(h * h / (pi2 * float64(d)) / 3600)
}

// Face is one face of a slab.
type Face struct {
	// Open says that air reaches it; a face on a bench is shut.
	Open bool
	// Deep is how deep channels go in; nought is a plain face.
	Deep unit.Length
}

// Slab is a board that takes up or gives off moisture through its faces. Depths
// are from the machined face.
type Slab struct {
	Thickness unit.Length
	Spreads   Diffusivity
	// Film is the transfer at open faces; 0 is no hindrance: an open face has the
	// air's moisture content at once.
	Film           Film
	Machined, Back Face
	// Cut is how much of the width channels take, from 0 to 1, and Land how wide the
	// wood between two is; channels of both faces lie opposite each other.
	Cut  Ratio
	Land unit.Length
	// Air is the moisture content that the wood comes to in the room.
	Air Points
	// Core and Shell are the moisture contents in the middle and at the faces
	// before Off was planed from the machined face; between them lies a parabola.
	Core, Shell Points
	Off         unit.Length
}

const (
	maxSteps = 4000 // states of one call
	layers   = 20   // through the thickness, at least
	columns  = 3    // across half a land, and across half a channel
	stepOf   = 0.5  // hours
)

// start returns the moisture content at a depth below the machined face.
func (s Slab) start(depth float64) float64 {
	whole := (s.Thickness + s.Off).Millimetres()
	x := (depth + s.Off.Millimetres()) / whole
	return float64(s.Shell) + float64(float64(s.Core-s.Shell)*4*x*(1-x))
}

// channelled reports whether a face has channels.
func (s Slab) channelled() bool { return s.Cut > 0 && (s.Machined.Deep > 0 || s.Back.Deep > 0) }

// Check reports what cannot be. Keys: "figure.length-range", "figure.number-range".
func (s Slab) Check() error {
	const key = "mechanics.slab"
	if err := figure.LengthRange(key, "quantity.thickness", s.Thickness, unit.Millimetre/10, 1000*unit.Millimetre); err != nil {
		return err
	}
	if err := figure.LengthRange(key, "quantity.planed-off", s.Off, 0, 1000*unit.Millimetre); err != nil {
		return err
	}
	for _, deep := range []unit.Length{s.Machined.Deep, s.Back.Deep, s.Machined.Deep + s.Back.Deep} {
		if err := figure.LengthRange(key, "quantity.depth", deep, 0, s.Thickness*19/20); err != nil {
			return err
		}
	}
	if err := figure.NumberRange(key, "quantity.share", s.Cut, 0, 0.95); err != nil {
		return err
	}
	if s.channelled() {
		if err := figure.LengthRange(key, "quantity.land", s.Land, unit.Millimetre/10, 1000*unit.Millimetre); err != nil {
			return err
		}
	}
	return figure.NumberRange(key, "quantity.diffusivity", s.Spreads, 1e-13, 1e-8)
}

// Follow returns the state every so many hours, the first at the beginning, so many
// times. Moisture spreads by Fick's law in the section of half a land and half a
// channel, which repeats over the width; open faces, with the walls and floors of
// their channels, exchange with the air. A face that is shut shuts its channels too.
//
// It is solved backwards in time in steps of a half an hour, through the
// thickness and across the width by turns; the tests hold it against the series
// solution. Errors: those of [Slab.Check]; "figure.number-range" for more than 4000
// states, or states further apart than a day.
func (s Slab) Follow(every Hours, times int) ([]Moisture, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	if err := figure.NumberRange("mechanics.slab", "quantity.steps", Ratio(times), 1, maxSteps); err != nil {
		return nil, err
	}
	if err := figure.NumberRange("mechanics.slab", "quantity.hours", every, 0.01, 24); err != nil {
		return nil, err
	}
	n := newNet(s)
	steps := max(1, int(float64(every)/stepOf+0.999))
	seconds := float64(every) * 3600 / float64(steps)
	out := []Moisture{n.state(0)}
	for k := 1; k < times; k++ {
		for range steps {
			n.step(seconds)
		}
		out = append(out, n.state(Hours(float64(every)*float64(k))))
	}
	return out, nil
}
