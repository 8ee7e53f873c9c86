package cli

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"

	"scantling"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/words"
	"scantling/internal/world"
)

// mostNotices is how many notices are printed unless all are asked for.
const mostNotices = 40

// notice is a diagnostic or a finding as it is printed.
type notice struct {
	severity diag.Severity
	unknown  bool
	where    diag.Place
	head     string
	text     message.Message
	code     diag.Code
	related  []diag.Related
	remedies []diag.Remedy
}

// rank orders notices for reading: what must be mended first, what is only worth
// knowing last.
func (n notice) rank() int {
	switch {
	case n.severity == diag.Error && !n.unknown:
		return 0
	case n.severity == diag.Warning && !n.unknown:
		return 1
	case n.unknown:
		return 2
	}
	return 3
}

// notices gathers what is to be told, in reading order; the plan's own order
// decides between equals.
func notices(p *plan.Plan) []notice {
	var out []notice
	for _, d := range p.Diagnostics {
		out = append(out, notice{
			severity: d.Severity, where: d.Where, head: "severity." + string(d.Severity),
			text: d.Text, code: d.Code, related: d.Related, remedies: d.Remedies,
		})
	}
	for _, f := range p.Findings {
		if f.Status == plan.Pass {
			continue
		}
		out = append(out, notice{
			severity: f.Severity, unknown: f.Status != plan.Fail && f.Status != plan.Errored, where: f.Where, head: f.Word(),
			text: f.Text, code: f.Code, remedies: f.Remedy,
		})
	}
	slices.SortStableFunc(out, func(a, b notice) int {
		return cmp.Or(
			cmp.Compare(a.rank(), b.rank()),
			cmp.Compare(a.where.File, b.where.File),
			cmp.Compare(a.where.Start, b.where.Start),
		)
	})
	return out
}

// reporter prints what is wrong with a plan.
type reporter struct {
	out  io.Writer
	say  *words.Words
	from world.World
	// texts are documents by name, read for the line numbers of edits.
	texts map[string][]byte
}

// report prints notices, errors first, and sums them up.
func report(out io.Writer, r *scantling.Result, from world.World, all bool) {
	p := reporter{out: out, say: r.Words(), from: from, texts: map[string][]byte{}}
	list := notices(r.Plan)
	for i, n := range list {
		if i == mostNotices && !all {
			fmt.Fprintln(out, p.say.Label("cli.more", message.Count("n", len(list)-i)))
			break
		}
		p.print(n)
	}
	for _, u := range r.Plan.Unplaced {
		fmt.Fprintln(out, p.say.Label("cli.unplaced", message.Text("of", u)))
	}
	fmt.Fprintln(out, p.summary(r.Plan, list))
}

func (p reporter) print(n notice) {
	if n.where.Line > 0 {
		fmt.Fprintf(p.out, "%s:%d:%d: ", n.where.File, n.where.Line, n.where.Column)
	}
	fmt.Fprintf(p.out, "%s %s: %s [%s]\n", sign(n.severity), p.say.Label(n.head), p.say.Say(n.text), n.code)
	for _, rel := range n.related {
		fmt.Fprintf(p.out, "    %s:%d: %s\n", rel.Where.File, rel.Where.Line, p.say.Say(rel.Text))
	}
	for _, rem := range n.remedies {
		fmt.Fprintf(p.out, "    → %s\n", p.say.Say(rem.Text))
		for _, e := range rem.Edits {
			fmt.Fprintf(p.out, "      %s\n", p.edit(e, n.where.File))
		}
	}
}

// mostShown is how many bytes of an edit's old or new text are printed.
const mostShown = 60

// edit writes an edit as "line 12: 14 -> 16".
func (p reporter) edit(e diag.Edit, home string) string {
	var where string
	switch line := p.line(e); {
	case line == 0:
		where = e.File
	case e.File == home:
		where = p.say.Label("sums.line", message.Count("line", line))
	default:
		where = p.say.Label("sums.line-of", message.Text("file", e.File), message.Count("line", line))
	}
	return where + ": " + oneLine(e.Old) + " -> " + oneLine(e.New)
}

// line returns the line at which an edit stands, or 0 where its document cannot
// be read (a built-in recipe).
func (p reporter) line(e diag.Edit) int {
	text, known := p.texts[e.File]
	if !known {
		text, _ = p.from.Read(e.File)
		p.texts[e.File] = text
	}
	if e.Start < 0 || e.Start > len(text) || len(text) == 0 {
		return 0
	}
	return 1 + bytes.Count(text[:e.Start], []byte("\n"))
}

// oneLine shortens a text to one line.
func oneLine(text string) string {
	text = strings.TrimSpace(text)
	if text == "" {
		return "∅"
	}
	short, _, more := strings.Cut(text, "\n")
	if len(short) > mostShown {
		short, more = strings.ToValidUTF8(short[:mostShown], ""), true
	}
	if more {
		short += " …"
	}
	return short
}

// summary counts what was found.
func (p reporter) summary(of *plan.Plan, list []notice) string {
	var n [4]int
	for _, x := range list {
		n[x.rank()]++
	}
	var counts []message.Arg
	for i, key := range []string{"cli.errors", "cli.warnings", "cli.unknowns", "cli.notes"} {
		if n[i] > 0 {
			counts = append(counts, message.Text("", p.say.Label(key, message.Count("n", n[i]))))
		}
	}
	passed, idle := 0, 0
	for _, f := range of.Findings {
		switch {
		case f.Right():
			passed++
		case f.Idle != "":
			idle++
		}
	}
	checks := p.say.Label("cli.passed", message.Count("n", passed))
	if idle > 0 {
		checks += " " + p.say.Label("cli.idle", message.Count("n", idle))
	}
	if of.Diagnostics.HasErrors() {
		checks = p.say.Label("cli.not-checked")
	}
	if len(counts) == 0 {
		return p.say.Label("cli.nothing-found") + " " + checks
	}
	return p.say.Label("cli.found", message.List("list", counts...)) + " " + checks
}

// sign is never the only sign: a word stands beside it.
func sign(s diag.Severity) string {
	switch s {
	case diag.Error:
		return "■"
	case diag.Warning:
		return "▲"
	}
	return "●"
}

// reportJSON prints what is wrong with a plan for machines: all of it, in the
// order of the plan.
func reportJSON(out io.Writer, r *scantling.Result) error {
	enc := json.NewEncoder(out)
	enc.SetIndent("", " ")
	return enc.Encode(struct {
		Diagnostics diag.List      `json:"diagnostics"`
		Findings    []plan.Finding `json:"findings"`
		Unplaced    []string       `json:"unplaced"`
	}{
		append(diag.List{}, r.Plan.Diagnostics...), append([]plan.Finding{}, r.Plan.Findings...), append([]string{}, r.Plan.Unplaced...),
	})
}
