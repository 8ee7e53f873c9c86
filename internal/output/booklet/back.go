package booklet

import (
	"slices"
	"strings"

	"scantling/internal/font"
	"scantling/internal/message"
	"scantling/internal/output/drawing"
	"scantling/internal/output/table"
	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/typeset"
)

// measures sets a form for every measure, to write the readings into.
func (c *composer) measures() {
	if len(c.plan.Measures) == 0 {
		return
	}
	c.heading(1, "booklet.measures", "measures", true)
	c.text("booklet.measures-intro")
	for _, m := range c.plan.Measures {
		blocks := []typeset.Block{heading(2, c.speech.Own(m.Label), "measure-"+string(m.Address), false)}
		if len(m.Marks) > 0 {
			blocks = append(blocks, c.paragraph("booklet.measure-before", message.List("marks", texts(c.names.Marks(m.Marks))...)))
		}
		form := drawing.Form(c.plan, m, c.room.Width, c.speech, func(r plan.Reading) string { return table.Expected(r, c.speech) })
		blocks = append(blocks, typeset.Figure{Drawing: form, Address: string(m.Address)})
		c.add(typeset.Together{Blocks: blocks})
	}
	c.text("booklet.measures-air")
}

// findings lists what the checks found, errors first, then what is not known;
// passes are counted, and what there was nothing to judge of is named.
func (c *composer) findings() {
	c.heading(1, "booklet.findings", "findings", true)
	passed := 0
	var idle []message.Arg
	for _, f := range c.plan.Findings {
		switch {
		case f.Right():
			passed++
		case f.Idle != "":
			idle = append(idle, message.Word("", f.Idle))
		}
	}
	c.text("booklet.passed", message.Count("checks", passed))
	if len(idle) > 0 {
		c.text("booklet.idle", message.Count("checks", len(idle)), message.List("what", idle...))
	}
	for _, word := range []string{"status.fail", "status.error", "status.unknown", "status.note"} {
		var entries []typeset.Entry
		for _, f := range c.plan.Findings {
			if f.Word() == word {
				entries = append(entries, typeset.Entry{Label: signs[f.Status], Blocks: c.grounds(f), Together: true})
			}
		}
		if len(entries) > 0 {
			c.add(heading(2, c.say(word), "", false), typeset.List{Entries: entries})
		}
	}
	if len(c.plan.Clearances) > 0 {
		c.heading(2, "booklet.seasons", "seasons", false)
		c.text("booklet.seasons-intro")
		c.table(table.Seasons(c.plan, c.speech))
	}
	c.estimates()
	c.heading(2, "booklet.not-known", "not-known", false)
	c.text("booklet.not-known-text")
}

// estimates prints what damp, dry air and load do to the piece.
func (c *composer) estimates() {
	said := false
	for i, t := range []table.Table{table.Wood(c.plan, c.speech), table.Load(c.plan, c.speech, true)} {
		if len(t.Rows) == 0 {
			continue
		}
		key := []string{"wood", "load"}[i]
		c.heading(2, "table."+key, key, false)
		if !said {
			c.text("booklet.wood-intro")
		}
		said = true
		c.table(t)
	}
}

// signs are those of a finding's status; never by colour alone.
var signs = map[plan.Status]string{plan.Fail: "▲", plan.Errored: "■", plan.Unknown: "○"}

// grounds sets a finding, and small under it its figures and where they come from.
func (c *composer) grounds(f plan.Finding) []typeset.Block {
	out := []typeset.Block{typeset.Paragraph{Spans: c.finding(f)}}
	for _, small := range []string{c.names.Figures(f), c.names.Grounds(f)} {
		if small != "" {
			out = append(out, typeset.Paragraph{Manner: c.fine(), Spans: []typeset.Span{{Colour: page.InkSoft, Text: small}}})
		}
	}
	return out
}

func (c *composer) finding(f plan.Finding) []typeset.Span {
	text := c.names.Phrase(f.Text)
	marks := strings.Join(c.names.Marks(f.Marks), " ")
	if marks == "" || strings.Contains(text, marks) {
		return typeset.Plain(text)
	}
	return append(typeset.Strong(c.speech.Own(marks)+"  "), typeset.Plain(text)...)
}

// handOver sets what goes with the finished piece, and the colophon.
func (c *composer) handOver() {
	c.heading(1, "booklet.hand-over", "hand-over", false)
	c.text("booklet.care")
	c.text("booklet.keep")
	if slices.ContainsFunc(c.plan.Piece.Groups, func(g piece.Group) bool { return g.Inside != "" }) {
		c.text("booklet.limits")
	}
	name, licence := faceAndLicence()
	c.add(typeset.Space{Height: 4}, typeset.Paragraph{Manner: c.fine(), Spans: []typeset.Span{{Colour: page.InkSoft, Text: c.say("booklet.colophon",
		message.Text("face", name), message.Text("licence", licence), message.Text("revision", c.options.Revision))}}})
}

// faceAndLicence reads whose the face is, and the name of its licence, from the
// licence text that is embedded with the faces.
func faceAndLicence() (face, licence string) {
	for line := range strings.Lines(font.Licence) {
		line = strings.TrimSpace(line)
		if face == "" && strings.HasPrefix(line, "Copyright") {
			face, _, _ = strings.Cut(line, " (")
		}
		if _, name, ok := strings.Cut(line, "licensed under the "); ok && licence == "" {
			licence = strings.TrimSuffix(name, ".")
		}
	}
	return face, licence
}
