package cli

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"scantling"
	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/evaluate"
	"scantling/internal/message"
)

// inputsFlag adds the flag that sets inputs for one run.
func inputsFlag(c *cobra.Command, into *map[string]string) {
	c.Flags().Var(&settings{into}, "set", `set an input for this run only: --set drawers=4 --set "timber=black walnut"`)
}

// settings collects --set NAME=VALUE. Words and lengths with a unit are put into
// quotation marks, as they would stand in a document; numbers, yes and no are
// document text already.
type settings struct{ into *map[string]string }

// Set implements pflag.Value.
func (s *settings) Set(text string) error {
	name, value, ok := strings.Cut(text, "=")
	name, value = strings.TrimSpace(name), strings.TrimSpace(value)
	if !ok || name == "" || value == "" {
		return complain("cli.set-form", message.Text("text", text))
	}
	if _, err := strconv.ParseFloat(value, 64); err != nil && value[0] != '"' && value != "true" && value != "false" {
		value = strconv.Quote(value)
	}
	if *s.into == nil {
		*s.into = map[string]string{}
	}
	(*s.into)[name] = value
	return nil
}

// String implements pflag.Value.
func (s *settings) String() string {
	if s.into == nil {
		return ""
	}
	var out []string
	for _, k := range slices.Sorted(maps.Keys(*s.into)) {
		out = append(out, k+"="+(*s.into)[k])
	}
	return strings.Join(out, " ")
}

// Type implements pflag.Value.
func (s *settings) Type() string { return "NAME=VALUE" }

// settingsTrouble returns what is wrong with the first input that was set for
// this run: there is none of that name, or the document does not take the value.
// That is the command's fault, not the document's.
func settingsTrouble(r *scantling.Result, inputs map[string]string) error {
	say := r.Words()
	for _, name := range slices.Sorted(maps.Keys(inputs)) {
		for _, d := range r.Plan.Diagnostics {
			if d.Severity != diag.Error || !speaksOf(r.Document, d, name) {
				continue
			}
			set := message.Text("set", name+"="+inputs[name])
			if d.Code != evaluate.CodeInputUnknown {
				return complain("cli.set-refused", set, message.Text("why", say.Say(d.Text)))
			}
			known := inputNames(r.Document)
			e := complain("cli.set-unknown", set, message.Text("name", name), texts("inputs", known))
			e.near = document.Nearest(name, known)
			return e
		}
	}
	return nil
}

// speaksOf reports whether a diagnostic is about the value of an input: it stands
// where the document states that value, or there is no such input.
func speaksOf(f *document.File, d diag.Diagnostic, name string) bool {
	if b := f.Input(name); b != nil {
		given := b.Given()
		return given != nil && d.Where == given.Value.Place()
	}
	of, _ := d.Text.Arg("name")
	return d.Code == evaluate.CodeInputUnknown && of.S == name
}

// inputNames lists the inputs that a document declares, in its own order.
func inputNames(f *document.File) []string {
	var out []string
	for _, b := range f.Of("input") {
		out = append(out, b.Label())
	}
	return out
}
