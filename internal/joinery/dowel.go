package joinery

import "scantling/internal/piece"

// dowel bores a row of holes across the meeting of two parts that touch, in line
// in both. Hole k of n lies at the margin plus (k - 1)/(n - 1) of what is left
// between the margins; one hole lies in the middle.
func (w *work) dowel(j *joint) {
	d := j.Dowels
	if d == nil || d.Count < 1 || d.Diameter.Nm <= 0 {
		w.fail(j, noRoom(j, "joint.no-dowels", 0, j.meets.region.size(j.meets.run)))
		return
	}
	if room := j.meets.region.size(j.meets.across); d.Diameter.Nm > room {
		w.fail(j, noRoom(j, "joint.dowel-too-thick", d.Diameter.Nm, room))
		return
	}
	for _, c := range [2]struct {
		p     *piece.Part
		depth piece.Figure
	}{{j.partA, d.InA}, {j.partB, d.InB}} {
		if size := c.p.Extent[j.meets.normal].Size(); c.depth.Nm <= 0 || c.depth.Nm >= size {
			w.fail(j, noRoom(j, "joint.dowel-too-long", c.depth.Nm, size))
			return
		}
	}
	at, ok := w.row(j, j.meets.run, d.Count, d.Margin, d.Diameter)
	if !ok {
		return
	}
	mid := w.middle(j, j.meets.across)
	for _, x := range at {
		spot := [3]piece.Figure{}
		spot[j.meets.run], spot[j.meets.across] = x, mid
		w.bore(j, j.partA, j.meets.entry, spot, d.Diameter, d.InA)
		w.bore(j, j.partB, j.meets.entry.Opposite(), spot, d.Diameter, d.InB)
	}
	w.fasten(j)
}
