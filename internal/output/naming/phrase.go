package naming

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/message"
)

// Phrase says one of the plan's own messages with addresses put into words and
// lists of marks shortened. It is empty for no message.
func (n *Names) Phrase(m message.Message) string {
	if m.IsZero() {
		return ""
	}
	args := slices.Clone(m.Args)
	for i, a := range args {
		args[i] = n.worded(a)
	}
	return n.speech.Say(message.New(m.Key, args...))
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
			short = append(short, message.Text("", mark))
		}
		return message.List(a.Name, short...)
	case a.Kind == message.KindList:
		list := slices.Clone(a.List)
		for i := range list {
			list[i] = n.worded(list[i])
		}
		a.List = list
	}
	return a
}
