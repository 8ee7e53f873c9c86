package drawing

import (
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Speech puts messages and lengths into the reader's words and units.
type Speech interface {
	Say(message.Message) string
	Length(unit.Length) string
}

// word says a single word of the catalogue.
func word(s Speech, key string, args ...message.Arg) string {
	return s.Say(message.New(key, args...))
}
