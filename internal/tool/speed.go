package tool

import (
	_ "embed" // the table
	"math"
	"sync"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Speed is a spindle speed in revolutions per minute.
type Speed int

// RimSpeed is a speed at the cutting circle in metres per second.
type RimSpeed float64

// FeedRate is how far the work moves in a minute.
type FeedRate unit.Length

//go:embed data/speeds.csv
var speedsCSV string

// band is one row of a speed table: up to the diameter, the speed lies between
// low and high.
type band struct {
	diameter  unit.Length
	low, high Speed
	source    figure.Source
}

var bandsOnce = sync.OnceValue(func() map[string][]band {
	out := map[string][]band{}
	for _, row := range figure.MustTable("speeds.csv", speedsCSV).Rows() {
		var b band
		b.diameter, _ = row.Millimetres("diameter_mm")
		low, _ := row.Count("rpm_low")
		high, _ := row.Count("rpm_high")
		name := row.Text("table")
		b.low, b.high = Speed(low), Speed(high)
		b.source = figure.Source{Key: "tool.speed-" + name, Title: row.Text("source"), Clause: "up to " + row.Text("diameter_mm") + " mm", Status: row.Status("status")}
		if err := row.Err(); err != nil {
			panic("tool: " + err.Error())
		}
		out[name] = append(out[name], b)
	}
	return out
})

// Speeds is how fast a router cutter may turn.
type Speeds struct {
	// Greatest must not be passed: the lower of the published band's cautious end
	// and the mark on the cutter.
	Greatest figure.Of[Speed]
	// Start is where to begin; never above Greatest.
	Start figure.Of[Speed]
	// Marked is true where the mark on the cutter was the lower one.
	Marked bool
}

// SpeedsOf returns the speeds for a router cutter by its diameter: published
// bands of two router makers for the greatest, a guide to two cutter makers'
// charts for the start, never above the mark on the cutter. Diameters between
// two rows take the row of the greater diameter.
//
// Errors: "tool.speed-unknown" for drills and saw blades without a mark,
// "tool.too-big-for-router" above 88.9 mm.
func SpeedsOf(c Cutter) (Speeds, error) {
	if c.Shape == Drill || c.Shape == SawBlade {
		if c.Greatest <= 0 {
			return Speeds{}, figure.Refuse("tool.speed-unknown", message.Text("cutter", c.Name)).Or("tool.read-the-mark")
		}
		mark := figure.Exactly(c.Greatest, figure.Source{Key: "tool.speed-mark", Status: figure.Stated})
		return Speeds{mark, mark, true}, nil
	}
	greatest, ok := bandFor("greatest", c.Diameter)
	if !ok {
		return Speeds{}, figure.Refuse("tool.too-big-for-router", message.Text("cutter", c.Name), message.Length("diameter", c.Diameter), message.Length("greatest", lastDiameter("greatest"))).
			Or("tool.smaller-cutter")
	}
	out := Speeds{Greatest: figure.Between(greatest.low, greatest.low, greatest.high, greatest.source)}
	start, ok := bandFor("start", c.Diameter)
	if !ok { // between the last row of the start table and the last of the bands
		start = greatest
	}
	out.Start = figure.Exactly(start.low, start.source)
	if c.Greatest > 0 && c.Greatest < out.Greatest.Value {
		out.Marked = true
		out.Greatest = figure.Exactly(c.Greatest, figure.Source{Key: "tool.speed-mark", Status: figure.Stated})
	}
	if out.Start.Value > out.Greatest.Value {
		out.Start = out.Greatest
		out.Start.Low, out.Start.High = out.Start.Value, out.Start.Value
	}
	return out, nil
}

func bandFor(table string, diameter unit.Length) (band, bool) {
	for _, b := range bandsOnce()[table] {
		if diameter <= b.diameter {
			return b, true
		}
	}
	return band{}, false
}

func lastDiameter(table string) unit.Length {
	rows := bandsOnce()[table]
	return rows[len(rows)-1].diameter
}

// Speed returns the speed to set on the machine for the cutter: the start speed
// within what the spindle can do.
//
// Errors: those of [SpeedsOf]; "tool.spindle-too-fast" where the machine's least
// speed is above the cutter's greatest.
func (m Machine) Speed(c Cutter) (Speed, error) {
	s, err := SpeedsOf(c)
	if err != nil {
		return 0, err
	}
	if m.LeastSpeed > s.Greatest.Value {
		return 0, figure.Refuse("tool.spindle-too-fast", message.Text("machine", m.Name), message.Speed("least", int(m.LeastSpeed)), message.Speed("greatest", int(s.Greatest.Value))).
			Or("tool.smaller-cutter").Or("tool.slower-machine")
	}
	speed := max(s.Start.Value, m.LeastSpeed)
	if m.GreatestSpeed > 0 {
		speed = min(speed, m.GreatestSpeed)
	}
	return speed, nil
}

// RimSpeedOf returns the speed at the cutting circle, pi d n: geometry, no source
// needed.
func RimSpeedOf(diameter unit.Length, n Speed) RimSpeed {
	return RimSpeed(float64(float64(math.Pi*diameter.Millimetres())*float64(n)) / 60000)
}

// FeedPerTooth returns how far the work moves between one cutting edge and the
// next, v/(n z), to the nearest nanometre below. Zero where nothing turns.
func FeedPerTooth(v FeedRate, n Speed, teeth int) unit.Length {
	if n <= 0 || teeth <= 0 {
		return 0
	}
	return unit.Length(v) / unit.Length(int(n)*teeth)
}

// SourceBlade is the source of [LeastBlade].
var SourceBlade = figure.Source{Key: "tool.least-blade", Title: "HSE WIS16", Edition: "rev 2", Status: figure.Read}

// LeastBlade returns the least saw-blade diameter for a bench whose largest is
// given: 60 % of it (HSE WIS16).
func LeastBlade(largest unit.Length) figure.Of[unit.Length] {
	return figure.Exactly(largest/5*3+largest%5*3/5, SourceBlade)
}
