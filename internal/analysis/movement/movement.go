package movement

import (
	"fmt"
	"strings"

	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// Functions returns the pure functions that entries of this package call.
func Functions() ledger.Functions {
	return ledger.Functions{
		"growth to the dampest": swing(timber.Swing.Grows),
		"loss to the driest":    swing(timber.Swing.Shrinks),
	}
}

// swing wraps a side of a season: species, sawing, size, and the moisture
// contents now, dry and wet.
func swing(side func(timber.Swing) unit.Length) func([]unit.Value) (unit.Value, error) {
	return func(args []unit.Value) (unit.Value, error) {
		if len(args) != 6 {
			return unit.Value{}, fmt.Errorf("a season's movement takes 6 values, not %d", len(args))
		}
		species, err := timber.FromValue(args[0])
		if err != nil {
			return unit.Value{}, err
		}
		size, ok := args[2].Length()
		if !ok {
			return unit.Value{}, fmt.Errorf("a season's movement takes a length, not a %s", args[2].Dim())
		}
		season := timber.Season{Now: moisture(args[3]), Dry: moisture(args[4]), Wet: moisture(args[5])}
		m := timber.Material{Species: species, Sawn: timber.Sawn(args[1].Text())}
		s, err := m.Swing(size, season)
		if err != nil {
			return unit.Value{}, err
		}
		return unit.OfLength(side(s)), nil
	}
}

// Sawn returns the way of sawing that a material's own word means.
func Sawn(word string) timber.Sawn {
	switch word {
	case "flat":
		return timber.FlatSawn
	case "quarter":
		return timber.QuarterSawn
	}
	return timber.SawnUnknown
}

// moisture reads a moisture content, given to the hundredth of a percent.
func moisture(v unit.Value) timber.Moisture {
	if n := v.Number(); n != nil {
		f, _ := n.Float64()
		return timber.Moisture(f)
	}
	return 0
}

// Derive returns the clearances of every fit: what moves at the top, from side to
// side and at the back of what is moved, and, behind, what the walls of its space
// do. Plywood, and wood along its grain, does not move; parts of one species and
// size share a line.
func Derive(p *piece.Piece, c timber.Season, l *ledger.Ledger) []plan.Clearance {
	return DeriveIn(timber.Default(), p, c, l)
}

// DeriveIn is Derive with a catalogue of woods.
func DeriveIn(woods timber.Catalogue, p *piece.Piece, c timber.Season, l *ledger.Ledger) []plan.Clearance {
	d := deriver{woods: woods, piece: p, climate: c, ledger: l, materials: map[string]piece.Material{}, spaces: map[address.Address]piece.Space{}}
	for _, m := range p.Materials {
		d.materials[m.Name] = m
	}
	for _, s := range p.Spaces {
		d.spaces[s.Address] = s
	}
	var out []plan.Clearance
	for _, fit := range p.Fits {
		out = append(out, d.fit(fit)...)
	}
	return out
}

type deriver struct {
	woods     timber.Catalogue
	piece     *piece.Piece
	climate   timber.Season
	ledger    *ledger.Ledger
	materials map[string]piece.Material
	spaces    map[address.Address]piece.Space
}

// way is one direction in which a fit has clearance: only parts that reach the
// end of what moves, or both ends, use it up.
type way struct {
	across string
	axis   piece.Axis
	both   bool
	leave  func(piece.Fit) ledger.Figure
}

var ways = []way{
	{"above", piece.Up, false, func(f piece.Fit) ledger.Figure { return f.Above }},
	{"sides", piece.Right, true, func(f piece.Fit) ledger.Figure { return f.Sides }},
	{"behind", piece.Back, true, func(f piece.Fit) ledger.Figure { return f.Behind }},
}

func (d *deriver) fit(f piece.Fit) []plan.Clearance {
	var out []plan.Clearance
	for _, w := range ways {
		low, high := d.ends(f, w.axis)
		seen := map[moving]bool{}
		for _, part := range d.piece.Parts {
			e := part.Extent[w.axis]
			if !f.Moves.Has(part.Address) || e.High.Nm != high || w.both && e.Low.Nm != low {
				continue
			}
			m, size, ok := d.moves(part, w.axis)
			if !ok || seen[moving{m.Species, m.Cut, size.Nm}] {
				continue
			}
			seen[moving{m.Species, m.Cut, size.Nm}] = true
			if c, ok := d.clearance(f, w.across, size, w.leave(f), m, part.Address, false); ok {
				out = append(out, c)
			}
		}
	}
	return append(out, d.walls(f)...)
}

// ends returns how far what moves reaches along an axis.
func (d *deriver) ends(f piece.Fit, a piece.Axis) (low, high unit.Length) {
	first := true
	for _, part := range d.piece.Parts {
		if !f.Moves.Has(part.Address) {
			continue
		}
		e := part.Extent[a]
		if first || e.Low.Nm < low {
			low = e.Low.Nm
		}
		if first || e.High.Nm > high {
			high = e.High.Nm
		}
		first = false
	}
	return low, high
}

// moving is what tells two lines of one way apart.
type moving struct {
	species, cut string
	size         unit.Length
}

// moves returns the material and the size of a part along an axis that runs across
// its grain in its width; false where it does not move there.
func (d *deriver) moves(part piece.Part, a piece.Axis) (piece.Material, ledger.Figure, bool) {
	m := d.materials[part.Material]
	local, _ := part.Frame.LocalOf(a)
	return m, part.Sizes()[local], !m.Sheet && local == piece.AlongWidth
}

// walls returns what the walls of a fit's space do to the clearance behind: they
// shrink over the depth of the space when it is dry, and the back comes nearer.
func (d *deriver) walls(f piece.Fit) []plan.Clearance {
	s, ok := d.spaces[f.Inside]
	if !ok || s.Bounds[2*int(piece.Back)+1] == "" {
		return nil
	}
	var out []plan.Clearance
	seen := map[moving]bool{}
	for _, part := range d.piece.Parts {
		if !bounds(s, part.Address) {
			continue
		}
		m, _, ok := d.moves(part, piece.Back)
		if k := (moving{m.Species, m.Cut, s.Clear[piece.Back].Nm}); ok && !seen[k] {
			seen[k] = true
			if c, ok := d.clearance(f, "behind", s.Clear[piece.Back], f.Behind, m, part.Address, true); ok {
				out = append(out, c)
			}
		}
	}
	return out
}

// bounds reports whether a part is the left or the right wall of a space.
func bounds(s piece.Space, part address.Address) bool {
	for _, face := range s.Bounds[:2] {
		if i := strings.LastIndexByte(face, '.'); i > 0 && face[:i] == string(part) {
			return true
		}
	}
	return false
}

// clearance is what a size does to what is left: what moves takes of it when it
// grows, a wall when it shrinks.
func (d *deriver) clearance(f piece.Fit, across string, size, leave ledger.Figure, m piece.Material, moves address.Address, wall bool) (plan.Clearance, bool) {
	if size.Entry == 0 || leave.Entry == 0 {
		return plan.Clearance{}, false // nobody wrote it down, so nothing can be added to it
	}
	l := d.ledger
	name := string(f.Address) + "." + across + "." + m.Species
	species, err := d.woods.Find(m.Species)
	if err != nil {
		return plan.Clearance{}, false
	}
	given := func(v unit.Value) ledger.ID {
		return l.Given(ledger.Entry{Name: name, Value: v, Origin: ledger.Reference, Source: "Wood Handbook FPL-GTR-190, Table 13-5"})
	}
	args := []ledger.ID{given(species.Value()), given(unit.OfText(string(Sawn(m.Cut)))), size.Entry, d.moisture("now", d.climate.Now), d.moisture("dry", d.climate.Dry), d.moisture("wet", d.climate.Wet)}
	grows, err := l.Call(name+".grows", "growth to the dampest", args...)
	if err != nil {
		return plan.Clearance{}, false
	}
	shrinks, err := l.Call(name+".shrinks", "loss to the driest", args...)
	if err != nil {
		return plan.Clearance{}, false
	}
	out := plan.Clearance{
		Fit: f.Address, Moves: moves, Across: across, Size: size, Species: m.Species, Cut: m.Cut,
		GrowsWet: grows, ShrinksDry: shrinks, Leave: leave,
	}
	if wall {
		out.AtWet, out.AtDry = l.Sum(name+".wet", leave, grows), l.Less(name+".dry", leave, shrinks)
	} else {
		out.AtWet, out.AtDry = l.Less(name+".wet", leave, grows), l.Sum(name+".dry", leave, shrinks)
	}
	return out, true
}

func (d *deriver) moisture(when string, m timber.Moisture) ledger.ID {
	hundredths := unit.OfInt(unit.DimMoisture, int64(float64(float64(m)*100)+0.5))
	n := hundredths.Number()
	n.Quo(n, unit.OfInt(unit.DimUntyped, 100).Number())
	return d.ledger.Given(ledger.Entry{Name: "moisture content " + when, Value: unit.Of(unit.DimMoisture, n), Origin: ledger.Reference,
		Source: "equilibrium moisture content, Wood Handbook FPL-GTR-190, Eq. 4-5"})
}
