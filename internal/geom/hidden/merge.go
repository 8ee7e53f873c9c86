package hidden

import (
	"cmp"
	"math"
	"slices"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
)

// dust is the length in millimetres below which a stroke is dropped and a gap
// closed.
const dust = 2e-3

// class is what strokes must share to be merged.
type class struct {
	hidden, outline bool
	solid           int
	tags            [2]solid.Tag
	// surfs are the surfaces beside a chord of a curve, numbered from 1; nought
	// for an edge between flat faces.
	surfs [2]int32
}

func (c class) compare(o class) int {
	if c.hidden != o.hidden {
		if o.hidden {
			return -1
		}
		return 1
	}
	if k := cmp.Compare(c.solid, o.solid); k != 0 {
		return k
	}
	if c.outline != o.outline {
		if o.outline {
			return -1
		}
		return 1
	}
	if k := cmp.Compare(c.tags[0], o.tags[0]); k != 0 {
		return k
	}
	return cmp.Or(cmp.Compare(c.tags[1], o.tags[1]), cmp.Compare(c.surfs[0], o.surfs[0]), cmp.Compare(c.surfs[1], o.surfs[1]))
}

// stretch is a piece of a line or of an ellipse. The carrier is what the piece
// lies on: angle and distance from the origin for a line; centre, major and
// minor half axis for an ellipse. from and to measure along it, in millimetres
// or in radians.
type stretch struct {
	class
	carrier  [6]float64
	from, to float64
}

type merger struct {
	lines, arcs []stretch
	curves      map[[3]int32]carried
}

type carried struct {
	axes [6]float64
	ok   bool
}

func newMerger() *merger { return &merger{curves: map[[3]int32]carried{}} }

// add takes the stretch of an edge between parameters a and b.
func (m *merger) add(s *scene, e *edge, a, b float64, hid bool) {
	body := s.placed[e.solid].Solid
	_, l := body.FaceNormal(e.left)
	_, r := body.FaceNormal(e.right)
	c := class{hid, e.outline, s.index[e.solid], [2]solid.Tag{min(l, r), max(l, r)}, curved(body, e)}
	p, q := flat(e.p), flat(e.q)
	if !e.outline {
		if cv := m.curve(s, e); cv.ok {
			c.surfs = [2]int32{} // the ellipse says what belongs together
			m.addArc(c, cv.axes, p, q, a, b)
			return
		}
	}
	d := q.Sub(p)
	n := d.Norm()
	angle := math.Atan2(d.Y, d.X)
	if angle < 0 {
		angle += math.Pi
	}
	if angle > math.Pi-1e-6 {
		angle -= math.Pi
	}
	u := polygon.P2{X: math.Cos(angle), Y: math.Sin(angle)}
	// Measured from the line's own points, so that pieces of one line agree.
	x, y := u.Dot(p), u.Dot(q)
	off := u.Cross(p)
	f, t := x+float64(a*(y-x)), x+float64(b*(y-x))
	if n > 0 {
		m.lines = append(m.lines, stretch{c, [6]float64{angle, off}, min(f, t), max(f, t)})
	}
}

// curved names the surfaces beside an edge if one of them is round.
func curved(body *solid.Solid, e *edge) [2]int32 {
	l, a := body.FaceSurface(e.left)
	r, b := body.FaceSurface(e.right)
	if !a && !b {
		return [2]int32{}
	}
	return [2]int32{min(l, r) + 1, max(l, r) + 1}
}

// curve returns the ellipse on paper that the edge is a chord of.
func (m *merger) curve(s *scene, e *edge) carried {
	body := s.placed[e.solid].Solid
	sl, rl := body.FaceSurface(e.left)
	sr, rr := body.FaceSurface(e.right)
	if rl == rr {
		return carried{}
	}
	key := [3]int32{e.solid, sl, sr}
	if c, ok := m.curves[key]; ok {
		return c
	}
	var c carried
	if cv, ok := body.EdgeCurve(e.left, e.right); ok {
		f := s.frames[e.solid]
		p, q := flat(f.DirToWorld(cv.P)), flat(f.DirToWorld(cv.Q))
		c.axes, c.ok = principal(flat(f.ToWorld(cv.Centre)), p, q)
	}
	m.curves[key] = c
	return c
}

// principal turns conjugate half diameters p and q into half axes square to
// one another: tan 2t = 2 p·q / (p² - q²).
func principal(c, p, q polygon.P2) ([6]float64, bool) {
	t := math.Atan2(2*p.Dot(q), p.Dot(p)-q.Dot(q)) / 2
	co, si := math.Cos(t), math.Sin(t)
	major := p.Mul(co).Add(q.Mul(si))
	minor := q.Mul(co).Sub(p.Mul(si))
	if major.Norm() < minor.Norm() {
		major, minor = minor, major
	}
	r, w := major.Norm(), minor.Norm()
	if w < 10*dust {
		return [6]float64{}, false
	}
	if r-w < 1e-6*r {
		major = polygon.P2{X: r}
	}
	if major.X < -1e-9*r || (math.Abs(major.X) <= 1e-9*r && major.Y < 0) {
		major = major.Mul(-1)
	}
	minor = major.Left().Mul(w / r)
	return [6]float64{c.X, c.Y, major.X, major.Y, minor.X, minor.Y}, true
}

// addArc files the arc over part of a chord; one that passes the half turn is
// split there.
func (m *merger) addArc(c class, axes [6]float64, p, q polygon.P2, a, b float64) {
	centre, major, minor := polygon.P2{X: axes[0], Y: axes[1]}, polygon.P2{X: axes[2], Y: axes[3]}, polygon.P2{X: axes[4], Y: axes[5]}
	angle := func(x polygon.P2) float64 {
		d := x.Sub(centre)
		return math.Atan2(d.Dot(minor)/minor.Dot(minor), d.Dot(major)/major.Dot(major))
	}
	t0, t1 := angle(p), angle(q)
	if t1-t0 > math.Pi {
		t1 -= 2 * math.Pi
	} else if t0-t1 > math.Pi {
		t1 += 2 * math.Pi
	}
	f, t := t0+float64(a*(t1-t0)), t0+float64(b*(t1-t0))
	f, t = min(f, t), max(f, t)
	put := func(f, t float64) { m.arcs = append(m.arcs, stretch{c, axes, f, t}) }
	switch {
	case f < -math.Pi:
		put(f+2*math.Pi, math.Pi)
		put(-math.Pi, t)
	case t > math.Pi:
		put(f, math.Pi)
		put(-math.Pi, t-2*math.Pi)
	default:
		put(f, t)
	}
}

// strokes merges and returns everything filed.
func (m *merger) strokes() []Stroke {
	var out []Stroke
	cluster(m.lines, []float64{1e-6, dust}, 0, func(g []stretch) {
		for _, s := range lay(g, dust) {
			u := polygon.P2{X: math.Cos(s.carrier[0]), Y: math.Sin(s.carrier[0])}
			o := u.Left().Mul(s.carrier[1])
			out = append(out, Stroke{
				Kind: Line, From: o.Add(u.Mul(s.from)), To: o.Add(u.Mul(s.to)),
				Hidden: s.hidden, Outline: s.outline, Solid: s.solid, Tags: s.tags, surfs: s.surfs,
			})
		}
	})
	cluster(m.arcs, []float64{dust, dust, dust, dust, dust, dust}, 0, func(g []stretch) {
		c := g[0].carrier
		r := math.Sqrt(float64(c[2]*c[2]) + float64(c[3]*c[3]))
		for _, s := range round(lay(g, dust/r)) {
			st := Stroke{
				Kind: Arc, Centre: polygon.P2{X: c[0], Y: c[1]},
				Major: polygon.P2{X: c[2], Y: c[3]}, Minor: polygon.P2{X: c[4], Y: c[5]},
				Start: s.from, Sweep: s.to - s.from,
				Hidden: s.hidden, Outline: s.outline, Solid: s.solid, Tags: s.tags,
			}
			st.From, st.To = st.At(s.from), st.At(s.to)
			out = append(out, st)
		}
	})
	slices.SortStableFunc(out, func(a, b Stroke) int { return a.class().compare(b.class()) })
	return link(out)
}

func (s *Stroke) class() class { return class{s.Hidden, s.Outline, s.Solid, s.Tags, s.surfs} }

// cluster calls visit with the stretches that share a carrier, to within the
// tolerance of each of its numbers.
func cluster(all []stretch, tol []float64, k int, visit func(g []stretch)) {
	if len(all) == 0 {
		return
	}
	if k == len(tol) {
		visit(all)
		return
	}
	slices.SortStableFunc(all, func(a, b stretch) int { return cmp.Compare(a.carrier[k], b.carrier[k]) })
	from := 0
	for i := 1; i <= len(all); i++ {
		if i == len(all) || all[i].carrier[k]-all[i-1].carrier[k] > tol[k] {
			cluster(all[from:i], tol, k+1, visit)
			from = i
		}
	}
}

// lay merges the stretches of one carrier class by class, visible ones first,
// each class keeping what those before it have not covered.
func lay(g []stretch, gap float64) []stretch {
	slices.SortStableFunc(g, func(a, b stretch) int {
		if c := a.class.compare(b.class); c != 0 {
			return c
		}
		return cmp.Compare(a.from, b.from)
	})
	carrier := g[0].carrier
	var out []stretch
	var covered [][2]float64
	for i := 0; i < len(g); {
		j := i
		var own [][2]float64
		for ; j < len(g) && g[j].class == g[i].class; j++ {
			own = join(own, [2]float64{g[j].from, g[j].to}, gap)
		}
		for _, r := range own {
			for _, rest := range without(r, covered, gap) {
				out = append(out, stretch{g[i].class, carrier, rest[0], rest[1]})
			}
		}
		covered = union(covered, own, gap)
		i = j
	}
	return out
}

// join appends a range to ranges sorted by their start.
func join(list [][2]float64, r [2]float64, gap float64) [][2]float64 {
	if n := len(list); n > 0 && r[0] <= list[n-1][1]+gap {
		list[n-1][1] = max(list[n-1][1], r[1])
		return list
	}
	return append(list, r)
}

// without returns what of r the covered ranges leave, longer than gap.
func without(r [2]float64, covered [][2]float64, gap float64) [][2]float64 {
	var out [][2]float64
	at := r[0]
	for _, c := range covered {
		if c[1] <= at || c[0] >= r[1] {
			continue
		}
		if c[0] > at+gap {
			out = append(out, [2]float64{at, c[0]})
		}
		at = max(at, c[1])
	}
	if r[1] > at+gap {
		out = append(out, [2]float64{at, r[1]})
	}
	return out
}

func union(a, b [][2]float64, gap float64) [][2]float64 {
	all := append(slices.Clone(a), b...)
	slices.SortFunc(all, func(x, y [2]float64) int { return cmp.Compare(x[0], y[0]) })
	var out [][2]float64
	for _, r := range all {
		out = join(out, r, gap)
	}
	return out
}

// round joins stretches of one class that meet at the half turn, where the
// measure of an ellipse starts and ends.
func round(list []stretch) []stretch {
	const end = math.Pi - 1e-6
	for i := 0; i < len(list); i++ {
		if list[i].to < end {
			continue
		}
		for k := range list {
			if k != i && list[k].class == list[i].class && list[k].from < -end {
				list[i].to += list[k].to - list[k].from
				list = slices.Delete(list, k, k+1)
				if k < i {
					i--
				}
				break
			}
		}
	}
	return list
}
