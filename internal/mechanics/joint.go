package mechanics

import (
	"math"

	"scantling/internal/figure"
	"scantling/internal/unit"
)

// Sources of the estimates of joints.
var (
	SourceDowel = figure.Source{Key: "mechanics.dowel", Title: "Eckelman, Withdrawal Strength of Dowel Joints", Edition: "1969", Status: figure.Memory}
	// SourceTenon marks an estimate of our own: glue lines in torsion, elastic.
	SourceTenon = figure.Source{Key: "mechanics.tenon", Status: figure.Derived}
	// SourceBond is the range of glue-line strengths that tests of dowels gave.
	SourceBond = figure.Source{Key: "mechanics.bond", Title: "Podlena et al., BioResources 13(3) and 15(1)", Edition: "2018, 2020", Status: figure.Read}
)

// Bond is the shear strength of a glue line on side grain in tests of dowels: 3.0
// to 8.6 MPa; the value is that of a plain grooved dowel.
var Bond = figure.Between(Stress(4.9), 3.0, 8.6, SourceBond)

// DowelWithdrawal returns the ultimate pull of a glued dowel from side grain:
// 0.834 D L^0.89 (0.95 S1 + S2) in pounds, inches and psi, S1 and S2 being the shear
// strengths of the member and of the dowel (Eckelman; formula from memory). Where
// S1 + S2 is under 25 MPa it comes out too low (Chen et al. 2019).
func DowelWithdrawal(diameter, deep unit.Length, member, dowel Stress) Force {
	d, l := diameter.Millimetres()/perInch, deep.Millimetres()/perInch
	if d <= 0 || l <= 0 {
		return 0
	}
	strength := float64(0.95*float64(member)/perPSI) + float64(dowel)/perPSI
	return Pounds(0.834 * d * Power(l, 0.89) * strength)
}

// TenonMoment returns the moment that both glued cheeks of a tenon bear in torsion
// about their middle: 2 tau Ip/r, for cheeks of the width and length given, Ip = b l
// (b2 + l2)/12, r half the diagonal. It is an estimate of our own: published
// regressions were not found.
func TenonMoment(width, long unit.Length, bond Stress) Moment {
	return CheekMoment(width, long, bond, 2)
}

// CheekMoment returns the moment that so many equal rectangular glue lines bear in
// torsion about their middle, as [TenonMoment].
func CheekMoment(width, long unit.Length, bond Stress, lines int) Moment {
	b, l := width.Millimetres(), long.Millimetres()
	if b <= 0 || l <= 0 {
		return 0
	}
	squares := float64(b*b) + float64(l*l)
	polar := b * l * squares / 12
	r := math.Sqrt(squares) / 2
	return Moment(float64(lines) * float64(bond) * polar / r)
}

// DowelMoment returns the moment that a row of dowels bears in its own plane before
// the farthest from the pressed edge draws out: each pulls in the measure of its
// distance from that edge. Distances are from the edge that is pressed. It is an
// estimate of our own on the withdrawal of one.
func DowelMoment(one Force, at []unit.Length) Moment {
	far := 0.0
	for _, x := range at {
		far = max(far, x.Millimetres())
	}
	if far <= 0 {
		return 0
	}
	sum := 0.0
	for _, x := range at {
		sum += float64(float64(one) * x.Millimetres() * x.Millimetres() / far)
	}
	return Moment(sum)
}

// PairMoment returns the moment that two layers of fastening bear that are so far
// apart, one pulled and one pressed: the pull of one layer times the distance.
func PairMoment(one Force, apart unit.Length) Moment {
	return Moment(float64(one) * apart.Millimetres())
}
