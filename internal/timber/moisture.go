package timber

import (
	"scantling/internal/figure"
	"scantling/internal/message"
)

// Moisture is a moisture content, in percent of the wood's oven-dry mass.
type Moisture float64

// Humidity is a relative humidity of air, in percent.
type Humidity float64

// Temperature is a temperature of air, in degrees Celsius.
type Temperature float64

// Air is the air that wood stands in.
type Air struct {
	Humidity    Humidity
	Temperature Temperature
}

// Limits of the formula: those of the table that it was fitted to reach from
// 5 to 95 % and from -1.1 to 132 degrees; it is well behaved somewhat beyond.
const (
	leastTemperature, greatestTemperature = -10, 130
	greatestMoisture                      = 200 // green sapwood
)

// SourceEMC is the source of [EMC]: the constants in degrees Fahrenheit were
// read, those in Celsius only agree with them.
var SourceEMC = figure.Source{Key: "timber.emc", Title: "Wood Handbook FPL-GTR-190", Edition: "2010", Clause: "Equation 4-5", Status: figure.Read}

// EMC returns the moisture content that wood comes to in the air, by the
// Hailwood-Horrobin formula (Wood Handbook FPL-GTR-190, 2010, Equation 4-5, with
// the constants of Simpson 1973, FPL 190, in degrees Fahrenheit).
//
// Against the 152 cells of Table 4-2 from 30 to 100 degrees Fahrenheit it is
// within 0.063 points; 10 cells differ when rounded to 0.1. Single woods and the way there
// (drying or wetting) differ by a point and more. Errors:
// "figure.number-range" for air outside 0-100 % or -10 to 130 degrees.
func EMC(a Air) (Moisture, error) {
	if err := figure.NumberRange(SourceEMC.Key, "quantity.humidity", a.Humidity, 0, 100); err != nil {
		return 0, err
	}
	if err := figure.NumberRange(SourceEMC.Key, "quantity.temperature", a.Temperature, leastTemperature, greatestTemperature); err != nil {
		return 0, err
	}
	f := float64(float64(a.Temperature)*1.8) + 32
	return hailwoodHorrobin(float64(a.Humidity)/100, fahrenheit.at(f)), nil
}

// constants holds one column of Equation 4-5: each of W, K, K1 and K2 is a
// parabola in the temperature.
type constants struct{ w, k, k1, k2 [3]float64 }

var (
	fahrenheit = constants{
		w: [3]float64{330, 0.452, 0.00415}, k: [3]float64{0.791, 0.000463, -0.000000844},
		k1: [3]float64{6.34, 0.000775, -0.0000935}, k2: [3]float64{1.09, 0.0284, -0.0000904},
	}
	// celsius serves the tests: an independent set for the same curve.
	celsius = constants{
		w: [3]float64{349, 1.29, 0.0135}, k: [3]float64{0.805, 0.000736, -0.00000273},
		k1: [3]float64{6.27, -0.00938, -0.000303}, k2: [3]float64{1.91, 0.0407, -0.000293},
	}
)

type sorption struct{ w, k, k1, k2 float64 }

func (c constants) at(t float64) sorption {
	parabola := func(p [3]float64) float64 { return p[0] + float64(p[1]*t) + float64(float64(p[2]*t)*t) }
	return sorption{parabola(c.w), parabola(c.k), parabola(c.k1), parabola(c.k2)}
}

func hailwoodHorrobin(h float64, s sorption) Moisture {
	kh := float64(s.k * h)
	first := float64(s.k1 * kh)
	second := float64(float64(first*s.k2) * kh)
	dissolved := kh / (1 - kh)
	bound := (first + float64(2*second)) / (1 + first + second)
	return Moisture(float64(1800/s.w) * (dissolved + bound))
}

// Season is the moisture content of one wood over the year that counts: at the
// bench now, and at the dry and the wet end of what the piece must live through.
type Season struct{ Now, Dry, Wet Moisture }

// SeasonOf returns the season from the air at the bench and the two ends where
// the piece will live. Errors as in [EMC] and [Season.Check].
func SeasonOf(now, dry, wet Air) (Season, error) {
	var s Season
	for _, end := range []struct {
		to *Moisture
		a  Air
	}{{&s.Now, now}, {&s.Dry, dry}, {&s.Wet, wet}} {
		m, err := EMC(end.a)
		if err != nil {
			return Season{}, err
		}
		*end.to = m
	}
	return s, s.Check()
}

// Check reports a season whose ends are the wrong way round or out of range.
// Keys: "figure.number-range", "timber.season-reversed".
func (s Season) Check() error {
	for _, m := range []Moisture{s.Now, s.Dry, s.Wet} {
		if err := checkMoisture(m); err != nil {
			return err
		}
	}
	if s.Dry > s.Wet {
		return figure.Refuse("timber.season-reversed", message.Percent("dry", float64(s.Dry)), message.Percent("wet", float64(s.Wet))).
			Or("timber.swap-dry-and-wet")
	}
	return nil
}

func checkMoisture(m Moisture) error {
	return figure.NumberRange("timber.moisture", "quantity.moisture", m, 0, greatestMoisture)
}

func textArg(name, s string) message.Arg { return message.Text(name, s) }
