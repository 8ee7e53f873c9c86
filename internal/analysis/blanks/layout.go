package blanks

import (
	"fmt"
	"slices"

	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Way is how a panel's width is shared out.
type Way uint8

// The ways.
const (
	// Equal strips, as few as will do.
	Equal Way = iota
	// Full strips, each as wide as a board gives, from the low edge on, and the rest
	// last.
	Full
	// FullHigh is Full from the high edge on: the joints then lie on other lands.
	FullHigh
)

// Layout says how the panels of a mark are shared out into strips. The zero layout
// is what [Derive] does without being told.
type Layout struct {
	Way Way
	// Room is the widest strip when it is glued; 0 is as wide as a board gives.
	Room unit.Length
	// Strips is the least number of strips; 0 is as few as will do.
	Strips int
}

// Sharing is a layout with the widths of the strips that it comes to, from the low
// edge on, as they are glued.
type Sharing struct {
	Layout Layout
	Widths []unit.Length
}

// Panels are the panels of one mark, which are all shared out alike.
type Panels struct {
	Mark, Stock string
	Count       int
	// Sharings are those that differ, equal strips first.
	Sharings []Sharing
}

// leastStrip is the narrowest strip that a layout other than equal strips may have.
// Common practice, no source.
const leastStrip = 40 * unit.Millimetre

// maxSharings bounds how many sharings of a panel are told.
const maxSharings = 7

// Choices returns the panels with the ways in which they may be shared out, in the
// order of the workpieces. Nothing is entered in the ledger.
func Choices(in Input) []Panels {
	in.Ledger, in.Layouts = in.Ledger.Clone(), nil
	d := derive(in)
	var out []Panels
	for _, g := range d.glued {
		p := Panels{Mark: g.row.Mark, Stock: g.stock.ID}
		for _, w := range d.out {
			if w.Kind == plan.PanelPiece && w.Mark == g.row.Mark {
				p.Count++
			}
		}
		p.Sharings = d.sharings(g)
		out = append(out, p)
	}
	return out
}

// glued is a panel that is to be shared out.
type glued struct {
	row   plan.PartRow
	stock Stock
	parts []address.Address
	width ledger.Figure
	// room is the widest strip when it is glued.
	room unit.Length
}

// shared returns the widths of a panel's strips in the layout of its mark, or equal
// ones where that cannot be.
func (d *deriver) shared(g glued) []ledger.Figure {
	if !slices.ContainsFunc(d.glued, func(o glued) bool { return o.row.Mark == g.row.Mark }) {
		d.glued = append(d.glued, g)
	}
	if l := d.Layouts[g.row.Mark]; l != (Layout{}) {
		if widths := d.share(g, l); widths != nil {
			return widths
		}
	}
	return d.share(g, Layout{})
}

// share returns the widths in a layout; nil if it cannot be.
func (d *deriver) share(g glued, l Layout) []ledger.Figure {
	room := g.room
	if l.Room > 0 {
		room = min(room, l.Room)
	}
	if l.Way == Equal {
		return d.strips(g, room, l.Strips)
	}
	return d.full(g, room, l.Way == FullHigh)
}

// sharings returns the ways in which a panel may be shared out: besides equal strips
// those as wide as a board gives; those that leave another blank's width beside them on
// a board, or lie on a narrower board, or two abreast; and one strip more.
func (d *deriver) sharings(g glued) []Sharing {
	var out []Sharing
	add := func(l Layout) {
		figures := d.share(g, l)
		if figures == nil || len(out) == maxSharings {
			return
		}
		s := Sharing{Layout: l}
		for _, f := range figures {
			s.Widths = append(s.Widths, f.Nm)
		}
		narrow := slices.Min(s.Widths) < d.narrowest()
		if len(out) > 0 && (narrow || slices.ContainsFunc(out, s.like)) {
			return
		}
		out = append(out, s)
	}
	add(Layout{})
	if len(out) == 0 {
		return nil
	}
	add(Layout{Way: Full})
	add(Layout{Way: FullHigh})
	for _, room := range d.rooms(g) {
		add(Layout{Room: room.Round(setting, unit.Down)})
	}
	add(Layout{Strips: len(out[0].Widths) + 1})
	return out
}

// like reports whether the strips of two sharings are cut alike.
func (s Sharing) like(other Sharing) bool {
	sorted := func(s Sharing) []unit.Length {
		var out []unit.Length
		for _, w := range s.Widths {
			out = append(out, w.Round(unit.Micrometre, unit.Nearest))
		}
		slices.Sort(out)
		return out
	}
	return slices.Equal(sorted(s), sorted(other))
}

// narrowest is the narrowest strip when it is glued: what the saw may part off, and
// never a sliver.
func (d *deriver) narrowest() unit.Length {
	return max(leastStrip, d.Limits.LeastRip-2*d.Allowances.Strip.Nm)
}

// full returns strips as wide as may be one after another, from the low edge or from
// the high, their joints on lands or clear of cuts, and what is left last; nil if that
// cannot be.
func (d *deriver) full(g glued, room unit.Length, high bool) []ledger.Figure {
	room = room.Round(setting, unit.Down)
	cuts := d.along(g.parts)
	lands := d.lands(g.parts[0], cuts)
	if len(lands) == 0 && len(cuts) == 0 {
		return d.fullFree(g, room)
	}
	edge, end := d.Allowances.Edge.Nm, g.row.Width.Nm
	// Places are reckoned from the edge that is begun at.
	turn := func(at unit.Length) unit.Length {
		if high {
			return end - at
		}
		return at
	}
	var at []ledger.Figure
	for from := -edge; end+edge-from > room; {
		if len(at) == maxStrips {
			return nil
		}
		place, ok := d.place(g, turn, min(from+room, end+edge-d.narrowest()), cuts, lands)
		if !ok || turn(place.Nm)-from < d.narrowest() {
			return nil
		}
		at, from = append(at, place), turn(place.Nm)
	}
	if high {
		slices.Reverse(at)
	}
	return d.between(g.row, g.width, at)
}

// place returns the last place for a joint up to a limit, from the edge that turn
// reckons from.
func (d *deriver) place(g glued, turn func(unit.Length) unit.Length, limit unit.Length, cuts []stretch, lands []ledger.Figure) (ledger.Figure, bool) {
	if len(lands) > 0 {
		var best ledger.Figure
		found := false
		for _, l := range lands {
			if t := turn(l.Nm); t <= limit && (!found || t > turn(best.Nm)) {
				best, found = l, true
			}
		}
		return best, found
	}
	at := limit
	for range len(cuts) + 1 {
		i := slices.IndexFunc(cuts, func(c stretch) bool { return c.holds(turn(at)) })
		if i < 0 {
			return d.Ledger.Leaf("panel."+g.row.Mark+".joint", turn(at), ledger.Choice, chosen), true
		}
		at = min(turn(cuts[i].near.Nm-clearOfCut), turn(cuts[i].far.Nm+clearOfCut))
	}
	return ledger.Figure{}, false
}

// chosen is the source of widths that are chosen with the boards.
const chosen = "chosen together with the boards"

// fullFree is full where nothing is cut: the last strip but one gives way where the
// last would be too narrow.
func (d *deriver) fullFree(g glued, room unit.Length) []ledger.Figure {
	if room <= 0 {
		return nil
	}
	n := int((g.width.Nm + room - 1) / room)
	if n < 2 || n > maxStrips {
		return nil
	}
	name := "panel." + g.row.Mark + ".strip"
	terms, out := []ledger.Figure{g.width}, []ledger.Figure{}
	left := g.width.Nm
	for i := range n - 1 {
		wide := room
		if i == n-2 {
			wide = min(room, left-d.narrowest()).Round(setting, unit.Down)
		}
		if wide < d.narrowest() {
			return nil
		}
		strip := d.Ledger.Leaf(fmt.Sprintf("%s.%d", name, i+1), wide, ledger.Choice, chosen)
		out, terms, left = append(out, strip), append(terms, strip), left-wide
	}
	return append(out, d.Ledger.Less(name+".last", terms...))
}

// rooms lists how wide strips are that leave on a board what another blank of the
// same stock is wide, the two that need most wood first; that lie on narrower boards of
// the same timber; and two of which lie side by side.
func (d *deriver) rooms(g glued) []unit.Length {
	strip, kerf := 2*d.Allowances.Strip.Nm, d.Allowances.Kerf.Nm
	board := g.stock.Width - 2*g.stock.Edge
	var out []unit.Length
	for _, w := range d.beside(g) {
		out = append(out, board-kerf-w-strip)
	}
	var narrower []unit.Length
	for _, s := range d.Stock {
		if s.Width < g.stock.Width && s.Thickness == g.stock.Thickness && s.Planed == g.stock.Planed && d.answers(g.row, s) && d.large(g.row, s) {
			narrower = append(narrower, s.Width-2*s.Edge-strip)
		}
	}
	slices.Sort(narrower)
	slices.Reverse(narrower)
	out = append(out, slices.Compact(narrower)...)
	out = append(out, (board-kerf)/2-strip)
	return slices.DeleteFunc(out, func(r unit.Length) bool { return r < d.narrowest() || r >= g.room })
}

// beside lists the widths of the two blanks of a panel's stock, no panel's strips,
// that take the most length.
func (d *deriver) beside(g glued) []unit.Length {
	var widths []unit.Length
	long := map[unit.Length]unit.Length{}
	for _, w := range d.out {
		if w.Kind == plan.BlankPiece && w.Stock == g.stock.ID {
			if long[w.Width.Nm] == 0 {
				widths = append(widths, w.Width.Nm)
			}
			long[w.Width.Nm] += w.Length.Nm
		}
	}
	slices.SortStableFunc(widths, func(a, b unit.Length) int { return int(max(-1, min(1, long[b]-long[a]))) })
	return widths[:min(2, len(widths))]
}
