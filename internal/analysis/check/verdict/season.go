package verdict

import (
	"errors"

	"scantling/internal/analysis/movement"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// errNoSeason says that the shop does not tell its air.
var errNoSeason = errors.New("the shop says nothing of its air")

// Season returns how much a size of a material across the grain grows to the
// dampest and shrinks to the driest that the piece will meet, from today. Sheet
// goods keep their size. It returns an error where the wood or the air is not
// known.
func (f *Findings) Season(name string, m piece.Material, size piece.Figure) (grows, shrinks piece.Figure, err error) {
	l := f.context.Ledger
	if m.Sheet {
		none := l.Leaf("sheet goods keep their size", 0, ledger.HouseRule, "check.sheet-keeps-its-size (practice)")
		return none, none, nil
	}
	if f.context.Shop == nil || f.context.Shop.Climate.Season == (timber.Season{}) {
		return grows, shrinks, errNoSeason
	}
	season := f.context.Shop.Climate.Season
	l.Learn(movement.Functions())
	species, err := f.context.Shop.Wood(m.Species)
	if err != nil {
		return grows, shrinks, err
	}
	given := func(v unit.Value) ledger.ID {
		return l.Given(ledger.Entry{Name: name, Value: v, Origin: ledger.Reference, Source: Cite(timber.SourceNarrow)})
	}
	args := []ledger.ID{given(species.Value()), given(unit.OfText(string(movement.Sawn(m.Cut)))), size.Entry,
		f.moisture("now", season.Now), f.moisture("dry", season.Dry), f.moisture("wet", season.Wet)}
	if grows, err = l.Call(name+".grows", "growth to the dampest", args...); err != nil {
		return grows, shrinks, err
	}
	shrinks, err = l.Call(name+".shrinks", "loss to the driest", args...)
	return grows, shrinks, err
}

// Grows returns what a size of a material grows to the dampest, with the range that its
// sources' ranges give; grown is that figure, as [Findings.Season] made it. It returns
// nothing for what does not grow.
func (f *Findings) Grows(m piece.Material, size, grown piece.Figure) []plan.Quantity {
	if grown.Nm <= 0 || m.Sheet || f.context.Shop == nil {
		return nil
	}
	species, err := f.context.Shop.Wood(m.Species)
	if err != nil {
		return nil
	}
	season := f.context.Shop.Climate.Season // as the ledger has it
	for _, at := range []*timber.Moisture{&season.Now, &season.Dry, &season.Wet} {
		*at = timber.Moisture(float64(hundredths(*at)) / 100)
	}
	swing, err := timber.Material{Species: species, Sawn: movement.Sawn(m.Cut)}.Swing(size.Nm, season)
	if err != nil {
		return nil
	}
	by := func(l unit.Length) unit.Value { return unit.OfLength(max(0, l-size.Nm)) }
	return []plan.Quantity{{Role: plan.RoleGrows, Estimate: plan.Estimate{
		Value: f.context.Ledger.Value(grown.Entry), Entry: grown.Entry, Low: by(swing.Wet.Low), High: by(swing.Wet.High), Source: swing.Wet.Source,
	}}}
}

// Moistures returns how damp the wood is today, and when it is at its wettest or driest;
// nothing where the shop does not tell its air.
func (f *Findings) Moistures(wettest bool) []plan.Quantity {
	if f.context.Shop == nil || f.context.Shop.Climate.Season == (timber.Season{}) {
		return nil
	}
	season := f.context.Shop.Climate.Season
	end, name := season.Dry, "dry"
	if wettest {
		end, name = season.Wet, "wet"
	}
	at := func(role, when string, m timber.Moisture) plan.Quantity {
		id := f.moisture(when, m)
		e, _ := f.context.Ledger.Entry(id)
		return plan.Quantity{Role: role, Estimate: plan.Estimate{Value: e.Value, Entry: id, Source: timber.SourceEMC}}
	}
	return []plan.Quantity{at(plan.RoleToday, "now", season.Now), at(plan.RoleThen, name, end)}
}

// hundredths is a moisture content in whole hundredths of a percent.
func hundredths(m timber.Moisture) int64 { return int64(float64(float64(m)*100) + 0.5) }

// moisture enters a moisture content to the hundredth of a percent.
func (f *Findings) moisture(when string, m timber.Moisture) ledger.ID {
	n := unit.OfInt(unit.DimMoisture, hundredths(m)).Number()
	n.Quo(n, unit.OfInt(unit.DimUntyped, 100).Number())
	return f.context.Ledger.Given(ledger.Entry{Name: "moisture content " + when, Value: unit.Of(unit.DimMoisture, n), Origin: ledger.Reference, Source: Cite(timber.SourceEMC)})
}
