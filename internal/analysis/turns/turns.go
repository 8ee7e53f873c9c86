package turns

import (
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/piece"
)

// Event is one turn in the building of the piece: a measure is taken, a group is
// put together, or a part is added to a group that already stands. Exactly one
// field is set.
type Event struct {
	Measure address.Address
	Group   address.Address
	Late    address.Address
}

// Order returns the turns in a valid order: measures as early as they can be
// taken, groups in the order of the document, and parts that wait for a measure
// that cannot be taken until their own group stands as late ones. What can never
// come (measures that wait for each other) is left out.
func Order(p *piece.Piece) []Event {
	b := builder{
		piece: p, taken: map[address.Address]bool{}, stands: map[address.Address]bool{}, in: map[address.Address]bool{},
		members: map[address.Address][]piece.Part{}, partners: map[address.Address][]address.Address{},
	}
	for i := range p.Measures {
		b.partners[p.Measures[i].Address] = p.Partners(&p.Measures[i])
	}
	joined := Joined(p)
	for _, part := range p.Parts {
		if joined[part.Address] {
			b.members[part.Group] = append(b.members[part.Group], part)
		}
	}
	for {
		switch {
		case b.measure(), b.late(), b.assemble():
		default:
			return b.events
		}
	}
}

type builder struct {
	piece  *piece.Piece
	taken  map[address.Address]bool // measures
	stands map[address.Address]bool // groups
	in     map[address.Address]bool // parts that are in their group
	// members are the joined parts of each group.
	members map[address.Address][]piece.Part
	// partners are the parts that a measure is read between, put together dry.
	partners map[address.Address][]address.Address
	events   []Event
}

// measure takes the first measure that can be taken: of boards before those that want
// parts put together dry.
func (b *builder) measure() bool {
	for _, dry := range []bool{false, true} {
		for _, m := range b.piece.Measures {
			if b.taken[m.Address] || len(b.partners[m.Address]) > 0 != dry || !b.canTake(m) {
				continue
			}
			b.taken[m.Address] = true
			b.events = append(b.events, Event{Measure: m.Address})
			return true
		}
	}
	return false
}

// canTake reports whether what is measured is there: the groups of its stage
// stand, or, without a stage, its parts may be cut. Of parts that themselves wait for
// it, those that they go into must be there instead.
func (b *builder) canTake(m piece.Measure) bool {
	if m.Stage != "" {
		found := false
		for _, g := range b.piece.Groups {
			if stageIs(m.Stage, g) {
				if found = true; !b.stands[g.Address] {
					return false
				}
			}
		}
		return found
	}
	for _, p := range b.piece.Parts {
		read := slices.Contains(m.Of, p.Address) && !slices.Contains(p.CutAfter, m.Address) || slices.Contains(b.partners[m.Address], p.Address)
		if read && !b.free(p) {
			return false
		}
	}
	return true
}

// stageIs reports whether a stage names the group: itself, or all of a repeat.
func stageIs(stage address.Address, g piece.Group) bool {
	return stage == g.Address || string(stage) == withoutIndices(g.Address)
}

func withoutIndices(a address.Address) string {
	steps, _ := a.Steps()
	names := make([]string, len(steps))
	for i, s := range steps {
		names[i] = s.Name
	}
	return strings.Join(names, ".")
}

// free reports whether every measure that the part waits for is taken.
func (b *builder) free(p piece.Part) bool {
	return !slices.ContainsFunc(p.CutAfter, func(a address.Address) bool { return !b.taken[a] })
}

// late adds the first free part that joins a group that already stands.
func (b *builder) late() bool {
	for _, g := range b.piece.Groups {
		if !b.stands[g.Address] {
			continue
		}
		for _, p := range b.members[g.Address] {
			if !b.in[p.Address] && b.free(p) {
				b.in[p.Address] = true
				b.events = append(b.events, Event{Late: p.Address})
				return true
			}
		}
	}
	return false
}

// assemble puts the first group together of whose joined parts two are free.
func (b *builder) assemble() bool {
	for _, g := range b.piece.Groups {
		if b.stands[g.Address] {
			continue
		}
		var members []address.Address
		for _, p := range b.members[g.Address] {
			if b.free(p) {
				members = append(members, p.Address)
			}
		}
		if len(members) < 2 {
			continue
		}
		b.stands[g.Address] = true
		for _, m := range members {
			b.in[m] = true
		}
		b.events = append(b.events, Event{Group: g.Address})
		return true
	}
	return false
}

// Joined returns the parts that a joint holds to another part.
func Joined(p *piece.Piece) map[address.Address]bool {
	joined := map[address.Address]bool{}
	for _, j := range p.Joints {
		joined[j.A], joined[j.B] = true, true
	}
	return joined
}

// Late returns the parts that join a group that already stands.
func Late(events []Event) map[address.Address]bool {
	late := map[address.Address]bool{}
	for _, e := range events {
		if e.Late != "" {
			late[e.Late] = true
		}
	}
	return late
}
