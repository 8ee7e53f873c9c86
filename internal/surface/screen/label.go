package screen

import (
	"strings"

	"scantling/internal/message"
	"scantling/internal/words"
)

// labelPrefix begins the keys of the pages' own labels.
const labelPrefix = "app."

// Labels returns the pages' own labels. A place for a figure that only the page
// knows stays in the text as {name}.
func Labels(w *words.Words) map[string]string {
	out := map[string]string{}
	for _, key := range words.Keys() {
		if !strings.HasPrefix(key, labelPrefix) {
			continue
		}
		var args []message.Arg
		for _, f := range w.Missing(message.New(key)) {
			if f.What == words.NoArgument {
				args = append(args, message.Text(f.Name, "{"+f.Name+"}"))
			}
		}
		out[key] = w.Say(message.Message{Key: key, Args: args})
	}
	return out
}
