package operations

import (
	"cmp"
	"slices"

	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// work is a workpiece as it can be offered: the finished part, or the longer
// blank that it is still in.
type work struct {
	size [3]piece.Figure
	long bool
	at   []piece.Figure
}

// trial collects the ways to make one slot and why others were refused.
type trial struct {
	shop    Workshop
	ledger  *ledger.Ledger
	name    string // of ledger entries
	ways    []Way
	refused []message.Message
	fit     []tool.Cutter // room for the cutters that fit
}

// slotWays returns every way to make a slot by machine, the best first, and the
// reasons for those that were refused.
func slotWays(shop Workshop, l *ledger.Ledger, cut piece.Cut, finished, long *work) ([]Way, []message.Message) {
	t := trial{shop: shop, ledger: l, name: string(cut.Address)}
	for _, f := range forms(l, *cut.Slot, finished.size) {
		if cut.Kind == piece.Socket {
			t.sled(f, *finished)
			continue
		}
		for _, w := range []*work{finished, long} {
			if w == nil || (w.long && !f.goesOnLong(*w)) {
				continue
			}
			t.router(f, *w, cut)
			t.plunge(f, *w, cut)
			if !leans(cut.Slot) {
				t.saw(f, *w)
			}
		}
	}
	slices.SortStableFunc(t.ways, func(a, b Way) int {
		return cmp.Or(cmp.Compare(a.Cost(), b.Cost()), rank(a.Long)-rank(b.Long))
	})
	return t.ways, t.refused
}

func rank(b bool) int {
	if b {
		return 1
	}
	return 0
}

// goesOnLong reports whether the form can be cut before the part is cut to
// length: its far end is not there yet, so nothing may lie on it, no stop may bear
// on it, and nothing that runs along the part may be stopped in a blank of several.
func (f form) goesOnLong(w work) bool {
	if axis, _ := f.down.Axis(); axis == piece.AlongLength {
		return false
	}
	return f.run != piece.AlongLength || (f.startOpen && f.endOpen) || len(w.at) == 1 && f.startOpen
}

func (t *trial) refuse(key string, args ...message.Arg) {
	t.refused = append(t.refused, message.New(key, args...))
}

// fits reports whether the machine may be fed with the work at all. What counts
// as its length is the longer side of the face that lies down: a wide short
// board is no small part.
func (t *trial) fits(m tool.Machine, f form, w work) (Guide, bool) {
	down, _ := f.down.Axis()
	run, across := w.size[f.run].Nm, w.size[f.across].Nm
	if down != piece.AlongThickness {
		if limit := t.shop.Rules.Completed().Upright.Value; w.size[down].Nm > limit {
			t.refuse("operations.upright", message.Text("machine", m.Name), message.Length("got", w.size[down].Nm), message.Length("limit", limit))
			return "", false
		}
	}
	longest := max(run, across)
	if down == piece.AlongWidth && f.run == piece.AlongLength { // on edge: the face leans on the fence
		longest = run
	}
	if excess := m.Check(tool.Size{Length: longest}); len(excess) > 0 {
		t.refused = append(t.refused, excess[0].Message())
		return "", false
	}
	if m.Least.Length.Known() && run < m.Least.Length.Value {
		return ByGauge, true
	}
	return ByFence, true
}

// router tries the form at every router table.
func (t *trial) router(f form, w work, cut piece.Cut) {
	for _, m := range t.shop.Of(tool.RouterTable) {
		guide, ok := t.fits(m, f, w)
		if !ok {
			continue
		}
		fences := f.fences(w)
		if len(f.sides(w)) == 0 {
			t.refuse("operations.no-fence-side", message.Text("machine", m.Name))
			continue
		}
		cutter, ok := t.cutterFor(m, f, cut, w)
		if !ok {
			continue
		}
		way := t.offered(m, f, w, guide)
		way.Cutter = cutter
		if way.Raise = !f.startOpen && !f.endOpen; way.Raise && guide == ByGauge {
			t.tooShort(m, f, w)
			continue
		}
		way.Size = t.ledger.Leaf("cutter."+cutter.Name+".diameter", cutter.Diameter, ledger.Bought, "")
		way.Opens = mouthOf(cutter, f.depth.Nm)
		if cutter.Shape == tool.VGroove { // as wide as it stands in the table's surface
			way.Size = t.ledger.Less(t.name+".mouth", f.far, f.near)
			way.Opens = way.Size.Nm
		}
		t.across(&way, fences, m, step(cutter))
		if len(way.Fences) == 0 && f.startOpen != f.endOpen && guide == ByFence { // begin at the stopped end
			way.Raise = true
			t.across(&way, f.sides(w), m, step(cutter))
		}
		per := tool.DepthPerPass(cutter, t.shop.Rules.PassDepth)
		if heights, err := tool.Passes(f.depth.Nm, per.Value); err == nil {
			way.Heights = heights
			t.offer(way)
		}
	}
}

// tooShort refuses a cut that begins inside work which cannot be held between stops.
func (t *trial) tooShort(m tool.Machine, f form, w work) {
	t.refuse("operations.blind-too-short", message.Text("machine", m.Name), message.Length("got", w.size[f.run].Nm), message.Length("limit", m.Least.Length.Value))
}

// offered fills in what the form says.
func (t *trial) offered(m tool.Machine, f form, w work, guide Guide) Way {
	return Way{
		Machine: m.Name, Kind: m.Kind, Guide: guide, Down: f.down, Run: f.run, Across: f.across,
		From: f.from, To: f.to, StartOpen: f.startOpen, EndOpen: f.endOpen,
		Near: f.near, Far: f.far, Depth: f.depth, Long: w.long, Work: w.size, At: w.at,
	}
}

// offer keeps a way that has a side for the fence, once its paths are laid out.
func (t *trial) offer(w Way) {
	if len(w.Fences) > 0 {
		t.ways = append(t.ways, w)
	}
}

// step is how far one path may lie beyond the last: nine tenths of a straight
// cutter, a quarter of a round-nose, whose ridges are sanded away. Common
// practice, no source.
func step(c tool.Cutter) unit.Length {
	if c.Shape == tool.RoundNose {
		return max((c.Diameter/4).Round(unit.Millimetre/10, unit.Down), unit.Millimetre/10)
	}
	return (c.Diameter - c.Diameter/10).Round(unit.Millimetre/10, unit.Down)
}

// A last path that would take less than leastBite is spread over those before it, as
// long as each still lies leastOverlap on the one before. Common practice, no source.
const (
	leastBite    = 500 * unit.Micrometre
	leastOverlap = 200 * unit.Micrometre
)

// paths are how far from the first path the others lie: the last ends the cut. A blade
// that rubs over a tenth of a millimetre burns more than it cuts, so that 2.8 beside a
// kerf of 3 is one further path, and not 2.7 and 2.8.
func paths(shift, size, step unit.Length) ([]unit.Length, error) {
	at, err := tool.Passes(shift, step)
	if n := unit.Length(len(at)); err == nil && n > 1 && at[n-1]-at[n-2] < leastBite {
		if wider := (shift + n - 2) / (n - 1); wider <= size-leastOverlap && step > size/2 {
			return tool.Passes(shift, wider)
		}
	}
	return at, err
}

// across lays out the paths and keeps the fence sides that the fence reaches.
func (t *trial) across(w *Way, fences []piece.Side, m tool.Machine, step unit.Length) {
	w.Fences = nil
	width := w.Far.Nm - w.Near.Nm
	w.Covered = w.Size.Nm > width+unit.Micrometre
	w.Paths = []unit.Length{0}
	if shift := width - w.Size.Nm; shift > unit.Micrometre {
		more, err := paths(shift, w.Size.Nm, max(step, 1))
		if err != nil {
			t.refused = append(t.refused, message.New("operations.too-many-paths", message.Length("width", width)))
			return
		}
		w.Paths = append(w.Paths, more...)
	}
	reach := t.shop.Reach[m.Name]
	for _, f := range fences {
		far := w.Far.Nm
		if _, high := f.Axis(); high {
			far = w.Work[w.Across].Nm - w.Near.Nm
		}
		if n := len(w.At); n > 0 && w.Across == piece.AlongLength {
			far += w.At[n-1].Nm
		}
		if w.Guide == ByFence || w.Guide == ByEdge || w.Kind == tool.RouterTable {
			if reach > 0 && far-w.Size.Nm > reach {
				t.refuse("operations.fence-reach", message.Text("machine", m.Name), message.Length("got", far-w.Size.Nm), message.Length("limit", reach))
				continue
			}
		}
		w.Fences = append(w.Fences, f)
	}
	slices.SortStableFunc(w.Fences, func(a, b piece.Side) int {
		return cmp.Compare(w.distance(a), w.distance(b))
	})
}

// distance is from a fence side to the middle of the cut.
func (w Way) distance(fence piece.Side) unit.Length {
	middle := (w.Near.Nm + w.Far.Nm) / 2
	if _, high := fence.Axis(); high {
		return w.Work[w.Across].Nm - middle
	}
	return middle
}

// opensAtFence reports whether the cut is open along one side of the work, so
// that a wider cutter may be half hidden in the fence. Where parts lie end to end
// in one blank it would reach into the next.
func (f form) opensAtFence(w work) bool {
	if f.across == piece.AlongLength && len(w.at) > 1 {
		return false
	}
	low, high := f.near.Nm <= 0, f.far.Nm >= w.size[f.across].Nm
	return low != high
}

// sides returns the sides that may be against the fence: an open side must be
// (work between fence and cutter is a trapped cut), and work that is not cut to
// length has one good end.
func (f form) sides(w work) []piece.Side {
	low, high := piece.SideOf(f.across, false), piece.SideOf(f.across, true)
	out := []piece.Side{low, high}
	switch {
	case f.near.Nm <= 0 && f.far.Nm < w.size[f.across].Nm:
		out = []piece.Side{low}
	case f.far.Nm >= w.size[f.across].Nm && f.near.Nm > 0:
		out = []piece.Side{high}
	}
	if w.long && f.across == piece.AlongLength {
		out = slices.DeleteFunc(out, func(s piece.Side) bool { return s == high })
	}
	return out
}

// fences returns those of the sides from which the cut can be fed: one that ends
// inside the work is entered from its open end.
func (f form) fences(w work) []piece.Side {
	out := f.sides(w)
	if f.startOpen != f.endOpen {
		need := FenceFor(f.down, piece.SideOf(f.run, f.endOpen))
		out = slices.DeleteFunc(out, func(s piece.Side) bool { return s != need })
	}
	return out
}
