package drawing

import (
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Speech puts messages and lengths into the reader's words and units.
type Speech interface {
	Say(message.Message) string
	// Length is a length with its unit, Figure without: a drawing names the unit
	// once.
	Length(unit.Length) string
	Figure(unit.Length) string
	// Own marks what is no prose of ours: a mark, a name.
	Own(text string) string
}

// word says a single word of the catalogue.
func word(s Speech, key string, args ...message.Arg) string {
	return s.Say(message.New(key, args...))
}
