package plan

import (
	"cmp"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/message"
)

// Finding is what a check says.
type Finding struct {
	Check    string          `json:"check"`
	Status   Status          `json:"status"`
	Severity diag.Severity   `json:"severity"`
	Code     diag.Code       `json:"code"`
	Text     message.Message `json:"text"`
	Address  address.Address `json:"address,omitempty"`
	Marks    []string        `json:"marks,omitempty"`
	// Is and Limit are the two lengths that clash, where it is lengths.
	Is    *Figure `json:"is,omitempty"`
	Limit *Figure `json:"limit,omitempty"`
	// Figures are all quantities that the verdict rests on, of any dimension, with
	// their range and source: what is, what it is held against, and what else is told.
	Figures []Quantity `json:"figures,omitempty"`
	// Rule names the rule of the house that changes the limit; empty where no shop may.
	Rule string `json:"rule,omitempty"`
	// Sources are what the verdict rests on.
	Sources []figure.Source `json:"sources,omitempty"`
	// Source is the sources as a check writes them, "key (status)" or "key: work
	// (status)" with semicolons between, before they are taken apart.
	Source string        `json:"-"`
	Where  diag.Place    `json:"where,omitzero"`
	Remedy []diag.Remedy `json:"remedies,omitempty"`
	// Idle is set on a pass that judged nothing: the catalogue's key for what the check
	// looked for and the piece has none of.
	Idle string `json:"idle,omitempty"`
	// Near lists the set-ups, steps and pages (ids) that it concerns.
	Near []string `json:"near,omitempty"`
}

// Roles of a quantity in a finding.
const (
	RoleIs    = "is"    // what is found
	RoleLimit = "limit" // what it is held against
	RolePull  = "pull"  // what a hand pulls with
	RoleHolds = "holds" // the moment that keeps a piece standing
	RoleStays = "stays" // how much of a drawer must stay in its opening
	RoleLoad  = "load"  // what weighs on it
	RoleAfter = "after" // what becomes of it after years
	RoleToday = "today" // how damp the wood is today
	RoleThen  = "then"  // how damp it is when it happens
	RoleRatio = "ratio" // how two sizes stand to each other
	RoleAsked = "asked" // the ratio that is asked for
	RoleGrows = "grows" // what a part grows until the air is dampest
	RoleWorst = "worst" // when it is at its worst
)

// Quantity is one figure of a finding: its role, and beside it the keys of an
// Estimate, with unit, range and source.
type Quantity struct {
	Role string `json:"role"`
	Estimate
}

// Right reports whether a check had something to judge and found it right.
func (f Finding) Right() bool { return f.Status == Pass && f.Idle == "" }

// Word is the catalogue's key for what a finding comes to: a failure that is only
// worth knowing reads otherwise than one that must be mended, and a pass of nothing
// otherwise than one of something.
func (f Finding) Word() string {
	switch {
	case f.Status == Fail && f.Severity == diag.Note:
		return "status.note"
	case f.Idle != "":
		return "status.idle"
	}
	return "status." + string(cmp.Or(f.Status, Unknown))
}
