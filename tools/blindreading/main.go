// Command blindreading asks twenty questions that a stranger must be able to
// answer from the booklet alone, and writes the key from the plan's data:
//
//	go run ./tools/blindreading examples/needle-chest needle-chest.piece.hcl questions.txt key.txt
//
// A reader who has only the PDF answers; the score goes into docs/REVIEW.md.
package main

import (
	"context"
	"fmt"
	"os"
	"slices"
	"strings"

	"scantling"
	"scantling/internal/address"
	"scantling/internal/plan"
	"scantling/internal/surface/folder"
	"scantling/internal/unit"
)

func main() {
	if len(os.Args) != 5 {
		fmt.Fprintln(os.Stderr, "usage: blindreading FOLDER DOCUMENT QUESTIONS KEY")
		os.Exit(2)
	}
	if err := run(os.Args[1], os.Args[2], os.Args[3], os.Args[4]); err != nil {
		fmt.Fprintln(os.Stderr, "blindreading:", err)
		os.Exit(1)
	}
}

func run(dir, document, questions, key string) error {
	w, err := folder.Open(dir)
	if err != nil {
		return err
	}
	defer w.Close()
	r, err := scantling.Plan(context.Background(), w, document, scantling.Options{})
	if err != nil {
		return err
	}
	e := examiner{plan: r.Plan, length: r.Words().Length}
	e.ask()
	var q, k strings.Builder
	for i, x := range e.asked {
		fmt.Fprintf(&q, "%d. %s\n", i+1, x.question)
		fmt.Fprintf(&k, "%d. %s\n", i+1, x.answer)
	}
	if err := os.WriteFile(questions, []byte(q.String()), 0o644); err != nil {
		return err
	}
	return os.WriteFile(key, []byte(k.String()), 0o644)
}

type asked struct{ question, answer string }

type examiner struct {
	plan   *plan.Plan
	length func(unit.Length) string
	asked  []asked
}

func (e *examiner) add(question, format string, args ...any) {
	e.asked = append(e.asked, asked{question, fmt.Sprintf(format, args...)})
}

func (e *examiner) row(name string) plan.PartRow {
	i := slices.IndexFunc(e.plan.Parts, func(r plan.PartRow) bool { return r.Name == name })
	return e.plan.Parts[i]
}

// sheet returns the row of that name that is made of sheet.
func (e *examiner) sheet(name string) plan.PartRow {
	i := slices.IndexFunc(e.plan.Parts, func(r plan.PartRow) bool { return r.Name == name && r.Sheet })
	return e.plan.Parts[i]
}

func (e *examiner) ask() {
	front, side, divider, bottom := e.row("front"), e.row("side"), e.row("divider"), e.sheet("bottom")
	e.add("What are the finished length, width and thickness of a drawer front, and how many are there?",
		"%s × %s × %s, %d", e.length(front.Length.Nm), e.length(front.Width.Nm), e.length(front.Thickness.Nm), front.Quantity())
	e.add("What must be measured before the drawer fronts are cut?", "%s", e.measureFor(front.Mark))
	e.add("Which parts wait for the thickness of the case boards?", "%s", strings.Join(e.marksOf("case"), ", "))
	e.add("Which boards and sheets must be bought, how many, and what do they cost in all?", "%s; in all %d.%02d", e.bought(), e.plan.Cost.Total/100, e.plan.Cost.Total%100)
	thing := e.held("6.0 a")
	e.add(`For the channel of the needle "6.0 a": which cutter, how high, and how far is the fence from the cutter's near edge and from its centre?`, "%s", e.channel(thing.Cut))
	e.add(`Which side of that tray lies down and which runs against the fence for that channel?`, "%s", e.sides(thing.Cut))
	big := e.held("10.0 b")
	e.add(`How deep does the needle "10.0 b" lie in its channel and how far does it stand above the tray?`, "%s deep, %s above", e.length(big.Sinks.Nm), e.length(big.Proud.Nm))
	e.add("In which order are the cuts of a tray made: channels, finger hollow, trough for the heads?", "trough and hollow before the channels")
	e.add("How wide and how deep are the housings for the dividers, and how far from the front do they stop?", "%s", e.housing())
	e.add("What is cut out of each divider, and why?", "a notch at the front of each end, because the housings are stopped (%s)", divider.Mark)
	e.add("How many strips is the panel for the case sides glued from, and how wide is each when it is ripped?", "%s", e.strips(side.Mark))
	e.add("How long must a glued-up panel wait before it is worked, and how is it kept?", "24 h, on edge with air on both faces")
	e.add("Which way does the grain run in the drawer bottom, and is it glued?", "front to back (%s); no glue", bottom.Mark)
	e.add("How much clearance is left above a drawer today, and how much is left when it is damp?", "%s", e.clearance())
	e.add("How wide is the opening of drawer 2 as planned, and where is it measured?", "%s", e.opening())
	e.add("Where is the finger scoop in a drawer front: middle, width, depth?", "%s", e.scoop(front))
	e.add("How are the stops held back from the front, and when are they fitted?", "behind the measured front thickness; last, when the drawers run")
	e.add("Which parts are kept on a longer blank or share one, and why?", "%s", e.kept())
	e.add("What holds the corners of the case together?", "%s", e.corner())
	e.add("What are the overall width, depth and height of the chest?", "%s", e.overall())
}

func (e *examiner) measureFor(mark string) string {
	for _, m := range e.plan.Measures {
		if slices.Contains(m.Marks, mark) {
			var what []string
			for _, r := range m.Readings {
				if !slices.Contains(what, r.What) {
					what = append(what, r.What)
				}
			}
			return m.Label + ": " + strings.Join(what, ", ")
		}
	}
	return "nothing"
}

func (e *examiner) marksOf(word string) []string {
	for _, m := range e.plan.Measures {
		if strings.Contains(string(m.Address), word) || strings.Contains(strings.ToLower(m.Label), word) {
			return m.Marks
		}
	}
	return nil
}

func (e *examiner) bought() string {
	var out []string
	for _, b := range e.plan.Buying {
		if b.Get > 0 {
			out = append(out, fmt.Sprintf("%d × %s", b.Get, b.Label))
		}
	}
	return strings.Join(out, ", ")
}

func (e *examiner) held(key string) plan.Held {
	i := slices.IndexFunc(e.plan.Held, func(h plan.Held) bool { return h.Thing == key })
	return e.plan.Held[i]
}

// placement finds the card and placement that make a cut.
func (e *examiner) placement(cut address.Address) (plan.Setup, plan.Placement) {
	for _, s := range e.plan.Setups {
		for _, p := range s.Placements {
			if slices.Contains(p.Cuts, cut) {
				return s, p
			}
		}
	}
	return plan.Setup{}, plan.Placement{}
}

func (e *examiner) channel(cut address.Address) string {
	s, p := e.placement(cut)
	var set []string
	for _, list := range [][]plan.Setting{s.Settings, p.Settings} {
		for _, x := range list {
			set = append(set, x.Word+" "+e.length(x.Figure.Nm))
		}
	}
	turned := ""
	if p.Turn {
		turned = " (the same setting cuts two, turned end for end)"
	}
	return s.CutterLabel + "; " + strings.Join(set, ", ") + turned
}

func (e *examiner) sides(cut address.Address) string {
	_, p := e.placement(cut)
	return fmt.Sprintf("%s down, %s against the fence", p.Down, p.Fence)
}

func (e *examiner) housing() string {
	for _, c := range e.plan.Piece.Cuts {
		if c.Slot != nil && c.Kind == "housing" {
			return fmt.Sprintf("%s wide, %s deep, from %s to %s", e.length(c.Slot.Far.Nm-c.Slot.Near.Nm), e.length(c.Slot.Depth.Nm), e.length(c.Slot.From.Nm), e.length(c.Slot.To.Nm))
		}
	}
	return "none"
}

func (e *examiner) strips(mark string) string {
	var out []string
	for _, w := range e.plan.Workpieces {
		if w.Kind == plan.StripPiece && w.Mark == mark {
			out = append(out, e.length(w.Width.Nm))
		}
	}
	return fmt.Sprintf("%d: %s", len(out), strings.Join(out, ", "))
}

func (e *examiner) clearance() string {
	for _, c := range e.plan.Clearances {
		if c.Across == "above" {
			return fmt.Sprintf("%s today, %s when damp (%s)", e.length(c.Leave.Nm), e.length(c.AtWet.Nm), c.Species)
		}
	}
	return "none"
}

func (e *examiner) opening() string {
	for _, m := range e.plan.Measures {
		for _, r := range m.Readings {
			if strings.HasSuffix(string(r.Of), "opening[2]") && r.What == "width front" {
				return e.length(r.Planned.Nm) + ", at the front and at the back"
			}
		}
	}
	return "not measured"
}

func (e *examiner) scoop(front plan.PartRow) string {
	for _, c := range e.plan.Piece.Cuts {
		if c.Dip != nil && c.Part == front.Members[0] {
			return fmt.Sprintf("middle at %s, %s wide, %s deep", e.length(c.Dip.Centre.Nm), e.length(c.Dip.Chord.Nm), e.length(c.Dip.Depth.Nm))
		}
	}
	return "none"
}

func (e *examiner) kept() string {
	var out []string
	for _, w := range e.plan.Workpieces {
		for _, why := range w.Why {
			if (why.Key == "blanks.ganged" || why.Key == "blanks.kept-long") && !slices.Contains(out, w.Mark) {
				out = append(out, w.Mark)
			}
		}
	}
	return strings.Join(out, ", ") + ": shorter than the machines need"
}

func (e *examiner) corner() string {
	for _, j := range e.plan.Piece.Joints {
		if strings.Contains(string(j.Family), "corner") && j.Fasteners != nil {
			return fmt.Sprintf("%s, glued (%s) and %d × %s at each", j.Kind, j.Glue, j.Fasteners.Count, j.Fasteners.Kind)
		}
	}
	return "glue"
}

func (e *examiner) overall() string {
	o := e.plan.Overall()
	return fmt.Sprintf("%s × %s × %s", e.length(o[0]), e.length(o[1]), e.length(o[2]))
}
