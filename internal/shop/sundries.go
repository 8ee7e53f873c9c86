package shop

import (
	"strings"

	"scantling/internal/sundries"
)

// Glue returns the glue of a name: the shop's own, or the trade's. A shop may be
// nil.
//
// Error: "sundries.unknown-glue".
func (s *Shop) Glue(name string) (sundries.Glue, error) {
	if s != nil {
		for _, g := range s.Glues {
			if strings.EqualFold(g.Name, strings.TrimSpace(name)) {
				return g, nil
			}
		}
	}
	return sundries.FindGlue(name)
}

// Finish returns the finish of a name, as [Shop.Glue].
//
// Error: "sundries.unknown-finish".
func (s *Shop) Finish(name string) (sundries.Finish, error) {
	if s != nil {
		for _, f := range s.Finishes {
			if strings.EqualFold(f.Name, strings.TrimSpace(name)) {
				return f, nil
			}
		}
	}
	return sundries.FindFinish(name)
}
