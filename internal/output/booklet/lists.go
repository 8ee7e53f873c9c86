package booklet

import (
	"slices"
	"strings"

	"scantling/internal/message"
	"scantling/internal/output/table"
	"scantling/internal/output/tape"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/typeset"
	"scantling/internal/unit"
)

func (c *composer) buying() {
	c.heading(1, "booklet.buying", "buying", true)
	c.table(table.Buying(c.plan, c.speech))
	cost := c.plan.Cost
	c.text("booklet.cost", message.Money("total", cost.Total), message.Money("timber", cost.Timber), message.Money("sheet", cost.Sheet), message.Money("hardware", cost.Hardware))
	if len(cost.Unpriced) > 0 {
		c.text("booklet.unpriced", message.List("stock", texts(cost.Unpriced)...))
	}
	if len(c.plan.Setups) > 0 {
		c.heading(2, "booklet.tools", "tools", false)
		c.table(table.Tools(c.plan, c.speech))
	}
	if len(c.plan.Supplies) > 0 {
		c.heading(2, "table.supplies", "supplies", false)
		c.text("booklet.supplies-intro")
		c.table(table.Supplies(c.plan, c.speech))
	}
	if len(c.plan.Held) > 0 {
		before := len(c.blocks)
		c.heading(2, "booklet.holds", "holds", false)
		c.text("booklet.holds-intro")
		c.twoColumns(table.Held(c.plan, c.speech))
		c.blocks = append(c.blocks[:before:before], typeset.Together{Blocks: slices.Clone(c.blocks[before:])})
	}
	if len(c.plan.Stowed) > 0 {
		c.heading(2, "table.stowed", "stowed", false)
		c.text("booklet.stowed-intro")
		c.table(table.Stowed(c.plan, c.speech, c.options.Show))
	}
}

// twoColumns sets a long narrow table in two halves side by side, parted between
// groups.
func (c *composer) twoColumns(t table.Table) {
	cut, best := 0, len(t.Rows)
	for i := range t.Groups {
		if off := max(2*i-len(t.Rows), len(t.Rows)-2*i); i > 0 && off < best {
			cut, best = i, off
		}
	}
	if cut == 0 {
		c.table(t)
		return
	}
	left, right := t, t
	left.Rows, right.Rows = t.Rows[:cut], t.Rows[cut:]
	right.Groups = map[int]string{}
	for i, title := range t.Groups {
		if i >= cut {
			right.Groups[i-cut] = title
		}
	}
	half := (c.room.Width - 6) / 2
	c.add(typeset.Beside{Left: []typeset.Block{c.setWidths(left, half)}, Right: []typeset.Block{c.setWidths(right, half)}})
}

// list sets the staged list: finished sizes, and what each is made from.
func (c *composer) list() {
	c.heading(1, "booklet.list", "list", true)
	c.text("booklet.list-intro", message.Text("signs", table.Signs(c.plan, c.speech)))
	for _, s := range c.plan.Stages {
		c.add(heading(2, c.say("booklet.stage", message.Text("n", s.ID))+" "+c.names.Phrase(s.Title), "stage-"+s.ID, false))
		c.table(table.Parts(c.plan, s.ID, c.speech))
		c.sawnOff(s.Marks)
		c.heading(3, "booklet.made-from", "", false)
		c.table(table.Blanks(c.plan, s.ID, c.speech))
	}
}

// sawnOff says which parts of a stage are sawn apart when they are glued, and into what.
func (c *composer) sawnOff(stage []string) {
	for _, l := range c.plan.Piece.Sawn {
		var marks []string
		for _, w := range l.Walls {
			if m := c.names.Mark(w); slices.Contains(stage, m) && !slices.Contains(marks, m) {
				marks = append(marks, m)
			}
		}
		if len(marks) > 0 {
			c.text("booklet.sawn-off", message.List("marks", texts(marks)...), message.Length("whole", l.Whole.Nm), message.Length("base", l.Base.Nm),
				message.Length("takes", l.Takes.Nm), message.Length("lid", l.Lid.Nm))
		}
	}
}

// sums prints the rows that close, each once, for a maker to add up.
func (c *composer) sums() {
	var blocks []typeset.Block
	seen := map[string]bool{}
	add := func(title string, terms []sumTerm) {
		spans := c.sum(title, terms)
		key := ""
		for _, s := range spans {
			key += s.Text
		}
		if len(terms) > 1 && !seen[key] { // one term is nothing to add up
			seen[key] = true
			blocks = append(blocks, typeset.Paragraph{Spans: spans})
		}
	}
	own := c.tape
	axis := [3]string{"booklet.sum-right", "booklet.sum-back", "booklet.sum-up"}
	for _, a := range []piece.Axis{piece.Right, piece.Back, piece.Up} {
		for _, r := range c.plan.Rows {
			if r.Axis == a && !strings.HasPrefix(r.Title.Key, "row.series") {
				add(c.say(axis[a]), c.rowTerms(r, own))
			}
		}
	}
	for _, s := range c.plan.Piece.Series {
		add(c.say("booklet.sum-series", message.Text("mark", c.names.Mark(s.Part)), message.Word("side", "side."+string(piece.SideOf(s.Across, false)))), c.terms(s.Terms))
	}
	if len(blocks) == 0 {
		return
	}
	c.heading(1, "booklet.sums", "sums", false)
	c.text("booklet.sums-intro")
	c.add(blocks...)
}

// sumTerm is one term of a printed sum.
type sumTerm struct {
	size unit.Length
	what string
}

func (c *composer) terms(list []piece.Term) []sumTerm {
	var out []sumTerm
	for _, t := range list {
		what := ""
		switch mark := c.names.Mark(t.Of); {
		case mark != "":
			what = c.names.Family(mark)
			if what[0] <= '9' {
				what = "(" + what + ")" // a mark without a letter is no figure
			}
			what = c.speech.Own(what)
		case t.Word != "":
			what = c.say("term." + t.Word)
		}
		out = append(out, sumTerm{t.Figure.Nm, what})
	}
	return out
}

// rowTerms are the terms of a row with the figures that are printed for them.
func (c *composer) rowTerms(r plan.Row, t *tape.Tape) []sumTerm {
	out := c.terms(r.Terms)
	shown, _, takes := t.Row(r)
	for i := range out {
		if out[i].size = shown[i]; i == takes {
			out[i].what = strings.TrimSpace(out[i].what + " " + c.say("term.takes-the-rest"))
		}
	}
	return out
}

// sum sets a sum as spans, its figures rounded so that they add up as printed.
func (c *composer) sum(title string, terms []sumTerm) []typeset.Span {
	sizes := make([]unit.Length, len(terms))
	var total unit.Length
	for i, t := range terms {
		sizes[i] = t.size
	}
	spans := typeset.Plain(title + " ")
	for i, shown := range unit.ShowRow(sizes, c.options.Show) {
		total += shown
		sign := "+ "
		switch {
		case shown < 0:
			sign, shown = "− ", -shown
		case i == 0:
			sign = ""
		}
		// The figure and its name stay on one line.
		spans = append(spans, typeset.Span{Text: sign + c.speech.Figure(shown), Bold: true})
		spans = append(spans, typeset.Plain("\u00a0"+strings.ReplaceAll(terms[i].what, " ", "\u00a0")+" ")...)
	}
	return append(spans, typeset.Strong("= "+c.speech.Figure(total))...)
}

// planSum prints a sum of a card.
func (c *composer) planSum(s plan.Sum, settings []plan.Setting) []typeset.Span {
	var terms []sumTerm
	shown, _ := c.tape.Sum(s, "", settings)
	for i, t := range s.Terms {
		terms = append(terms, sumTerm{shown[i], c.say("term." + t.Word)})
	}
	return c.sum(c.names.Phrase(s.Title)+":", terms)
}
