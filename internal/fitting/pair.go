package fitting

import (
	"scantling/internal/hardware"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

func (b *bench) screw() (hardware.Screw, bool) {
	s, err := hardware.FindScrew(b.Fitting.Screw, unit.Metre)
	return s, err == nil && b.Fitting.Screws > 0
}

// facing returns how far With's side lies before On's, and the figure.
func (b *bench) facing() piece.Figure {
	here, there := face(b.On, b.Side), face(b.With, b.Side.Opposite())
	if _, sign := b.Side.Axis(); sign < 0 {
		return b.Ledger.Less(b.Name+".space", here, there)
	}
	return b.Ledger.Less(b.Name+".space", there, here)
}

// slide fills the space between On and With with the two members of a slide,
// screwed to both; the space must be what the slide needs.
func (b *bench) slide() {
	if !b.needs() {
		return
	}
	f := b.Fitting
	thick := b.size("thickness", f.Thickness)
	if space := b.facing(); space.Nm != thick.Nm {
		b.fail(CodePlace, "fitting.slide-space", message.Address("with", b.With.Address), message.Length("is", space.Nm), message.Length("want", thick.Nm))
		return
	}
	at := b.box(b.size("length", f.Length), b.size("width", f.Width), thick)
	b.body("slide", at)
	member := b.size("member", f.Thickness/8) // the sheet that a screw's head lies in
	b.screws(b.On, b.Side, at[b.Runs], b.middle(b.On), f.Screws, member, b.none(), b.WoodOn)
	b.screws(b.With, b.Side.Opposite(), at[b.Runs], b.middle(b.On), f.Screws, member, b.none(), b.WoodWith)
}

// catch lays a catch: a barrel let into On's side alone, or a block on On's side
// that reaches to With, and its plate let in flush opposite.
func (b *bench) catch() {
	f := b.Fitting
	if f.Depth > 0 {
		side, _ := b.Side.Axis()
		d, deep := b.size("diameter", f.Diameter), b.size("depth", f.Depth)
		at := b.box(d, d, deep)
		at[side] = b.from(face(b.On, b.Side), deep, b.Side.Opposite())
		b.drum("barrel", at, side)
		spot := [3]piece.Figure{}
		spot[b.Runs], spot[b.across()] = b.along(b.On), b.middle(b.On)
		b.bore(b.On, b.Side, spot, d, deep, 1)
		return
	}
	if !b.needs() {
		return
	}
	way, ok := b.wayTo(b.With)
	if !ok {
		return
	}
	out, _ := way.Axis()
	side, _ := b.Side.Axis()
	stop := face(b.With, way.Opposite())
	at := [3]piece.Extent{}
	at[b.Runs] = b.about(b.along(b.On), b.size("length", f.Length))
	at[out] = b.from(stop, b.size("width", f.Width), way.Opposite())
	thick := b.size("thickness", f.Thickness)
	at[side] = b.from(face(b.On, b.Side), thick, b.Side)
	b.body("catch", at)
	l, name := b.Ledger, b.Name+".catch"
	b.screws(b.On, b.Side, at[b.Runs], l.Half(name, l.Sum(name, at[out].Low, at[out].High)), f.Screws, b.size("flange", f.Thickness/5), b.none(), b.WoodOn)
	plate := [3]piece.Extent{}
	thin := b.size("plate", f.Plate)
	plate[b.Runs] = b.about(b.along(b.On), b.size("plate-length", f.PlateLength))
	plate[side] = b.about(l.Half(name, l.Sum(name, at[side].Low, at[side].High)), b.size("plate-width", f.PlateWidth))
	plate[out] = b.from(stop, thin, way)
	b.recess(b.With, way.Opposite(), plate, piece.Recess)
	b.body("plate", plate)
	b.screws(b.With, way.Opposite(), plate[b.Runs], l.Half(name, l.Sum(name, plate[side].Low, plate[side].High)), 1, thin, thin, b.WoodWith)
}

// wayTo is the way from the fitting to another part, across the runs: With must lie
// wholly before On's edge there.
func (b *bench) wayTo(p *piece.Part) (piece.Direction, bool) {
	a := b.across()
	on, with := b.On.Extent[a], p.Extent[a]
	switch {
	case with.Low.Nm >= on.High.Nm:
		return piece.Toward(a, 1), true
	case with.High.Nm <= on.Low.Nm:
		return piece.Toward(a, -1), true
	}
	b.fail(CodePlace, "fitting.not-beside", message.Address("with", p.Address))
	return "", false
}

// room that a button's slot has beyond its tongue: at its end, and along on either
// side (common practice, no source).
const (
	buttonDeep  = 2 * unit.Millimetre
	buttonAlong = 5 * unit.Millimetre
)

// button lays a table button against With, below On: its tongue in a slot of With
// that leaves the top free to move, one screw up into On.
func (b *bench) button() {
	if !b.needs() {
		return
	}
	f := b.Fitting
	way, ok := b.beside()
	if !ok {
		return
	}
	out, _ := way.Axis()
	side, _ := b.Side.Axis()
	l, name := b.Ledger, b.Name+".button"
	wall := face(b.With, way.Opposite())
	wide := b.about(b.along(b.With), b.size("width", f.Width))
	under := face(b.On, b.Side)
	thick, tongue := b.size("thickness", f.Thickness), b.size("tongue", f.Plate)
	block := [3]piece.Extent{}
	block[b.Runs], block[side] = wide, b.from(under, thick, b.Side)
	block[out] = b.from(wall, l.Less(name, b.size("length", f.Length), b.size("tongue-length", f.Depth)), way.Opposite())
	b.body("button", block)
	// The tongue's upper face lies as far below the top as the button is thicker, less
	// what pulls it tight.
	lip := l.Less(name, thick, tongue)
	low := l.Sum(name, under, lip)
	if _, sign := b.Side.Axis(); sign < 0 {
		low = l.Less(name, under, lip)
	}
	slip := block
	slip[side] = b.from(low, tongue, b.Side)
	slip[out] = b.from(wall, b.size("tongue-length", f.Depth), way)
	b.body("tongue", slip)
	slot := slip
	room := b.size("play", buttonAlong)
	slot[b.Runs] = piece.Extent{Low: l.Less(name, wide.Low, room), High: l.Sum(name, wide.High, room)}
	slot[out] = b.from(wall, l.Sum(name, b.size("tongue-length", f.Depth), b.size("play", buttonDeep)), way)
	b.recess(b.With, way.Opposite(), slot, piece.Mortise)
	mid := l.Half(name, l.Sum(name, block[out].Low, block[out].High))
	b.screws(b.On, b.Side, wide, mid, f.Screws, thick, b.none(), b.WoodOn)
}

// beside is the way from a button to the rail that it hooks into: the runs and the
// side leave one axis; the button stands on the rail's side towards the middle of
// On.
func (b *bench) beside() (piece.Direction, bool) {
	a := b.across()
	on, rail := b.On.Extent[a], b.With.Extent[a]
	if rail.Low.Nm+rail.High.Nm > on.Low.Nm+on.High.Nm {
		return piece.Toward(a, 1), true
	}
	return piece.Toward(a, -1), true
}
