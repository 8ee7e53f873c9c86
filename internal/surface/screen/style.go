package screen

import (
	"fmt"
	"strings"

	"scantling/internal/page"
)

// StyleSheet returns the style sheet that all drawings of a [State] share: the
// classes of package svg, with the colours of the page's look.
func StyleSheet() string {
	var b strings.Builder
	b.WriteString("/* Generated from the drawing package's colours and pens. */\n")
	b.WriteString("svg path { fill: none; }\n")
	b.WriteString("svg .t { font-family: var(--sans); font-variant-numeric: tabular-nums; white-space: pre; }\n")
	b.WriteString("svg .b { font-weight: 700; }\n")
	for _, c := range page.Colours() {
		fmt.Fprintf(&b, "svg .f-%[1]s { fill: var(--%[1]s); }\nsvg .s-%[1]s { stroke: var(--%[1]s); }\n", c.Name())
	}
	for _, w := range page.Widths {
		fmt.Fprintf(&b, "svg .w%d { stroke-width: %g; }\n", w, w.Millimetres())
	}
	return b.String()
}
