package booklet

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/message"
)

// phrase says one of the plan's own messages with addresses put into words and
// lists of marks shortened.
func (c *composer) phrase(m message.Message) string {
	if m.IsZero() {
		return ""
	}
	args := slices.Clone(m.Args)
	for i, a := range args {
		args[i] = c.worded(a)
	}
	return c.speech.Say(message.New(m.Key, args...))
}

func (c *composer) worded(a message.Arg) message.Arg {
	switch {
	case a.Kind == message.KindAddress:
		return message.Text(a.Name, c.names.Address(address.Address(a.S)))
	case a.Kind == message.KindList && a.Name == "marks":
		var marks []string
		for _, item := range a.List {
			marks = append(marks, item.S)
		}
		return message.List(a.Name, texts(c.names.Marks(marks))...)
	case a.Kind == message.KindList:
		list := slices.Clone(a.List)
		for i := range list {
			list[i] = c.worded(list[i])
		}
		a.List = list
	}
	return a
}
