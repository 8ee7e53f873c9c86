package booklet

import (
	"slices"
	"strings"

	"scantling/internal/message"
	"scantling/internal/output/drawing"
	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/typeset"
	"scantling/internal/unit"
)

// general are the cautions that stand once in front; a card opens with the one
// line that must not be forgotten.
var general = []string{"caution.isolate", "caution.dress", "caution.guards", "caution.machine", "caution.person", "caution.dust", "caution.screen", "caution.manual"}

// cards sets one card for each set-up; two small ones stand side by side.
func (c *composer) cards() {
	if len(c.plan.Setups) == 0 {
		return
	}
	// The first cards stay with the chapter's title.
	blocks := []typeset.Block{heading(1, c.say("booklet.setups"), "setups", false), c.paragraph("booklet.setups-intro")}
	for i := 0; i < len(c.plan.Setups); i++ {
		if i+1 < len(c.plan.Setups) && c.isSmall(i) && c.isSmall(i+1) {
			blocks = append(blocks, typeset.Beside{Left: c.card(i, true), Right: c.card(i+1, true)})
			i++
		} else {
			blocks = append(blocks, c.card(i, false)...)
		}
		c.add(typeset.Together{Blocks: blocks}, typeset.Space{Height: 3})
		blocks = nil
	}
}

// isSmall says whether a card is for half the width: nothing to sketch, little
// to say.
func (c *composer) isSmall(i int) bool {
	s := c.plan.Setups[i]
	rows := merged(s.Placements)
	return len(rows) <= 3 && (len(rows) == 0 || len(c.sketches(s, rows)) == 0)
}

// card sets one card: opening caution, machine, settings, sketch, placements,
// sums, cautions of its own.
func (c *composer) card(i int, narrow bool) []typeset.Block {
	s := c.plan.Setups[i]
	title := c.say("booklet.card-title", message.Count("n", i+1), message.Text("title", c.names.Phrase(s.Title)))
	head := typeset.Heading{Level: 3, Text: title, Anchor: "setup-" + s.ID, Address: s.ID, Unlisted: true}
	var body []typeset.Block
	if !byHand(s) {
		body = append(body, typeset.Paragraph{Spans: []typeset.Span{{Text: "▲ " + c.say("booklet.card-off"), Bold: true, Colour: page.Warn}}, Manner: c.fine()})
	}
	rows := merged(s.Placements)
	var pictures []typeset.Block
	if len(rows) > 0 {
		pictures = c.sketches(s, rows)
	}
	about := c.about(s)
	switch len(pictures) {
	case 0:
		body = append(body, about...)
	case 1:
		body = append(body, typeset.Beside{Share: 0.5, Left: pictures, Right: about})
	default:
		body = append(body, typeset.Beside{Share: 0.5, Left: pictures[:1], Right: append(pictures[1:], about[:1]...)})
		body = append(body, about[1:]...)
	}
	if len(rows) > 0 {
		body = append(body, c.placements(rows, narrow))
	}
	body = append(body, c.notes(s, rows)...)
	if own := c.cautionLine(s.Cautions); own != nil {
		body = append(body, own)
	}
	return []typeset.Block{head, typeset.Box{Frame: true, Blocks: body, Address: s.ID}}
}

// about says what machine it is, and what holds for the whole card.
func (c *composer) about(s plan.Setup) []typeset.Block {
	out := []typeset.Block{c.small(c.machine(s))}
	if t := c.settings(s.Settings); len(t.Rows) > 0 {
		out = append(out, t)
	}
	for _, m := range []message.Message{s.Device, s.TestPiece} {
		if !m.IsZero() {
			out = append(out, c.small(c.names.Phrase(m)))
		}
	}
	return out
}

// notes are what stands below the table: the way of feeding that all rows share,
// how a series is measured, sums of the whole card.
func (c *composer) notes(s plan.Setup, rows []mergedRow) []typeset.Block {
	var out []typeset.Block
	if feed := sameFeed(rows); feed != nil {
		out = append(out, c.small(c.names.Phrase(*feed)))
	}
	if !s.Shared.IsZero() {
		out = append(out, c.small(c.names.Phrase(s.Shared)))
	}
	var said []string
	for _, r := range rows {
		for _, p := range r.placements {
			if text := c.names.Phrase(p.Note); p.Note.Key == methodNote && !slices.Contains(said, text) {
				said = append(said, text)
				out = append(out, c.small(text))
			}
		}
	}
	for _, sum := range s.Sums {
		out = append(out, typeset.Paragraph{Spans: c.planSum(sum, s.Settings), Manner: c.fine()})
	}
	return out
}

// methodNote is the note that compares ways of measuring a series.
const methodNote = "setups.method"

func byHand(s plan.Setup) bool { return s.Machine == "hand" }

func (c *composer) machine(s plan.Setup) string {
	if byHand(s) {
		return c.say("booklet.card-hand")
	}
	line := c.say("booklet.card-machine", message.Text("machine", s.MachineLabel))
	if s.CutterLabel != "" {
		line = c.say("booklet.card-cutter", message.Text("machine", s.MachineLabel), message.Text("cutter", s.CutterLabel))
	}
	if s.Speed > 0 {
		line += " " + c.say("booklet.card-speed", message.Speed("rpm", s.Speed))
	}
	return line
}

// cautionLine sets the cautions that belong to this work alone, after the sign.
func (c *composer) cautionLine(list []message.Message) typeset.Block {
	text := c.ownCautions(list)
	if text == "" {
		return nil
	}
	return typeset.Paragraph{Spans: []typeset.Span{{Text: "▲ ", Bold: true, Colour: page.Warn}, {Text: text}}, Manner: c.fine()}
}

// ownCautions says the cautions of a list that are not the general ones.
func (c *composer) ownCautions(list []message.Message) string {
	var own []string
	for _, m := range list {
		if !slices.Contains(general, m.Key) {
			own = append(own, c.names.Phrase(m))
		}
	}
	return strings.Join(own, " ")
}

// settings are the figures that hold for the whole card, large.
func (c *composer) settings(list []plan.Setting) typeset.Table {
	t := typeset.Table{Columns: []typeset.Column{{Share: 1.6}, {Share: 0.8, Align: page.End}, {Share: 2.2}}}
	for _, s := range list {
		shown, passes := c.tape.Setting(s)
		t.Rows = append(t.Rows, typeset.Row{Cells: []typeset.Cell{
			{Spans: typeset.Plain(c.say("setting." + s.Word)), Header: true},
			{Spans: typeset.Strong(c.speech.Figure(shown))}, {Spans: typeset.Plain(c.passes(passes))},
		}})
	}
	return t
}

// passes lists the settings of several passes.
func (c *composer) passes(list []unit.Length) string {
	if len(list) < 2 {
		return ""
	}
	var steps []string
	for _, f := range list {
		steps = append(steps, c.speech.Figure(f))
	}
	return c.say("booklet.passes", message.Count("n", len(list)), message.Text("depths", strings.Join(steps, " · ")))
}

// sketches draws the first placement: seen along the feed, and from above where
// stops are set.
func (c *composer) sketches(s plan.Setup, rows []mergedRow) []typeset.Block {
	const wide, high = 78, 40
	first := rows[0].placements[0]
	var pictures []typeset.Block
	if pic, ok := drawing.Setup(c.plan, s, first, wide, high, c.speech); ok {
		pictures = append(pictures, typeset.Figure{Drawing: pic})
	}
	if pic, ok := drawing.SetupAbove(c.plan, s, first, 70, c.speech); ok {
		pictures = append(pictures, typeset.Figure{Drawing: pic})
	}
	return pictures
}

// placements lists how the work is offered, one row for each fence setting.
func (c *composer) placements(rows []mergedRow, narrow bool) typeset.Table {
	// On a narrow card the words need more of the width.
	shares, keys := []float64{1.1, 2.2, 3.2, 1.9}, []string{"column.mark", "column.set", "column.offer", "column.check"}
	if narrow {
		shares, keys = []float64{1, 1.5, 2.2}, keys[:3]
	}
	var t = typeset.Table{Full: true, Manner: c.fine()}
	for i, key := range keys {
		t.Columns = append(t.Columns, typeset.Column{Share: shares[i]})
		t.Header = append(t.Header, typeset.Cell{Spans: typeset.Strong(c.say(key))})
	}
	shared := sameFeed(rows) != nil
	var before []plan.Setting
	for _, r := range rows {
		p := r.placements[0]
		marks := append(typeset.Strong(c.speech.Own(strings.Join(c.names.Marks(r.marks()), " "))), typeset.Plain("\u00a0×\u00a0"+c.say("number.whole", message.Count("n", r.pieces)))...)
		if takes := c.takes(r); takes != "" {
			marks = append(marks, typeset.Plain("\n"+takes)...)
		}
		cells := []typeset.Cell{{Spans: marks, Header: true}, {Spans: c.set(p, before)}, {Spans: typeset.Plain(c.offer(p, shared))}}
		if !narrow {
			cells = append(cells, typeset.Cell{Spans: typeset.Plain(c.checks(p))})
		}
		t.Rows = append(t.Rows, typeset.Row{Cells: cells})
		before = p.Settings
	}
	return withoutEmpty(t)
}

// withoutEmpty drops columns in which no row says anything.
func withoutEmpty(t typeset.Table) typeset.Table {
	for i := len(t.Columns) - 1; i > 0; i-- {
		says := slices.ContainsFunc(t.Rows, func(r typeset.Row) bool {
			return slices.ContainsFunc(r.Cells[i].Spans, func(s typeset.Span) bool { return s.Text != "" })
		})
		if says {
			continue
		}
		t.Columns, t.Header = slices.Delete(t.Columns, i, i+1), slices.Delete(t.Header, i, i+1)
		for k := range t.Rows {
			t.Rows[k].Cells = slices.Delete(t.Rows[k].Cells, i, i+1)
		}
	}
	return t
}

// set lists the figures of a placement, and where the fence stands for each path; where
// two and more stay as they are in the row above, only what changes.
func (c *composer) set(p plan.Placement, before []plan.Setting) []typeset.Span {
	var spans []typeset.Span
	same := func(s plan.Setting) bool {
		return slices.ContainsFunc(before, func(o plan.Setting) bool {
			was, _ := c.tape.Setting(o)
			is, _ := c.tape.Setting(s)
			return c.say("setting."+o.Word) == c.say("setting."+s.Word) && c.speech.Figure(was) == c.speech.Figure(is) && len(o.Passes) < 2 && len(s.Passes) < 2
		})
	}
	stay := 0
	for _, s := range p.Settings {
		if same(s) {
			stay++
		}
	}
	if stay < 2 || stay == len(p.Settings) {
		stay = 0
	}
	for _, s := range p.Settings {
		if stay > 0 && same(s) {
			continue
		}
		if len(spans) > 0 {
			spans = append(spans, typeset.Plain("\n")...)
		}
		spans = append(spans, typeset.Plain(c.say("setting."+s.Word)+" ")...)
		shown, passes := c.tape.Setting(s)
		spans = append(spans, typeset.Strong(c.speech.Figure(shown))...)
		if len(passes) > 1 {
			spans = append(spans, typeset.Plain("\n"+c.passes(passes))...)
		}
	}
	if stay > 0 {
		spans = append(spans, typeset.Plain("\n"+c.say("booklet.set-as-above"))...)
	}
	return spans
}

// offer says how the work lies and goes.
func (c *composer) offer(p plan.Placement, shared bool) string {
	var parts []string
	if !shared && !p.Feed.IsZero() {
		parts = append(parts, c.names.Phrase(p.Feed))
	}
	if p.Down != "" && p.Fence != "" {
		parts = append(parts, c.say("booklet.lies", message.Word("down", "side."+string(p.Down)), message.Word("fence", "side."+string(p.Fence))))
	}
	if p.Turn {
		parts = append(parts, c.say("booklet.turn"))
	}
	if !p.Note.IsZero() && p.Note.Key != methodNote {
		parts = append(parts, c.names.Phrase(p.Note))
	}
	return strings.Join(parts, " ")
}

// checks are the sums that a rule on the machine closes, in figures.
func (c *composer) checks(p plan.Placement) string {
	var lines []string
	for _, s := range p.Sums {
		switch s.Title.Key {
		case "setups.sum.across", "setups.sum.stops", "setups.sum.stop-faces":
			lines = append(lines, c.bareSum(s, p))
		}
	}
	return strings.Join(lines, "\n")
}

// bareSum prints a sum of the plan in figures alone.
func (c *composer) bareSum(s plan.Sum, p plan.Placement) string {
	var text strings.Builder
	terms, total := c.tape.Sum(s, p.Mark, p.Settings)
	for i, shown := range terms {
		switch {
		case shown < 0:
			text.WriteString(" − ")
			shown = -shown
		case i > 0:
			text.WriteString(" + ")
		}
		text.WriteString(c.speech.Figure(shown))
	}
	return strings.TrimSpace(text.String()) + " = " + c.speech.Figure(total)
}

// takes names the things that the cuts of a row are for.
func (c *composer) takes(r mergedRow) string {
	var keys []string
	for _, p := range r.placements {
		for _, a := range p.Cuts {
			if i := slices.IndexFunc(c.plan.Piece.Cuts, func(cut piece.Cut) bool { return cut.Address == a }); i >= 0 {
				if k := c.plan.Piece.Cuts[i].Key; k != "" && !slices.Contains(keys, k) {
					keys = append(keys, k)
				}
			}
		}
	}
	if len(keys) == 0 {
		return ""
	}
	return c.speech.Own(strings.Join(keys, ", "))
}

// sameFeed returns the way of feeding that all rows share, if they do and it
// names no side.
func sameFeed(rows []mergedRow) *message.Message {
	var first *message.Message
	for _, r := range rows {
		for i := range r.placements {
			f := &r.placements[i].Feed
			if f.IsZero() || len(f.Args) > 0 {
				return nil
			}
			if first == nil {
				first = f
			}
			if f.Key != first.Key {
				return nil
			}
		}
	}
	return first
}
