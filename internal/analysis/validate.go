package analysis

import (
	"errors"
	"fmt"
	"slices"
	"strings"
)

// Validate checks a list of analyses: every one named and documented, of a kind,
// no name twice, what it requires in the list, and no circle. All that is wrong
// is in the error.
func Validate(list []Analysis) error {
	var faults []error
	names := map[string]bool{}
	for i, a := range list {
		if a == nil {
			faults = append(faults, fmt.Errorf("analysis %d is nil", i+1))
			continue
		}
		info := a.Info()
		if info.Name == "" || strings.TrimSpace(info.Name) != info.Name {
			faults = append(faults, fmt.Errorf("analysis %d has no proper name: %q", i+1, info.Name))
		}
		if names[info.Name] {
			faults = append(faults, fmt.Errorf("%q stands twice in the list", info.Name))
		}
		names[info.Name] = true
		if doc := strings.TrimSpace(info.Doc); !strings.HasSuffix(doc, ".") && !strings.HasSuffix(doc, "?") {
			faults = append(faults, fmt.Errorf("%q has no text that ends as a sentence: %q", info.Name, info.Doc))
		}
		if info.Kind != Derive && info.Kind != Decide && info.Kind != Judge {
			faults = append(faults, fmt.Errorf("%q has no kind: %q", info.Name, info.Kind))
		}
		for _, r := range info.Requires {
			if r == nil || !slices.Contains(list, r) {
				faults = append(faults, fmt.Errorf("%q requires %s, which is not in the list", info.Name, nameOf(r)))
			}
		}
	}
	if len(faults) > 0 {
		return errors.Join(faults...)
	}
	_, err := order(list)
	return err
}

func nameOf(a Analysis) string {
	if a == nil {
		return "nothing"
	}
	return fmt.Sprintf("%q", a.Info().Name)
}

// order sorts the list so that everything comes after what it requires, keeping
// the list's order otherwise.
func order(list []Analysis) ([]Analysis, error) {
	const (
		open = iota
		going
		done
	)
	state := map[Analysis]int{}
	var out []Analysis
	var path []string
	var visit func(a Analysis) error
	visit = func(a Analysis) error {
		switch state[a] {
		case done:
			return nil
		case going:
			return fmt.Errorf("analyses require each other in a circle: %s", strings.Join(append(path, a.Info().Name), " → "))
		}
		state[a] = going
		path = append(path, a.Info().Name)
		for _, r := range a.Info().Requires {
			if err := visit(r); err != nil {
				return err
			}
		}
		path = path[:len(path)-1]
		state[a] = done
		out = append(out, a)
		return nil
	}
	for _, a := range list {
		if err := visit(a); err != nil {
			return nil, err
		}
	}
	return out, nil
}
