package naming

import (
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/plan"
)

// Phrase says one of the plan's own messages with addresses put into words and
// lists of marks shortened; a mark that has no letter is called a part, so that "1" is
// not read as a count. It is empty for no message.
func (n *Names) Phrase(m message.Message) string {
	if m.IsZero() {
		return ""
	}
	args := slices.Clone(m.Args)
	bare := ""
	for i, a := range args {
		args[i] = n.worded(a)
		if a.Kind == message.KindText && args[i].S != a.S {
			bare = args[i].S
		}
	}
	text := n.speech.Say(message.New(m.Key, args...))
	if bare != "" && strings.HasPrefix(text, bare) {
		return n.capital(text)
	}
	return text
}

// called is a mark as it is called in a sentence.
func (n *Names) called(mark string) string {
	if mark == "" || strings.Trim(mark, "0123456789.") != "" {
		return mark
	}
	return n.say("mark.alone", message.Text("mark", mark))
}

// namesMark reports whether a text of a message is the mark of a part: what the plan
// lists under it, in an argument that is there for marks.
func (n *Names) namesMark(a message.Arg) bool {
	return slices.Contains([]string{"mark", "other", "a", "b"}, a.Name) &&
		slices.ContainsFunc(n.plan.Parts, func(r plan.PartRow) bool { return r.Mark == a.S })
}

func (n *Names) worded(a message.Arg) message.Arg {
	switch {
	case a.Kind == message.KindAddress:
		return message.Text(a.Name, n.Address(address.Address(a.S)))
	case a.Kind == message.KindList && a.Name == "marks":
		var marks []string
		for _, item := range a.List {
			marks = append(marks, item.S)
		}
		var short []message.Arg
		for _, mark := range n.Marks(marks) {
			short = append(short, message.Text("", n.called(mark)))
		}
		return message.List(a.Name, short...)
	case a.Kind == message.KindText && n.namesMark(a):
		return message.Text(a.Name, n.called(a.S))
	case a.Kind == message.KindList:
		list := slices.Clone(a.List)
		for i := range list {
			list[i] = n.worded(list[i])
		}
		a.List = list
	}
	return a
}
