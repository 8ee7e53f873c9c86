package booklet

import (
	"strings"

	"scantling/internal/output/naming"
	"scantling/internal/output/table"
	"scantling/internal/output/tape"
	"scantling/internal/typeset"
)

// second is the sheet of an edition in both: every size once more in the other system,
// and the rows that close there. No line of the rest of the booklet mixes the two.
func (c *composer) second() {
	system, ok := c.plan.Second()
	if !ok || c.options.Second == nil {
		return
	}
	other := *c
	other.speech, other.blocks = c.options.Second, nil
	other.options.Show = c.plan.Show(system)
	other.options.Show.Style = c.options.Show.Style
	other.names = naming.Of(c.plan, other.speech)
	title := "table.second-" + string(system)
	other.heading(1, title, "second", true)
	other.text(title + "-intro")
	other.table(table.Second(c.plan, system, other.speech))
	own, seen := tape.Of(c.plan, system), map[string]bool{}
	for _, r := range c.plan.Rows {
		if strings.HasPrefix(r.Title.Key, "row.series") || len(r.Terms) < 2 {
			continue
		}
		axis := [3]string{"booklet.sum-right", "booklet.sum-back", "booklet.sum-up"}[r.Axis]
		spans := other.sum(other.say(axis), other.rowTerms(r, own))
		key := ""
		for _, s := range spans {
			key += s.Text
		}
		if !seen[key] {
			seen[key] = true
			other.add(typeset.Paragraph{Spans: spans})
		}
	}
	c.add(other.blocks...)
}
