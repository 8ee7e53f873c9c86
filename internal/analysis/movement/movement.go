package movement

import (
	"fmt"

	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// Functions returns the pure functions that entries of this package call.
func Functions() ledger.Functions {
	return ledger.Functions{
		"growth to the dampest": swing(timber.Swing.Grows),
		"loss to the driest":    swing(timber.Swing.Shrinks),
	}
}

// swing wraps a side of a season: species, sawing, size, and the moisture
// contents now, dry and wet.
func swing(side func(timber.Swing) unit.Length) func([]unit.Value) (unit.Value, error) {
	return func(args []unit.Value) (unit.Value, error) {
		if len(args) != 6 {
			return unit.Value{}, fmt.Errorf("a season's movement takes 6 values, not %d", len(args))
		}
		species, err := timber.Default().Find(args[0].Text())
		if err != nil {
			return unit.Value{}, err
		}
		size, ok := args[2].Length()
		if !ok {
			return unit.Value{}, fmt.Errorf("a season's movement takes a length, not a %s", args[2].Dim())
		}
		season := timber.Season{Now: moisture(args[3]), Dry: moisture(args[4]), Wet: moisture(args[5])}
		m := timber.Material{Species: species, Sawn: timber.Sawn(args[1].Text())}
		s, err := m.Swing(size, season)
		if err != nil {
			return unit.Value{}, err
		}
		return unit.OfLength(side(s)), nil
	}
}

// Sawn returns the way of sawing that a material's own word means.
func Sawn(word string) timber.Sawn {
	switch word {
	case "flat":
		return timber.FlatSawn
	case "quarter":
		return timber.QuarterSawn
	}
	return timber.SawnUnknown
}

// moisture reads a moisture content, given to the hundredth of a percent.
func moisture(v unit.Value) timber.Moisture {
	if n := v.Number(); n != nil {
		f, _ := n.Float64()
		return timber.Moisture(f)
	}
	return 0
}

// Derive returns the clearances of every fit: above for the tallest moving part
// of each species, sides for what moves across, behind for the case itself.
func Derive(p *piece.Piece, c timber.Season, l *ledger.Ledger) []plan.Clearance {
	d := deriver{piece: p, climate: c, ledger: l, materials: map[string]piece.Material{}}
	for _, m := range p.Materials {
		d.materials[m.Name] = m
	}
	var out []plan.Clearance
	for _, fit := range p.Fits {
		out = append(out, d.fit(fit)...)
	}
	return out
}

type deriver struct {
	piece     *piece.Piece
	climate   timber.Season
	ledger    *ledger.Ledger
	materials map[string]piece.Material
}

func (d *deriver) fit(f piece.Fit) []plan.Clearance {
	type key struct {
		species string
		size    unit.Length
	}
	seen := map[key]bool{}
	var out []plan.Clearance
	for _, part := range d.piece.Parts {
		if !f.Moves.Has(part.Address) {
			continue
		}
		m := d.materials[part.Material]
		local, _ := part.Frame.LocalOf(piece.Up)
		if m.Sheet || local == piece.AlongLength {
			continue // plywood, and wood along its grain, does not move
		}
		size := part.Sizes()[local]
		if k := (key{m.Species, size.Nm}); !seen[k] && local == piece.AlongWidth {
			seen[k] = true
			if c, ok := d.clearance(f, "above", size, f.Above, m, part.Address); ok {
				out = append(out, c)
			}
		}
	}
	return out
}

func (d *deriver) clearance(f piece.Fit, across string, size, leave ledger.Figure, m piece.Material, moves address.Address) (plan.Clearance, bool) {
	l := d.ledger
	name := string(f.Address) + "." + across + "." + m.Species
	text := func(s string) ledger.ID {
		return l.Given(ledger.Entry{Name: name, Value: unit.OfText(s), Origin: ledger.Reference, Source: "Wood Handbook FPL-GTR-190, Table 13-5"})
	}
	args := []ledger.ID{text(m.Species), text(string(Sawn(m.Cut))), size.Entry, d.moisture("now", d.climate.Now), d.moisture("dry", d.climate.Dry), d.moisture("wet", d.climate.Wet)}
	grows, err := l.Call(name+".grows", "growth to the dampest", args...)
	if err != nil {
		return plan.Clearance{}, false
	}
	shrinks, err := l.Call(name+".shrinks", "loss to the driest", args...)
	if err != nil {
		return plan.Clearance{}, false
	}
	return plan.Clearance{
		Fit: f.Address, Moves: moves, Across: across, Size: size, Species: m.Species, Cut: m.Cut,
		GrowsWet: grows, ShrinksDry: shrinks, Leave: leave,
		AtWet: l.Less(name+".wet", leave, grows), AtDry: l.Sum(name+".dry", leave, shrinks),
	}, true
}

func (d *deriver) moisture(when string, m timber.Moisture) ledger.ID {
	hundredths := unit.OfInt(unit.DimMoisture, int64(float64(float64(m)*100)+0.5))
	n := hundredths.Number()
	n.Quo(n, unit.OfInt(unit.DimUntyped, 100).Number())
	return d.ledger.Given(ledger.Entry{Name: "moisture content " + when, Value: unit.Of(unit.DimMoisture, n), Origin: ledger.Reference,
		Source: "equilibrium moisture content, Wood Handbook FPL-GTR-190, Eq. 4-5"})
}
