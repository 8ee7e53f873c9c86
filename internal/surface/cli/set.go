package cli

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
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
		return fmt.Errorf("%q should be NAME=VALUE, as drawers=4", text)
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
