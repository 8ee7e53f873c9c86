package words

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"scantling/internal/message"
)

// Say puts a message into words; nothing to say is an empty text. An unknown key
// shows as ⟦key⟧ and a missing argument as ⟦name⟧.
func (w *Words) Say(m message.Message) string {
	if m.IsZero() {
		return ""
	}
	s := speaker{Words: w}
	return s.say(m.Key, m.Args, 0)
}

// Label puts an entry into words; it is Say of a message made on the spot.
func (w *Words) Label(key string, args ...message.Arg) string {
	return w.Say(message.New(key, args...))
}

// Own returns a text that is no prose of ours - the author's words, a mark, a
// name, an address - as it is to be shown: unchanged, save that the
// pseudo-language marks it as such.
func (w *Words) Own(text string) string {
	if w.pseudo && text != "" {
		return ownOpen + text + ownClose
	}
	return text
}

// Missing returns what is wrong with messages when they are put into words by
// the catalogue: keys without an entry, texts without their arguments.
func (w *Words) Missing(messages ...message.Message) []Fault {
	s := speaker{Words: w}
	for _, m := range messages {
		if !m.IsZero() {
			s.say(m.Key, m.Args, 0)
		}
	}
	return s.faults
}

// Missing returns what is wrong with messages in the English catalogue.
func Missing(messages ...message.Message) []Fault {
	return New(English, British, unitShow, "").Missing(messages...)
}

// speaker puts one message into words and notes what is wrong with it.
type speaker struct {
	*Words
	faults []Fault
}

func (s *speaker) fault(key, name string, what What) string {
	s.faults = append(s.faults, Fault{Key: key, Name: name, What: what})
	if name == "" {
		name = key
	}
	return "⟦" + name + "⟧"
}

func (s *speaker) say(key string, args []message.Arg, depth int) string {
	t, ok := s.entries[key]
	if !ok {
		return s.fault(key, "", NoEntry)
	}
	if depth > maxNest {
		return s.fault(key, "", TooDeep)
	}
	text := s.fill(key, t, args, depth)
	if s.pseudo {
		return textOpen + text + textClose
	}
	return text
}

func (s *speaker) fill(key string, t template, args []message.Arg, depth int) string {
	var b strings.Builder
	for _, p := range t {
		text := p.plain
		switch {
		case p.entry != "":
			text = s.say(p.entry, nil, depth+1)
		case p.forms != nil:
			text = s.choose(key, p, args, depth)
		case p.arg != "":
			arg, ok := find(args, p.arg)
			if !ok {
				text = s.fault(key, p.arg, NoArgument)
				break
			}
			text = s.arg(arg, depth)
		}
		if p.upper {
			text = capital(text)
		}
		b.WriteString(text)
	}
	return b.String()
}

func (s *speaker) choose(key string, p part, args []message.Arg, depth int) string {
	arg, ok := find(args, p.arg)
	if !ok {
		return s.fault(key, p.arg, NoArgument)
	}
	if arg.Kind != message.KindCount && arg.Kind != message.KindMinutes && arg.Kind != message.KindSpeed {
		return s.fault(key, p.arg, NoCount)
	}
	form := min(s.form(arg.N), len(p.forms)-1)
	return s.fill(key, p.forms[form], args, depth+1)
}

func find(args []message.Arg, name string) (message.Arg, bool) {
	i := slices.IndexFunc(args, func(a message.Arg) bool { return a.Name == name })
	if i < 0 {
		return message.Arg{}, false
	}
	return args[i], true
}

// capital writes the first letter as a capital, behind any brackets.
func capital(text string) string {
	for i, r := range text {
		if unicode.IsLetter(r) {
			return text[:i] + string(unicode.ToUpper(r)) + text[i+utf8.RuneLen(r):]
		}
		if !strings.ContainsRune(textOpen+ownOpen, r) {
			break
		}
	}
	return text
}
