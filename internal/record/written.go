package record

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/big"

	"scantling/internal/unit"
)

// suffix is what a quantity is written with, and over what it is written.
var suffix = map[unit.Dim]string{
	unit.DimAngle: "deg", unit.DimMoisture: "%mc", unit.DimHumidity: "%rh", unit.DimMass: "g",
}

// written writes a quantity so that [unit.ParseValue] reads it back exactly.
func written(v unit.Value) (string, error) {
	if v.IsZero() {
		return "", nil
	}
	text := v.String()
	if sign, ok := suffix[v.Dim()]; ok {
		text = number(v.Number()) + " " + sign
	}
	back, err := unit.ParseValue(text, 0)
	if err != nil || !back.Equal(v) {
		return "", fmt.Errorf("%v cannot be written so that it reads back exactly", v)
	}
	return text, nil
}

// number writes a rational as a decimal if it is one of at most nine places, as
// a fraction otherwise.
func number(r *big.Rat) string {
	for places := range 10 {
		text := r.FloatString(places)
		if back, ok := new(big.Rat).SetString(text); ok && back.Cmp(r) == 0 {
			return text
		}
	}
	return r.RatString()
}

func unmarshalStrict(data []byte, into any) error {
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	return d.Decode(into)
}
