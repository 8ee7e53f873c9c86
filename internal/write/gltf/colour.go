package gltf

import (
	"math"
	"strconv"

	"scantling/internal/scene"
)

// number is printed to nine decimals, far below what a float32 can hold.
type number float64

// MarshalJSON implements [json.Marshaler].
func (n number) MarshalJSON() ([]byte, error) {
	v := math.Round(float64(n)*1e9) / 1e9
	if v == 0 {
		v = 0 // no minus sign
	}
	return strconv.AppendFloat(nil, v, 'f', -1, 64), nil
}

// linear turns a channel of sRGB into linear light (IEC 61966-2-1:1999 clause
// 5.2), with a power of our own so that every machine gives the same bits.
func linear(channel uint8) float64 {
	c := float64(channel) / 255
	if c <= 0.04045 {
		return c / 12.92
	}
	c = (c + 0.055) / 1.055
	square := float64(c * c)
	return float64(square * fifthRoot(square)) // c^2.4 = c² · (c²)^(1/5)
}

// fifthRoot returns a^(1/5) for a in (0, 1] by Newton's method from above, which
// falls until it can fall no further.
func fifthRoot(a float64) float64 {
	r := 1.0
	for {
		r2 := float64(r * r)
		next := float64(float64(4*r)+float64(a/float64(r2*r2))) / 5
		if !(next < r) {
			return r
		}
		r = next
	}
}

func materialOf(m scene.Material) material {
	out := material{
		Name:   m.Name,
		PBR:    pbr{Base: [4]number{number(linear(m.Colour.R)), number(linear(m.Colour.G)), number(linear(m.Colour.B)), 1}, Roughness: 0.8},
		Extras: materialExtras{Role: m.Role},
	}
	if m.Opacity > 0 && m.Opacity < 1 {
		out.AlphaMode = "BLEND"
		out.PBR.Base[3] = number(m.Opacity)
	}
	return out
}
