package shop

import "scantling/internal/timber"

// State adds a wood to those that the shop knows; one of a known name goes before the
// catalogue's. Errors as in [timber.Species.Check].
func (s *Shop) State(wood timber.Species) error {
	woods, err := s.Woods().With(wood)
	if err != nil {
		return err
	}
	s.Timbers, s.woods = append(s.Timbers, wood), woods
	return nil
}

// Woods returns the catalogue with the woods that the shop states. A nil shop has the
// catalogue.
func (s *Shop) Woods() timber.Catalogue {
	if s == nil || len(s.Timbers) == 0 {
		return timber.Default()
	}
	return s.woods
}

// Wood returns the wood of a name. Errors as in [timber.Catalogue.Find].
func (s *Shop) Wood(name string) (timber.Species, error) { return s.Woods().Find(name) }
