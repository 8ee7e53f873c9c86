package timber

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"scantling/internal/figure"
	"scantling/internal/message"
)

// maxName bounds a name in bytes; longer ones are unknown.
const maxName = 80

// AmbiguousError is the answer to a name that means more than one wood.
type AmbiguousError struct {
	Name string
	// Candidates are the catalogue's names of the woods meant, sorted.
	Candidates []string
	*figure.Refusal
}

// Unwrap returns the refusal: key "timber.ambiguous-name".
func (e *AmbiguousError) Unwrap() error { return e.Refusal }

// UnknownError is the answer to a name that means no wood of the catalogue.
type UnknownError struct {
	Name string
	// Near are names of the catalogue that share a word or most letters, nearest
	// first, at most five.
	Near []string
	*figure.Refusal
}

// Unwrap returns the refusal: key "timber.unknown-name".
func (e *UnknownError) Unwrap() error { return e.Refusal }

// Find returns the species that the name means: the catalogue's name, the
// botanical name, a trade name, or any set of words that only one wood has
// ("white ash", "American black cherry", "cherry boards" is not enough: two).
// "American" and "European" also choose by region.
//
// Errors: [*AmbiguousError], [*UnknownError].
func (c Catalogue) Find(name string) (Species, error) {
	found := c.candidates(name)
	switch len(found) {
	case 0:
		near := c.near(name)
		return Species{}, &UnknownError{name, near,
			figure.Refuse("timber.unknown-name", message.Text("name", clip(name)), listArg("near", near)).Or("timber.choose-known-name")}
	case 1:
		return found[0], nil
	}
	names := make([]string, len(found))
	for i, s := range found {
		names[i] = s.Name
	}
	return Species{}, &AmbiguousError{name, names,
		figure.Refuse("timber.ambiguous-name", message.Text("name", clip(name)), listArg("candidates", names)).Or("timber.name-one-wood")}
}

func (c Catalogue) candidates(name string) []Species {
	if len(name) > maxName {
		return nil
	}
	words := tokens(name)
	if len(words) == 0 {
		return nil
	}
	key := normal(words)
	if at, ok := c.exact[key]; ok {
		return c.matching(func(i int) bool { return slices.Contains(at, i) })
	}
	if names, ok := c.aliases[key]; ok {
		return c.matching(func(i int) bool { return slices.Contains(names, c.species[i].Name) })
	}
	if found := c.matching(func(i int) bool { return containsAll(c.words[i], words) }); len(found) > 0 {
		return found
	}
	region, rest := regionOf(words)
	if region == "" || len(rest) == 0 {
		return nil
	}
	return c.matching(func(i int) bool { return c.species[i].Region == region && containsAll(c.words[i], rest) })
}

func (c Catalogue) matching(is func(i int) bool) []Species {
	var found []Species
	for i, s := range c.species {
		if is(i) {
			found = append(found, s)
		}
	}
	return found
}

// regionOf takes the word that names a region out of a name.
func regionOf(words []string) (region string, rest []string) {
	for _, w := range words {
		switch w {
		case "american":
			region = "North America"
		case "european", "english":
			region = "Europe"
		case "australian":
			region = "Australia"
		default:
			rest = append(rest, w)
		}
	}
	return region, rest
}

// tokens returns the words of a name in lower case, without the words for its
// being wood.
func tokens(name string) []string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) })
	return slices.DeleteFunc(words, func(w string) bool {
		return w == "board" || w == "boards" || w == "timber" || w == "lumber" || w == "wood" || w == "spp"
	})
}

// normal joins the words of a name as the lookups know it.
func normal(words []string) string { return strings.Join(words, " ") }

func containsAll(have, want []string) bool {
	for _, w := range want {
		if !slices.Contains(have, w) {
			return false
		}
	}
	return true
}

// near returns up to five names that somebody may have meant.
func (c Catalogue) near(name string) []string {
	if len(name) > maxName {
		return nil
	}
	type match struct {
		name string
		far  int
	}
	var matches []match
	for i, s := range c.species {
		hit, sum := false, 0
		for _, w := range tokens(name) {
			best := 4 // a word that is like none of the wood's
			for _, v := range c.words[i] {
				if d := letters(w, v); d <= len(v)/3 {
					hit, best = true, min(best, d)
				}
			}
			sum += best
		}
		if hit {
			matches = append(matches, match{s.Name, sum})
		}
	}
	slices.SortStableFunc(matches, func(a, b match) int { return cmp.Compare(a.far, b.far) })
	var out []string
	for _, m := range matches[:min(5, len(matches))] {
		out = append(out, m.name)
	}
	return out
}

// letters counts the letters to change, add or drop to make b of a.
func letters(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			d := diagonal
			if a[i] != b[j] {
				d++
			}
			diagonal = row[j+1]
			row[j+1] = min(d, row[j]+1, diagonal+1)
		}
	}
	return row[len(b)]
}

func listArg(name string, items []string) message.Arg {
	args := make([]message.Arg, len(items))
	for i, s := range items {
		args[i] = message.Text("", s)
	}
	return message.List(name, args...)
}

func clip(s string) string {
	if len(s) > maxName {
		return strings.ToValidUTF8(s[:maxName], "")
	}
	return s
}
