package naming

import (
	"strings"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// Speech puts messages into words and marks what is the author's own.
type Speech interface {
	Say(message.Message) string
	Own(text string) string
}

// Names knows what the things of one plan are called.
type Names struct {
	plan   *plan.Plan
	speech Speech
	labels map[address.Address]string // the author's labels
	parts  map[address.Address]piece.Part
	rows   map[address.Address]plan.PartRow // by member
	// counts says how many groups share a declaration.
	counts map[address.Address]int
	// families lists, by mark up to the first point, how many rows there are.
	families map[string]int
}

// Of gathers the names of a plan.
func Of(p *plan.Plan, s Speech) *Names {
	n := &Names{
		plan: p, speech: s, labels: map[address.Address]string{}, parts: map[address.Address]piece.Part{},
		rows: map[address.Address]plan.PartRow{}, counts: map[address.Address]int{}, families: map[string]int{},
	}
	for _, g := range p.Piece.Groups {
		n.labels[g.Address] = g.Label
		n.counts[bare(g.Address)]++
	}
	for _, sp := range p.Piece.Spaces {
		n.labels[sp.Address] = sp.Label
	}
	for _, c := range p.Piece.Contents {
		n.labels[c.Address] = c.Label
	}
	for _, part := range p.Piece.Parts {
		n.labels[part.Address] = part.Label
		n.parts[part.Address] = part
	}
	for _, r := range p.Parts {
		n.families[family(r.Mark)]++
		for _, m := range r.Members {
			n.rows[m] = r
		}
	}
	return n
}

// Address says what lies at an address, outermost first: "Drawer 1, tray 2".
func (n *Names) Address(a address.Address) string {
	if label := n.labels[a]; label != "" {
		return n.speech.Own(label)
	}
	steps, err := a.Steps()
	if err != nil || len(steps) == 0 {
		return n.speech.Own(string(a))
	}
	last := steps[len(steps)-1]
	outer := a.Parent()
	own := n.step(last)
	switch hand := n.parts[a].Hand; {
	case hand != "" && last.Name == hand && len(steps) > 1:
		own = n.handed(n.step(steps[len(steps)-2]), hand)
		outer = outer.Parent()
	case len(steps) > 1 && last.Index == 0 && last.Key == "" && last.Name == outer.Last().Name:
		// A part that is its group's only one, "tray[2].tray", is named once.
		return n.Address(outer)
	}
	if outer == "" {
		return n.capital(own)
	}
	return n.say("name.within", message.Text("outer", n.Address(outer)), message.Text("inner", own))
}

// Row names the part of a row in words: "left side".
func (n *Names) Row(r plan.PartRow) string {
	name := r.Label
	if name == "" {
		name = spaced(r.Name)
	}
	if r.Hand != "" {
		return n.handed(n.speech.Own(name), r.Hand)
	}
	return n.speech.Own(name)
}

// Group names the groups that a row's parts belong to, and tells rows of other
// groups apart by the key.
func (n *Names) Group(r plan.PartRow) (key, title string) {
	if len(r.Members) == 0 {
		return "", n.say("name.no-group")
	}
	group := n.parts[r.Members[0]].Group
	if group == "" {
		return "", n.say("name.no-group")
	}
	declared := bare(group)
	count := n.counts[declared]
	if label := n.labels[group]; label != "" && count <= 1 {
		return string(declared), n.speech.Own(label)
	}
	name := n.capital(n.speech.Own(spaced(declared.Last().Name)))
	if count <= 1 {
		return string(declared), name
	}
	return string(declared), n.say("name.many", message.Text("name", name), message.Count("n", count))
}

func (n *Names) step(s address.Step) string {
	name := n.speech.Own(spaced(s.Name))
	switch {
	case s.Index > 0:
		return n.say("name.numbered", message.Text("name", name), message.Count("n", s.Index))
	case s.Key != "":
		return n.speech.Own(s.Key)
	}
	return name
}

func (n *Names) handed(name, hand string) string {
	key := "name.left"
	if hand == "right" {
		key = "name.right"
	}
	return n.say(key, message.Text("name", name))
}

func (n *Names) say(key string, args ...message.Arg) string {
	return n.speech.Say(message.New(key, args...))
}

// capital writes a name at the start of a sentence.
func (n *Names) capital(name string) string {
	return n.say("name.alone", message.Text("name", name))
}

// bare is an address without its numbers: the declaration that repeats share.
func bare(a address.Address) address.Address {
	steps, err := a.Steps()
	if err != nil {
		return a
	}
	for i := range steps {
		steps[i].Index = 0
	}
	return address.Join(steps...)
}

func spaced(name string) string { return strings.ReplaceAll(name, "_", " ") }
