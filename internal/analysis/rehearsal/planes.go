package rehearsal

import (
	"math"

	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// Settings of a plane that is sawn off.
const (
	longPoint  = "long point to other end"
	shortPoint = "short point to other end"
	fenceTable = "fence to blade at the table"
	fenceLong  = "fence to long point"
	stopBlade  = "stop to blade"
)

// angleStep is half of the least difference that an angle is printed to, a tenth of
// a degree, and a little for rounding.
const angleStep = 0.0501

// sliceMarks are the figures that mark a plane out.
func sliceMarks(want map[string]unit.Length, s *piece.Slice) {
	off, _ := s.Off.Axis()
	want["at its beginning from "+string(piece.SideOf(off, false))] = s.At[0].Nm
	k := 0
	for a := range piece.Local(3) {
		if a == off {
			continue
		}
		if s.At[k+1].Nm != s.At[0].Nm {
			low := string(piece.SideOf(a, false))
			want["begins from "+low], want["ends from "+low], want["at its end after "+low] = s.From[k].Nm, s.To[k].Nm, s.At[k+1].Nm
		}
		k++
	}
}

// sled compares what a taper sled is set to with the plane.
func (r *rehearsal) sled(c piece.Cut, row plan.PartRow, m made) {
	names, wants := [2]string{"over", "along"}, [2]unit.Length{c.Slice.At[1].Nm - c.Slice.At[0].Nm, c.Slice.To[0].Nm - c.Slice.From[0].Nm}
	for i, want := range wants {
		if a, ok := m.place.Note.Arg(names[i]); ok && !same(a.Nm, want.Abs()) {
			r.fail(CodeCut, "rehearsal.marked-elsewhere", c.Address, message.Text("mark", row.Mark), message.Word("word", "term.runs off"),
				message.Length("is", a.Nm), message.Length("want", want.Abs()))
		}
	}
}

// isLeaning reports whether a placement sets gauge or blade for a plane.
func isLeaning(p plan.Placement) bool {
	_, end := setting(p.Settings, longPoint)
	_, edge := setting(p.Settings, fenceLong)
	return end || edge
}

// leaning carries out a plane as it is printed: which way the work lies, how far
// gauge and blade are turned, where stop or fence stands; what it leaves at the four
// corners must be what the design leaves.
func (r *rehearsal) leaning(row plan.PartRow, c piece.Cut, m made) {
	wrong := func() {
		r.fail(CodeCut, "rehearsal.cannot-lie-so", c.Address, message.Text("mark", row.Mark), message.Text("card", m.card.ID))
	}
	size := state{row.Length.Nm, row.Width.Nm, row.Thickness.Nm}
	off, _ := c.Slice.Off.Axis()
	down, _ := m.place.Down.Axis()
	if off == piece.AlongThickness || down != piece.AlongThickness {
		wrong()
		return
	}
	// across is the axis that the gauge swings over, or along which the fence runs.
	across := piece.Local(1 - int(off))
	end := off == piece.AlongLength
	against := m.place.Fence
	if end {
		if a, _ := m.place.Leads.Axis(); a != across || !handed(m.place.Leads, c.Slice.Off, m.place.Down) || m.place.Fence != c.Slice.Off {
			wrong()
			return
		}
		against = m.place.Leads.Opposite()
	} else if against != c.Slice.Off.Opposite() {
		wrong()
		return
	}
	left := func(i, j int) float64 { return leftAt(c.Slice, size, across, i, j) }
	table, near := 0, 0
	if _, up := m.place.Down.Axis(); up {
		table = 1
	}
	if a, up := against.Axis(); up && a == across {
		near = 1
	}
	r.turned(row, c, m, [3]float64{
		(left(near, table) - left(1-near, table)) / size[across].Millimetres(),
		(left(near, 1-table) - left(near, table)) / size[piece.AlongThickness].Millimetres(),
		size[piece.AlongThickness].Millimetres(),
	})
	long, short := math.Inf(-1), math.Inf(1)
	for i := range 4 {
		long, short = max(long, left(i&1, i>>1)), min(short, left(i&1, i>>1))
	}
	want := map[string]float64{longPoint: long, shortPoint: short}
	if !end {
		want = map[string]float64{fenceLong: long, fenceTable: left(0, table)}
	}
	if _, ok := setting(m.place.Settings, stopBlade); ok && end {
		want[stopBlade] = left(near, table)
		if r.taken(c, across, near, 0, size) && r.taken(c, across, near, 1, size) {
			wrong() // the stop would stand where the other end is not there
		}
	}
	r.stands(row, c, m, want)
}

// leftAt is what a plane leaves at a corner, in millimetres from the opposite side:
// at the low or high limit (0 or 1) of the axis across, i, and of the thickness, j.
func leftAt(s *piece.Slice, size state, across piece.Local, i, j int) float64 {
	at := float64(s.At[0].Nm)
	for k, n := range [2]int{i, j} {
		axis := [2]piece.Local{across, piece.AlongThickness}[k]
		whole := float64(size[axis]) * float64(n)
		at += float64(float64(s.At[k+1].Nm-s.At[0].Nm) / float64(s.To[k].Nm-s.From[k].Nm) * (whole - float64(s.From[k].Nm)))
	}
	off, high := s.Off.Axis()
	if !high {
		at = float64(size[off]) - at
	}
	return at / 1e6
}

// stands compares the settings of a plane with what the design wants.
func (r *rehearsal) stands(row plan.PartRow, c piece.Cut, m made, want map[string]float64) {
	for _, s := range m.place.Settings {
		w, ok := want[s.Word]
		delete(want, s.Word)
		if !ok || !same(unit.FromMillimetres(w), s.Figure.Nm) {
			r.fail(CodeCut, "rehearsal.marked-elsewhere", c.Address, message.Text("mark", row.Mark), message.Word("word", "setting."+s.Word),
				message.Length("is", s.Figure.Nm), message.Length("want", unit.FromMillimetres(w)))
		}
	}
	if len(want) > 0 {
		r.fail(CodeMissing, "rehearsal.mark-missing", c.Address, message.Text("mark", row.Mark), message.Count("figures", len(want)))
	}
}

// turned compares the angles that are printed with those that the plane has: how
// much the edge against the gauge is longer than the other, for each millimetre of
// width, and the upper face than the lower, for each of thickness.
func (r *rehearsal) turned(row plan.PartRow, c piece.Cut, m made, over [3]float64) {
	swing, tilt := over[0], over[1]/math.Sqrt(1+float64(over[0]*over[0]))
	for i, want := range [2]float64{swing, tilt} {
		name, printed := [2]string{"swing", "tilt"}[i], 0.0
		if a, ok := m.place.Note.Arg(name); ok {
			printed = a.X
		}
		if name == "swing" && m.place.Note.Key == "setups.lean.both-leads" {
			printed = -printed
		}
		degrees := math.Atan(want) * 180 / math.Pi
		if math.Abs(printed-degrees) > angleStep {
			r.fail(CodeCut, "rehearsal.angle", c.Address, message.Text("mark", row.Mark), message.Text("card", m.card.ID),
				message.Ratio("is", printed), message.Ratio("want", math.Round(degrees*10)/10))
		}
	}
	through := unit.FromMillimetres(float64(over[2] * math.Sqrt(1+float64(tilt*tilt))))
	for _, e := range r.machine[m.card.Machine].Check(tool.Size{Thickness: through}) {
		r.findings = append(r.findings, plan.Finding{Check: Name, Status: plan.Fail, Code: CodeMachine, Severity: diag.Error, Text: e.Message(), Marks: []string{row.Mark}, Near: []string{m.card.ID}})
	}
}

// taken reports whether another plane took the other end at one of its corners.
func (r *rehearsal) taken(c piece.Cut, across piece.Local, near, table int, size state) bool {
	for _, o := range r.Cuts {
		if o.Slice == nil || o.Part != c.Part || o.Slice.Off != c.Slice.Off.Opposite() {
			continue
		}
		off, _ := o.Slice.Off.Axis()
		if leftAt(o.Slice, size, across, near, table) < size[off].Millimetres()-1e-3 {
			return true
		}
	}
	return false
}
