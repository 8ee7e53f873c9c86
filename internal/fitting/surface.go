package fitting

import "scantling/internal/piece"

// box lays a block of the fitting's sizes on the side: its length along the runs,
// its width across, standing off by its thickness.
func (b *bench) box(length, width, thick piece.Figure) [3]piece.Extent {
	side, _ := b.Side.Axis()
	var at [3]piece.Extent
	at[b.Runs] = b.about(b.along(b.On), length)
	at[b.across()] = b.about(b.middle(b.On), width)
	at[side] = b.from(face(b.On, b.Side), thick, b.Side)
	return at
}

// none is a length of nought.
func (b *bench) none() piece.Figure {
	z := b.size("length", b.Fitting.Length)
	return b.Ledger.Less(b.Name, z, z)
}

// knob stands a knob on the side, held by a screw through the part from behind.
func (b *bench) knob() {
	side, _ := b.Side.Axis()
	d := b.size("diameter", b.Fitting.Diameter)
	b.drum("knob", b.box(d, d, b.size("projection", b.Fitting.Projection)), side)
	b.throughHole(b.along(b.On), 1)
}

// pull stands a bow on the side, as wide beyond its two screws as half of it is; they come
// through the part from behind.
func (b *bench) pull() {
	between, width := b.size("length", b.Fitting.Length), b.size("width", b.Fitting.Width)
	at := b.box(b.Ledger.Sum(b.Name+".long", between, width), width, b.size("projection", b.Fitting.Projection))
	b.body("pull", at)
	ends := b.about(b.along(b.On), between)
	b.throughHole(ends.Low, 1)
	b.throughHole(ends.High, 2)
}

// throughHole bores the part for the shank of a screw at a place along the runs.
func (b *bench) throughHole(along piece.Figure, nth int) {
	s, ok := b.screw()
	if !ok {
		return
	}
	spot := [3]piece.Figure{}
	spot[b.Runs], spot[b.across()] = along, b.middle(b.On)
	b.bore(b.On, b.Side, spot, b.size("clearance", s.Holes(b.WoodOn).Clearance.Value), b.none(), nth)
}

// turnButton lays a turn-button on the side, about one screw in its middle.
func (b *bench) turnButton() {
	f := b.Fitting
	thick := b.size("thickness", f.Thickness)
	at := b.box(b.size("length", f.Length), b.size("width", f.Width), thick)
	b.body("button", at)
	b.screws(b.On, b.Side, at[b.Runs], b.middle(b.On), 1, thick, b.none(), b.WoodOn)
}

// runner lays a strip along the side, screwed on along its middle.
func (b *bench) runner() {
	f := b.Fitting
	thick := b.size("thickness", f.Thickness)
	at := b.box(b.size("length", f.Length), b.size("width", f.Width), thick)
	b.body("runner", at)
	b.screws(b.On, b.Side, at[b.Runs], b.middle(b.On), f.Screws, thick, b.none(), b.WoodOn)
}
