package words

import (
	"embed"
	"io/fs"
	"maps"
	"slices"
	"strings"
	"sync"

	"golang.org/x/text/feature/plural"
	"golang.org/x/text/language"

	"scantling/internal/unit"
)

// Language names a catalogue.
type Language string

// The languages. Pseudo is English with accents on every letter and brackets
// round every text, for tests.
const (
	English Language = "en"
	Pseudo  Language = "pseudo"
)

// Region chooses among the words that a trade has for one thing.
type Region string

// The regions. Anything else counts as British.
const (
	British  Region = "en-GB"
	American Region = "en-US"
)

// Currency is the code of a currency as in ISO 4217; empty shows bare amounts.
type Currency string

// Words puts messages into words for one reader. It may be used by several
// goroutines.
type Words struct {
	entries  map[string]template
	tag      language.Tag
	show     unit.Show
	currency Currency
	pseudo   bool
}

// New returns the words for a reader. An unknown language is English.
func New(lang Language, region Region, show unit.Show, currency Currency) *Words {
	c := catalogues()
	entries := c.british
	if region == American {
		entries = c.american
	}
	w := &Words{entries: entries, tag: language.English, show: show, currency: currency}
	if lang == Pseudo {
		w.pseudo = true
		w.entries = maps.Clone(entries)
		for key, t := range w.entries {
			w.entries[key] = accented(t)
		}
	}
	return w
}

// Show returns how lengths are shown.
func (w *Words) Show() unit.Show { return w.show }

// Has reports whether the catalogue has an entry of that key.
func (w *Words) Has(key string) bool {
	_, ok := w.entries[key]
	return ok
}

// Keys returns the keys of the English catalogue in order.
func Keys() []string { return slices.Sorted(maps.Keys(catalogues().british)) }

//go:embed catalogue/*.txt
var files embed.FS

// loaded is what the embedded files hold.
type loaded struct {
	british, american map[string]template
	built             []string // prefixes of keys that are put together in code
	faults            []Fault
}

// catalogues reads the embedded files once. What cannot be read is left out,
// which shows when it is used; a test sees to it that there is no such line.
var catalogues = sync.OnceValue(func() *loaded {
	names, err := fs.Glob(files, "catalogue/*.txt")
	if err != nil {
		panic("words: " + err.Error())
	}
	c := &loaded{british: map[string]template{}, american: map[string]template{}}
	for _, name := range names {
		text, err := files.ReadFile(name)
		if err != nil {
			panic("words: " + err.Error())
		}
		into := c.british
		if strings.HasSuffix(name, ".en-US.txt") {
			into = c.american
		}
		file := read(name, string(text))
		c.built = append(c.built, file.built...)
		c.faults = append(c.faults, file.faults...)
		for _, e := range file.entries {
			if _, twice := into[e.key]; twice {
				c.faults = append(c.faults, Fault{Key: e.key, What: Twice, File: name, Line: e.line})
				continue
			}
			into[e.key] = e.text
		}
	}
	for key, text := range c.british {
		if _, own := c.american[key]; !own {
			c.american[key] = text
		}
	}
	return c
})

// form returns which of the forms of a plural a number takes: forms are in the
// order one, other in English.
func (w *Words) form(n int64) int {
	if n < 0 {
		n = -n
	}
	if plural.Cardinal.MatchPlural(w.tag, int(n%1_000_000), 0, 0, 0, 0) == plural.One {
		return 0
	}
	return 1
}
