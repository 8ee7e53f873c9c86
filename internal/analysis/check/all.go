package check

import (
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/assembly"
	"scantling/internal/analysis/check/backtoback"
	"scantling/internal/analysis/check/blind"
	"scantling/internal/analysis/check/bow"
	"scantling/internal/analysis/check/cases"
	"scantling/internal/analysis/check/collision"
	"scantling/internal/analysis/check/cup"
	"scantling/internal/analysis/check/cutter"
	"scantling/internal/analysis/check/exposed"
	"scantling/internal/analysis/check/finishing"
	"scantling/internal/analysis/check/fronts"
	"scantling/internal/analysis/check/gluejoint"
	"scantling/internal/analysis/check/governed"
	"scantling/internal/analysis/check/grip"
	"scantling/internal/analysis/check/hidden"
	"scantling/internal/analysis/check/holds"
	"scantling/internal/analysis/check/joints"
	"scantling/internal/analysis/check/land"
	"scantling/internal/analysis/check/lids"
	"scantling/internal/analysis/check/limits"
	"scantling/internal/analysis/check/measured"
	"scantling/internal/analysis/check/nominal"
	"scantling/internal/analysis/check/panelroom"
	"scantling/internal/analysis/check/pins"
	"scantling/internal/analysis/check/pulls"
	"scantling/internal/analysis/check/racking"
	"scantling/internal/analysis/check/reading"
	"scantling/internal/analysis/check/require"
	"scantling/internal/analysis/check/rows"
	"scantling/internal/analysis/check/sag"
	"scantling/internal/analysis/check/season"
	"scantling/internal/analysis/check/shortgrain"
	"scantling/internal/analysis/check/speeds"
	"scantling/internal/analysis/check/stock"
	"scantling/internal/analysis/check/stops"
	"scantling/internal/analysis/check/supplies"
	"scantling/internal/analysis/check/tipping"
	"scantling/internal/analysis/check/twins"
)

// All returns the checks.
func All() []analysis.Analysis {
	return []analysis.Analysis{
		assembly.Analysis, backtoback.Analysis, bow.Analysis, cases.Analysis, collision.Analysis, cup.Analysis, cutter.Analysis, exposed.Analysis, gluejoint.Analysis, grip.Analysis, hidden.Analysis, holds.Analysis, joints.Analysis, land.Analysis, lids.Analysis, limits.Analysis, measured.Analysis,
		nominal.Analysis, pins.Analysis, racking.Analysis, reading.Analysis, require.Analysis, season.Analysis, stock.Analysis, stops.Analysis, supplies.Analysis,
		finishing.Analysis, fronts.Analysis, pulls.Analysis, rows.Analysis, governed.Analysis, panelroom.Analysis, shortgrain.Analysis, blind.Analysis, speeds.Analysis, sag.Analysis, tipping.Analysis, twins.Analysis,
	}
}
