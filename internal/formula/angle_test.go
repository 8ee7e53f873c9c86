package formula

import (
	"testing"

	"scantling/internal/unit"
)

// TestAngles reads angles as a maker writes them: the tangent of 45 degrees is one,
// a slope of one in eight has that tangent, 3-4-5 is a right triangle.
func TestAngles(t *testing.T) {
	for text, want := range map[string]string{
		`tan("45 deg")`: "1 ratio", `tan(45)`: "1 ratio", `tan("1:8")`: "1/8 ratio", `tan("-1:8")`: "-1/8 ratio", `sin("30°")`: "1/2 ratio", `cos("60 degrees")`: "1/2 ratio",
		`sin("3:4")`: "3/5 ratio", `cos("3:4")`: "4/5 ratio", `len * tan("45 deg")`: "14000000 length", `"12 deg" + 3`: "15 angle", `2 * "12 deg"`: "24 angle", `"12 deg" / 2`: "6 angle", `90 - "12.5 deg"`: "155/2 angle", `tan("90 deg" / 2)`: "1 ratio",
		`"12 deg" + len`: "kinds-do-not-go-together", `tan("90 deg")`: "sum-refused", `tan("14 mm")`: "wrong-kind",
	} {
		b := newBench(unit.Millimetre)
		v := b.eval(t, text)
		got := ""
		if v.OK() {
			got = v.Is.Number().RatString() + " " + string(v.Is.Dim())
		} else if len(b.codes) == 1 {
			got = string(b.codes[0])
		}
		if got != want {
			t.Errorf("%s = %s (%v), not %s", text, got, b.codes, want)
		}
	}
}
