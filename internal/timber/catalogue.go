package timber

import (
	_ "embed" // the tables
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"

	"scantling/internal/figure"
)

//go:embed data/species.csv
var speciesCSV string

//go:embed data/ranges.csv
var rangesCSV string

//go:embed data/sources.csv
var sourcesCSV string

//go:embed data/aliases.csv
var aliasesCSV string

// Catalogue is a set of species with the names that people use for them. It is a
// value: With returns another.
type Catalogue struct {
	species []Species           // by name
	words   [][]string          // of each species' name
	exact   map[string][]int    // normal form of a name, common or botanical, to its species
	aliases map[string][]string // normal form of another name to species' names
}

// index prepares the lookups; it must follow every change of the species.
func (c *Catalogue) index() {
	c.words, c.exact = make([][]string, len(c.species)), make(map[string][]int, 2*len(c.species))
	for i, s := range c.species {
		c.words[i] = tokens(s.Name)
		if botanical := normal(tokens(s.Botanical)); botanical != "" {
			c.exact[botanical] = append(c.exact[botanical], i)
		}
	}
	for i, words := range c.words {
		c.exact[normal(words)] = []int{i}
	}
}

// Default returns the embedded catalogue.
func Default() Catalogue { return loadOnce() }

var loadOnce = sync.OnceValue(func() Catalogue {
	c, err := load()
	if err != nil {
		panic("timber: " + err.Error())
	}
	return c
})

// All returns the species in order of their names.
func (c Catalogue) All() []Species { return slices.Clone(c.species) }

// With returns the catalogue extended by species; one with a known name replaces
// it. Errors as in [Species.Check].
func (c Catalogue) With(more ...Species) (Catalogue, error) {
	out := Catalogue{species: slices.Clone(c.species), aliases: maps.Clone(c.aliases)}
	for _, s := range more {
		if err := s.Check(); err != nil {
			return c, err
		}
		at, found := slices.BinarySearchFunc(out.species, s.Name, byName)
		if found {
			out.species[at] = s
		} else {
			out.species = slices.Insert(out.species, at, s)
		}
	}
	out.index()
	return out, nil
}

func byName(s Species, name string) int { return strings.Compare(s.Name, name) }

func load() (Catalogue, error) {
	sources, err := loadSources()
	if err != nil {
		return Catalogue{}, err
	}
	c := Catalogue{aliases: map[string][]string{}}
	for _, row := range figure.MustTable("species.csv", speciesCSV).Rows() {
		s := speciesOf(row, sources)
		if err := row.Err(); err != nil {
			return Catalogue{}, err
		}
		c.species = append(c.species, s)
	}
	if err := loadRanges(c.species, sources); err != nil {
		return Catalogue{}, err
	}
	for i := range c.species {
		if err := completeMovement(&c.species[i]); err != nil {
			return Catalogue{}, fmt.Errorf("%s: %w", c.species[i].Name, err)
		}
	}
	slices.SortFunc(c.species, func(a, b Species) int { return strings.Compare(a.Name, b.Name) })
	for _, row := range figure.MustTable("aliases.csv", aliasesCSV).Rows() {
		key := normal(tokens(row.Text("alias")))
		c.aliases[key] = append(c.aliases[key], row.Text("name"))
	}
	c.index()
	return c, nil
}

func loadSources() (map[string]figure.Source, error) {
	sources := map[string]figure.Source{}
	for _, row := range figure.MustTable("sources.csv", sourcesCSV).Rows() {
		sources[row.Text("id")] = figure.Source{Title: row.Text("title"), Edition: row.Text("edition"), Clause: row.Text("clause")}
		if err := row.Err(); err != nil {
			return nil, err
		}
	}
	return sources, nil
}

// reader makes sourced figures of one row.
type reader struct {
	row     *figure.Row
	sources map[string]figure.Source
	read    []string // fields that were seen in the source
}

func (r reader) source(field, group string) figure.Source {
	s := r.sources[r.row.Text("source_"+group)]
	s.Key = "timber.species." + field
	s.Status = figure.Memory
	if slices.Contains(r.read, field) {
		s.Status = figure.Read
	}
	return s
}

func number[N ~float64](r reader, field, group string) figure.Of[N] {
	x, ok := r.row.Number(field)
	if !ok {
		return figure.Of[N]{}
	}
	return figure.Exactly(N(x), r.source(field, group))
}

func speciesOf(row *figure.Row, sources map[string]figure.Source) Species {
	r := reader{row, sources, strings.Fields(row.Text("read_fields"))}
	return Species{
		Name: row.Text("name"), Botanical: row.Text("botanical"), Region: row.Text("region"), Kind: Kind(row.Text("wood")),
		Gravity: number[Gravity](r, "sg", "sg"), GravityBasis: GravityBasis(row.Text("sg_basis")),
		ShrinkRadial:     number[Shrinkage](r, "shrink_r", "shrink"),
		ShrinkTangential: number[Shrinkage](r, "shrink_t", "shrink"),
		ShrinkVolume:     number[Shrinkage](r, "shrink_v", "shrink"),
		ShrinkBasis:      ShrinkBasis(row.Text("shrink_basis")),
		Radial:           number[Coefficient](r, "cr", "coefficient"),
		Tangential:       number[Coefficient](r, "ct", "coefficient"),
		CoefficientBasis: CoefficientBasis(row.Text("coefficient_basis")),
		FibreSaturation:  number[Moisture](r, "fsp_pct", "coefficient"),
		MOE:              number[Stiffness](r, "moe_gpa", "strength"),
		MOR:              number[Strength](r, "mor_mpa", "strength"),
		Shear:            number[Strength](r, "shear_mpa", "strength"),
		Hardness:         number[Hardness](r, "hardness_n", "strength"),
	}
}

// loadRanges adds the other figures that sources give for a field.
func loadRanges(all []Species, sources map[string]figure.Source) error {
	for _, row := range figure.MustTable("ranges.csv", rangesCSV).Rows() {
		low, _ := row.Number("low")
		high, _ := row.Number("high")
		row.Status("status")
		if _, ok := sources[row.Text("source")]; !ok {
			return fmt.Errorf("ranges.csv: unknown source %q", row.Text("source"))
		}
		i := slices.IndexFunc(all, func(s Species) bool { return s.Name == row.Text("name") })
		if err := row.Err(); err != nil || i < 0 {
			return fmt.Errorf("ranges.csv: %q: %v", row.Text("name"), err)
		}
		s := &all[i]
		switch row.Text("field") {
		case "moe_gpa":
			s.MOE = widened(s.MOE, Stiffness(low), Stiffness(high))
		case "mor_mpa":
			s.MOR = widened(s.MOR, Strength(low), Strength(high))
		case "hardness_n":
			s.Hardness = widened(s.Hardness, Hardness(low), Hardness(high))
		case "ct":
			s.Tangential = widened(s.Tangential, Coefficient(low), Coefficient(high))
		case "cr":
			s.Radial = widened(s.Radial, Coefficient(low), Coefficient(high))
		default:
			return fmt.Errorf("ranges.csv: unknown field %q", row.Text("field"))
		}
	}
	return nil
}

func widened[N ~float64](f figure.Of[N], low, high N) figure.Of[N] {
	f.Low, f.High = min(f.Low, low), max(f.High, high)
	return f
}

// completeMovement works out coefficients that no table gives, and widens those
// that belong to a group or a twin by what the species' own shrinkage gives.
func completeMovement(s *Species) error {
	if s.ShrinkBasis != ToOvenDry {
		return nil
	}
	for _, side := range []struct {
		c      *figure.Of[Coefficient]
		shrink figure.Of[Shrinkage]
		field  string
	}{{&s.Radial, s.ShrinkRadial, "cr"}, {&s.Tangential, s.ShrinkTangential, "ct"}} {
		if !side.shrink.Known() {
			continue
		}
		own, err := CoefficientOf(side.shrink.Value, s.FibreSaturation.Value)
		if err != nil {
			return err
		}
		switch s.CoefficientBasis {
		case ByShrinkage:
			source := side.shrink.Source
			source.Key = "timber.species." + side.field
			source.Status = figure.Weaker(figure.Derived, source.Status)
			*side.c = figure.Exactly(own, source)
		case ByGroup, ByTwin:
			*side.c = widened(*side.c, own, own)
		}
	}
	return nil
}
