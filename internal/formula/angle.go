package formula

import (
	"math"
	"math/big"

	"scantling/internal/document"
	"scantling/internal/ledger"
	"scantling/internal/unit"
)

// Angle returns the value as an angle with its line in the ledger: a bare number
// counts degrees, a text is read as an angle ("12 deg") or a slope ("1:8"), whose
// angle is that of a rise of one in a run of eight. Anything else is reported.
func (m *Maker) Angle(v Value, name string) (Value, bool) {
	switch {
	case !v.OK():
		return v, false
	case v.Kind == Text:
		return m.readAngle(v, name)
	case v.Kind == Quantity && v.Is.Dim() == unit.DimRatio && v.Entry != 0:
		m.wants(v, "kind.angle") // a computed ratio may be a slope or a share: say which
		return Value{}, false
	}
	return m.Number(v, unit.DimAngle, name)
}

func (m *Maker) readAngle(v Value, name string) (Value, bool) {
	is, err := unit.ParseValue(v.Is.Text(), 0)
	if err != nil || is.Dim() != unit.DimAngle && is.Dim() != unit.DimRatio {
		m.wants(v, "kind.angle")
		return Value{}, false
	}
	out := Value{Kind: Quantity, Is: is, Where: v.Where}
	if is.Dim() == unit.DimAngle {
		return m.entered(out, name), true
	}
	out = m.make(Value{Kind: Quantity}, name, v.Where, ledger.OpCall, "slope", m.entered(out, ""))
	return out, out.OK()
}

// Tangent enters the tangent of an angle: a ratio.
func (m *Maker) Tangent(v Value) (ledger.ID, bool) {
	t := m.make(Value{Kind: Quantity}, "", v.Where, ledger.OpCall, "tan", v)
	return t.Entry, t.OK()
}

// turning runs a function of an angle.
func turning(fn string) func(*Maker, *document.Call, []Value, string) Value {
	return func(m *Maker, c *document.Call, a []Value, name string) Value {
		angle, ok := m.Angle(a[0], "")
		if !ok {
			return Value{}
		}
		return m.make(Value{Kind: Quantity}, name, c.Place(), ledger.OpCall, fn, angle)
	}
}

// ofAngle makes a function of degrees that gives a ratio.
func ofAngle(f func(radians float64) float64) func([]unit.Value) (unit.Value, error) {
	return func(a []unit.Value) (unit.Value, error) {
		if len(a) != 1 || a[0].Dim() != unit.DimAngle {
			return unit.Value{}, errArguments
		}
		return places(unit.DimRatio, f(float64(a[0].Float()*(math.Pi/180))))
	}
}

// slope gives the angle of a rise over a run.
func slope(a []unit.Value) (unit.Value, error) {
	if len(a) != 1 || a[0].Dim() != unit.DimRatio {
		return unit.Value{}, errArguments
	}
	return places(unit.DimAngle, float64(math.Atan(a[0].Float())*(180/math.Pi)))
}

// places rounds a figure that is not exact to twelve places, so that it is the
// same on every machine and the tangent of 45 degrees is one.
func places(d unit.Dim, x float64) (unit.Value, error) {
	const scale = 1e12
	if math.IsNaN(x) || math.Abs(x) > 1e5 {
		return unit.Value{}, errArguments
	}
	return unit.Of(d, big.NewRat(int64(math.Round(x*scale)), scale)), nil
}
