package rehearsal_test

import (
	"testing"

	"scantling/internal/analysis/rehearsal"
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/words"
)

// TestEverythingHasWords: every message of cards and steps can be put into words,
// and so can every word of a setting or a sum, and what the rehearsal finds in a
// plan that is wrong.
func TestEverythingHasWords(t *testing.T) {
	p, in := quick(t, sources(t))
	var all []message.Message
	say := func(list ...message.Message) {
		for _, m := range list {
			if !m.IsZero() {
				all = append(all, m)
			}
		}
	}
	settings := func(list []plan.Setting) {
		for _, s := range list {
			say(message.New("setting." + s.Word))
		}
	}
	sums := func(list []plan.Sum) {
		for _, s := range list {
			say(s.Title)
			for _, term := range s.Terms {
				say(message.New("term." + term.Word))
			}
		}
	}
	for _, c := range p.Setups {
		say(c.Title, c.TestPiece, c.Device)
		say(c.Cautions...)
		settings(c.Settings)
		sums(c.Sums)
		for _, q := range c.Placements {
			say(q.Feed, q.Note)
			settings(q.Settings)
			sums(q.Sums)
		}
		if len(c.Cautions) == 0 || c.Machine != "hand" && c.Cautions[0].Key != "caution.machine" {
			t.Errorf("%s does not open with machine off and isolated: %v", c.ID, c.Cautions)
		}
	}
	for _, s := range p.Steps {
		say(s.Chapter, s.Text)
		say(s.More...)
		say(s.Cautions...)
	}
	for i := range p.Setups {
		for k := range p.Setups[i].Placements {
			q := &p.Setups[i].Placements[k]
			for n := range q.Settings {
				q.Settings[n].Figure.Nm += 1_000_000
			}
		}
	}
	findings, _ := rehearsal.Check(in)
	for _, f := range findings {
		say(f.Text)
	}
	if len(findings) < 20 {
		t.Errorf("only %d findings in a plan that is wrong everywhere", len(findings))
	}
	for _, fault := range words.Missing(all...) {
		t.Errorf("%+v", fault)
	}
	t.Logf("%d messages", len(all))
}
