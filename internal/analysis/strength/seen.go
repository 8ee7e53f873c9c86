package strength

import (
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// RuleSag is the rule of the house for the sag to the foot of span from which on it is
// told.
const RuleSag = "sag to the foot"

// seen is the sag of a span from which on an eye sees it: 1/32 in to the foot (common
// practice, no source), or what the house puts up with.
func (e *estimator) seen(name string, span piece.Figure) piece.Figure {
	if e.Shop != nil {
		if own := e.Shop.LengthRule(RuleSag); own.Known() && own.Value > 0 {
			return e.Ledger.Times(name+".seen", span, int64(own.Value), int64(12*unit.Inch))
		}
	}
	return e.Ledger.Times(name+".seen", span, 1, 384)
}
