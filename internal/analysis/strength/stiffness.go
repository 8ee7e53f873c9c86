package strength

import (
	"scantling/internal/analysis/estimate"
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/mechanics"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// stiffness returns the modulus along the span in GPa, the modulus of rigidity as a
// part of it (nought for none) and the creep.
func (s sagger) stiffness() (stiff, rigid, creep estimate.Arg) {
	m, w := s.wood(s.part)
	none := s.maker.Given("no shear", unit.OfInt(unit.DimUntyped, 0), ledger.Derived, "not counted")
	if m.Sheet {
		p, err := timber.FindPanel(m.Species, s.part.Thickness.Nm)
		if err != nil {
			return estimate.Lack(plan.NoSheet), none, none
		}
		along := p.Along
		if s.local != piece.AlongLength {
			along = p.Across
		}
		k, err := mechanics.Creep(creepOf(p.Kind), mechanics.Dry)
		if err != nil {
			return estimate.Lack(plan.NoSheet), none, none
		}
		return estimate.Number(s.maker, s.name+".stiffness", along, plan.NoStiffness), none, estimate.Number(s.maker, s.name+".creep", k, plan.NoStiffness)
	}
	if !w.known {
		return estimate.Lack(plan.NoWood), none, none
	}
	k, _ := mechanics.Creep(mechanics.CreepSolid, mechanics.Dry)
	moe, elastic := w.species.MOE, w.species.Elastic()
	if s.local == piece.AlongLength {
		moe.High *= 1.1 // without the shear that tests lose
		return estimate.Number(s.maker, s.name+".stiffness", moe, plan.NoStiffness),
			estimate.Number(s.maker, s.name+".rigidity", elastic.Rigid(sawn(m.Cut)), plan.NoStiffness), estimate.Number(s.maker, s.name+".creep", k, plan.NoStiffness)
	}
	across := elastic.Across(sawn(m.Cut))
	weak := figure.Between(timber.Stiffness(float64(moe.Value)*float64(across.Value)*1.1), timber.Stiffness(float64(moe.Low)*float64(across.Low)), timber.Stiffness(float64(moe.High)*float64(across.High)*1.1),
		figure.Source{Key: "strength.across", Title: across.Source.Title, Edition: across.Source.Edition, Clause: across.Source.Clause, Status: figure.Weaker(moe.Source.Status, across.Source.Status)})
	if !moe.Known() {
		weak = figure.Of[timber.Stiffness]{}
	}
	return estimate.Number(s.maker, s.name+".stiffness across", weak, plan.NoStiffness), none, estimate.Number(s.maker, s.name+".creep", k, plan.NoStiffness)
}

// creepOf is the row of the creep table for a kind of sheet.
func creepOf(kind string) string {
	switch kind {
	case "mdf":
		return mechanics.CreepMDF
	case "particleboard", "chipboard":
		return mechanics.CreepParticleboard
	case "osb":
		return mechanics.CreepOSB
	case "hardboard":
		return mechanics.CreepHardboard
	}
	return mechanics.CreepPlywood
}
