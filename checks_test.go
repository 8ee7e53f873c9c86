package scantling_test

import (
	"slices"
	"strings"
	"testing"

	"scantling/internal/analysis/check"
	"scantling/internal/diag"
	"scantling/internal/plan"
)

// checkDocuments is what a check's small documents come to: the code where it fails by a
// hair, and where a datum is missing. In the place of a code that no document brings
// about stands the reason.
type checkDocuments struct {
	fails, noFail      string
	unknown, noUnknown string
	// noEdit is why no remedy of the failing document can be applied for the maker.
	noEdit string
}

// inDocuments are the checks by their name. The documents lie in testdata/checks, in a
// folder of the check's name: fails, passes and unknown (see writeChecks).
var inDocuments = map[string]checkDocuments{
	"assembly":     {fails: "assembly-locked", unknown: "assembly-unknown", noEdit: "which part is shortened, opened or left for last is the design"},
	"back to back": {fails: "wood-between-too-thin", noUnknown: "a cut without a depth is an error of the document"},
	"blind":        {fails: "blind-work-too-short", unknown: "plunging-unknown", noEdit: "a length of a part follows from its places; to run the cut through or to get a plunge router is for the maker to choose"},
	"bow":          {fails: "bows-on-sheet", unknown: "bow-not-known", noEdit: "wood on the other face, a thicker sheet or quartersawn wood: the design"},
	"cases":        {fails: "case-racks", unknown: "racking-not-known", noEdit: "a back, a rail or better corners: the design"},
	"collision":    {fails: "parts-collide", unknown: "collision-unknown", noEdit: "which of the two moves is the design"},
	"cup":          {fails: "cups-while-it-waits", unknown: "core-not-read", noEdit: "how a board waits, and how wet its core is, stand in no document"},
	"cutter":       {fails: "cutter-too-short", unknown: "cutter-reach-unknown", noEdit: "a longer cutter is bought, not written"},
	"exposed":      {fails: "dowel-barely-covered", noUnknown: "where holes and cuts lie is always known"},
	"finishing":    {fails: "oil-inside", unknown: "finish-inside-unknown", noEdit: "which finish goes inside is the maker's taste"},
	"fronts":       {fails: "fronts-touch", noUnknown: "as for the room of panels"},
	"glue joint":   {noFail: "strips are laid out so that they meet beside the cuts, and where they cannot that is an error of the document", noUnknown: "where strips meet is always worked out"},
	"governed":     {fails: "use-governed", unknown: "purpose-not-said", noEdit: "a standard is met, not written"},
	"grip":         {fails: "scoop-too-shallow", unknown: "front-unknown"},
	"hidden":       {fails: "groove-shows", noUnknown: "a joint for a part that is not there is an error of the document"},
	"holds":        {fails: "contents-do-not-fit", unknown: "contents-nowhere"},
	"joints":       {fails: "joint-overloaded", unknown: "joint-load-unknown", noEdit: "a housing, a cleat or more fasteners: the design"},
	"land":         {fails: "floor-too-thin", noUnknown: "a row without a sum is an error of the document"},
	"lids":         {fails: "joint-near-lid", noUnknown: "where cuts and lines lie is always known", noEdit: "where keys, grooves and the line lie is the design"},
	"limits":       {fails: "workpiece-too-thin", unknown: "machine-unknown", noEdit: "what is too thin for a machine is made thicker, or otherwise: the maker's choice"},
	"measured":     {fails: "diagonals-not-measured", unknown: "opening-not-measured"},
	"nominal":      {fails: "cut-by-nominal-size", unknown: "sheet-not-measured"},
	"panel room":   {fails: "panel-binds", noUnknown: "a wood whose movement nobody knows is an error of the document, and air that is not said is taken as usual"},
	"pins":         {fails: "end-grain-without-pins", noUnknown: "a rebate of parts that do not meet is an error of the document", noEdit: "which pins, how many and where is the maker's choice"},
	"pulls":        {fails: "pull-blocks", unknown: "pull-place-unknown"},
	"racking":      {fails: "drawer-wider-than-long", unknown: "drawer-without-parts"},
	"reading":      {fails: "opening-uneven", unknown: "reading-of-one-end", noEdit: "wood is eased or packed, not written"},
	"require":      {fails: "rule-broken", noUnknown: "a rule that cannot be worked out is an error of the document", noEdit: "the rule is the designer's, and so is the way out"},
	"row sums":     {fails: "row-does-not-close", noUnknown: "a row is worked out from boxes, which are always known"},
	"sag":          {fails: "sags", unknown: "load-not-known", noEdit: "a shorter span, a thicker board or an upright: the design"},
	"season":       {fails: "fit-binds", noUnknown: "as for the room of panels"},
	"short grain":  {fails: "short-grain-at-end", noUnknown: "which way the grain runs is always known; only an outline of more than a thousand corners is left open"},
	"speeds":       {fails: "cutter-too-fast", unknown: "machine-speed-unknown", noEdit: "another cutter or another machine is bought or fetched, not written"},
	"stock":        {noFail: "a material that the rack does not hold is an error of the document", unknown: "bought-without-price"},
	"stops":        {fails: "out-stop-missing", noUnknown: "a fit in a space that is not there is an error of the document", noEdit: "what keeps a drawer in is the maker's choice"},
	"supplies":     {fails: "wrong-air-for-it", unknown: "glue-not-known", noEdit: "a warmer day is waited for"},
	"tipping":      {fails: "tips-easily", unknown: "tipping-not-known", noEdit: "the wall it is fixed to stands in no document"},
	"twins":        {fails: "easily-swapped", noUnknown: "where the cuts lie is always known", noEdit: "cut alike or clearly apart: the design"},
}

// TestChecksInDocuments plans, for every check, a document that fails by a hair, one
// that passes by a hair and one that lacks a datum, and wants exactly that one finding
// of the check, or none. A check without a line in the table fails.
func TestChecksInDocuments(t *testing.T) {
	for _, a := range check.All() {
		name := a.Info().Name
		want, ok := inDocuments[name]
		if !ok || (want.fails == "") == (want.noFail == "") || (want.unknown == "") == (want.noUnknown == "") {
			t.Errorf("%s has no documents, and no reason for it", name)
			continue
		}
		t.Run(name, func(t *testing.T) {
			if want.fails != "" {
				oneFinding(t, name, "fails", plan.Fail, diag.Code(want.fails))
			}
			if want.unknown != "" {
				oneFinding(t, name, "unknown", plan.Unknown, diag.Code(want.unknown))
			}
			if got := findingsOf(t, name, "passes"); len(got) != 0 {
				t.Errorf("the document that passes by a hair: %v", got)
			}
		})
	}
	if len(inDocuments) != len(check.All()) {
		t.Errorf("the table has %d lines for %d checks", len(inDocuments), len(check.All()))
	}
}

// TestScrewsInDocuments: a row of screws across the grain, tight over a hair more than 100
// between the first and the last; in slots that reach as far as the wood moves to each side
// of its middle, and a tenth less. Wood of which that is not known is told by itself.
func TestScrewsInDocuments(t *testing.T) {
	for which, code := range map[string]diag.Code{"tight": "screwed-across-the-grain", "slots": "slots-too-short"} {
		oneFinding(t, "season", which+"-fails", plan.Fail, code)
		if got := findingsOf(t, "season", which+"-passes"); len(got) != 0 {
			t.Errorf("%s, the document that passes by a hair: %v", which, got)
		}
	}
	for _, f := range findingsOf(t, "season", "slots-fails") {
		if len(f.Remedy) != 1 || len(f.Remedy[0].Edits) == 0 {
			t.Fatalf("no edit makes the slots longer: %v", f.Remedy)
		}
		for _, g := range applyRemedy(t, checkWorld(t, "season"), "slots-fails.piece.hcl", f.Remedy[0], nil, f).Findings {
			if g.Check == "season" && g.Status != plan.Pass {
				t.Errorf("slots made longer leave %s", g.Code)
			}
		}
	}
}

// TestGoodDocument plans a good small piece: no check says a word.
func TestGoodDocument(t *testing.T) {
	p := planNamed(t, checkWorld(t, "good"), "good.piece.hcl", nil).Plan
	ran := map[string]bool{}
	for _, f := range p.Findings {
		if ran[f.Check] = true; f.Status != plan.Pass {
			t.Errorf("%s: %s %s %s", f.Check, f.Status, f.Code, f.Address)
		}
	}
	for _, a := range check.All() {
		if !ran[a.Info().Name] {
			t.Errorf("%s did not run", a.Info().Name)
		}
	}
}

func oneFinding(t *testing.T, name, which string, status plan.Status, code diag.Code) {
	t.Helper()
	got := findingsOf(t, name, which)
	if len(got) != 1 || got[0].Status != status || got[0].Code != code {
		t.Errorf("%s: %v, wanted one %s %s", which, got, status, code)
	}
}

// findingsOf plans one of a check's documents and returns what the check has against
// it. The document must have no errors, and the check must have run.
func findingsOf(t *testing.T, name, which string) []plan.Finding {
	t.Helper()
	r := planNamed(t, checkWorld(t, strings.ReplaceAll(name, " ", "-")), which+".piece.hcl", nil)
	if r.Plan.Diagnostics.HasErrors() {
		t.Errorf("%s: %v", which, r.Plan.Diagnostics)
	}
	all := slices.DeleteFunc(slices.Clone(r.Plan.Findings), func(f plan.Finding) bool { return f.Check != name })
	if len(all) == 0 {
		t.Errorf("%s: the check did not run", which)
	}
	return slices.DeleteFunc(all, func(f plan.Finding) bool { return f.Status == plan.Pass })
}
