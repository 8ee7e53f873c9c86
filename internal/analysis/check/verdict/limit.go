package verdict

import (
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Limit is a figure that something is held against.
type Limit struct {
	plan.Figure
	// Source names the rule, the work that it was found in, and how far it was
	// checked.
	Source string
	// From is the same, as figures hold it.
	From figure.Source
	// Known is false where there is no figure.
	Known bool
	// Rule names the rule of the house that changes it.
	Rule string
}

// Limit returns the limit that counts: the rule of the house of that name, or the
// figure of the trade.
func (f *Findings) Limit(rule string, usual figure.Of[unit.Length]) Limit {
	if f.context.Shop != nil {
		if house := f.context.Shop.LengthRule(rule); house.Known() {
			return f.ruled(rule, f.enter(house, ledger.HouseRule))
		}
	}
	origin := ledger.HouseRule
	if usual.Source.Published() {
		origin = ledger.Reference
	}
	return f.ruled(rule, f.enter(usual, origin))
}

// ruled remembers which rule of the house changes a limit, so that findings can say so.
func (f *Findings) ruled(rule string, l Limit) Limit {
	l.Rule = rule
	f.rules[l.Entry] = rule
	return l
}

// Stated returns a limit that no rule of the house replaces: a machine's.
func (f *Findings) Stated(of figure.Of[unit.Length]) Limit { return f.enter(of, ledger.Reference) }

func (f *Findings) enter(of figure.Of[unit.Length], origin ledger.Origin) Limit {
	if !of.Known() {
		return Limit{}
	}
	source := Cite(of.Source)
	id := f.context.Ledger.Given(ledger.Entry{
		Name: of.Source.Key, Value: unit.OfLength(of.Value), Origin: origin, Source: source, Status: string(of.Source.Status),
	})
	return Limit{Figure: plan.Figure{Nm: of.Value, Entry: id}, Source: source, From: of.Source, Known: true}
}

// Cite writes a source as findings hold it: the rule's key, the published work
// where there is one, and the status.
func Cite(s figure.Source) string {
	if s.Published() {
		return s.Key + ": " + s.String() + " (" + string(s.Status) + ")"
	}
	return s.Key + " (" + string(s.Status) + ")"
}

// Practice returns a limit of common practice, for which no published source was
// found.
func Practice(key string, l unit.Length) figure.Of[unit.Length] {
	return figure.Exactly(l, figure.PracticeSource(key))
}
