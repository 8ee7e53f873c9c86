package cli

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"scantling/internal/document"
	"scantling/internal/message"
)

// wants returns a check of how many words follow a command.
func wants(least, most int) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) >= least && len(args) <= most {
			return nil
		}
		key := "cli.too-few"
		if len(args) > most {
			key = "cli.too-many"
		}
		return complain(key, message.Text("command", c.CommandPath()), message.Text("use", c.UseLine()))
	}
}

// flagTrouble says which flag was probably meant.
func flagTrouble(c *cobra.Command, err error) error {
	var own *usageError
	if errors.As(err, &own) {
		return own // the flag's own words
	}
	text := err.Error()
	e := complain("cli.flag", message.Text("why", text), message.Text("command", c.CommandPath()))
	if name, ok := strings.CutPrefix(text, "unknown flag: --"); ok {
		var known []string
		c.Flags().VisitAll(func(f *pflag.Flag) { known = append(known, f.Name) })
		if near := document.Nearest(name, known); near != "" {
			e.near = "--" + near
		}
	}
	return e
}

// commandTrouble says which command was probably meant.
func commandTrouble(root *cobra.Command, word string) error {
	var known, shown []string
	for _, c := range root.Commands() {
		known = append(known, c.Name())
		if c.IsAvailableCommand() {
			shown = append(shown, c.Name())
		}
	}
	return &usageError{
		key:  "cli.no-command",
		args: []message.Arg{message.Text("word", word), texts("commands", shown)},
		near: document.Nearest(word, known),
	}
}

func texts(name string, items []string) message.Arg {
	var args []message.Arg
	for _, s := range items {
		args = append(args, message.Text("", s))
	}
	return message.List(name, args...)
}
