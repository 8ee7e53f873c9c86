package mechanics

import (
	"scantling/internal/figure"
	"scantling/internal/unit"
)

// SourceRacking is the source of what statics says of racking.
var SourceRacking = figure.Source{Key: "mechanics.racking", Title: "statics", Status: figure.Computed}

// RackingMoment returns what each corner of an open case must carry when a level
// force pushes at its top, the bottom being held: the force times the height,
// shared by all corners alike. Every shelf end fixed in a side is a corner more.
// Nought where there is no corner.
func RackingMoment(push Force, high unit.Length, corners int) Moment {
	if corners < 1 {
		return 0
	}
	return Moment(float64(push) * high.Millimetres() / float64(corners))
}

// PanelShift returns how far the top of a case moves sideways when its back takes
// the whole push in shear, fixed all round: F h / (G t w).
func PanelShift(push Force, width, high, thickness unit.Length, rigid Stress) unit.Length {
	if width <= 0 || thickness <= 0 || rigid <= 0 {
		return 0
	}
	return length(float64(push) * high.Millimetres() / (float64(rigid) * thickness.Millimetres() * width.Millimetres()))
}

// PanelFasteners returns what each fastener of a back carries along its edge when
// the back takes the whole push: the flow of shear F/w times the fasteners'
// distance. The same along the sides, since the flow is the same all round.
func PanelFasteners(push Force, width, apart unit.Length) Force {
	if width <= 0 {
		return 0
	}
	return Force(float64(push) * apart.Millimetres() / width.Millimetres())
}

// PushOfUse is the level push at the top that an open case should bear in use: a
// fifth of the weight of all that it carries and at least 100 N. Common practice,
// no source.
func PushOfUse(carries Mass) figure.Of[Force] {
	f := max(100, carries.Weight()/5)
	return figure.Exactly(f, figure.PracticeSource("mechanics.push-of-use"))
}
