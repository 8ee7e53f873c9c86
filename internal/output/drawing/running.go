package drawing

import (
	"math"

	"scantling/internal/page"
)

// Sizes of running dimensions on paper, in millimetres.
const (
	runningLine  = 5.0 // from the outline to the line
	runningJog   = 2.2 // from the line to where figures begin
	runningPitch = 3.5 // least distance of figures
	ringRadius   = 0.9 // of the ring at the reference
)

// running is a row of running dimensions: one line, from a ring at the reference
// to a figure at every place, each measured from the reference (superimposed
// running dimensioning, ISO 129-1, from memory). The maker hooks the rule on the
// reference once and marks them all.
type running struct {
	// across is the paper coordinate of the outline and line that of the row;
	// vertical rows measure up and down.
	vertical     bool
	across, line float64
	zero         float64
	stops        []runningStop
}

type runningStop struct {
	at            float64
	text, address string
}

// runningRoom returns how far from the outline a row with those figures reaches.
func runningRoom(texts []string) float64 {
	if len(texts) == 0 {
		return 0
	}
	widest := 0.0
	for _, t := range texts {
		widest = max(widest, textWidth(t))
	}
	return runningLine + runningJog + 0.8 + widest
}

// point returns the paper point at a place along the row and a coordinate across.
func (r running) point(along, across float64) page.Point {
	if r.vertical {
		return page.Point{X: across, Y: along}
	}
	return page.Point{X: along, Y: across}
}

// places returns where the figures stand along the row.
func (r running) places() []float64 {
	wanted := make([]float64, len(r.stops))
	for i, s := range r.stops {
		wanted[i] = s.at
	}
	pitch := runningPitch
	for _, s := range r.stops {
		pitch = max(pitch, figureSize(s.text)*1.12)
	}
	return spread(wanted, pitch)
}

func (r running) draw(to *page.Drawing) {
	if len(r.stops) == 0 {
		return
	}
	far := r.zero
	for _, s := range r.stops {
		if math.Abs(s.at-r.zero) > math.Abs(far-r.zero) {
			far = s.at
		}
	}
	ring := r.point(r.zero, r.line)
	from := r.zero + math.Copysign(ringRadius, far-r.zero)
	to.Add("", page.Stroke{Path: page.Circle(ring, ringRadius), Width: page.Thin, Colour: page.Ink})
	to.Add("", page.Stroke{Path: page.Line(r.point(from, r.line), r.point(far, r.line)), Width: page.Thin, Colour: page.Ink})
	r.extend(to, r.zero, r.line+ringRadius, "")
	for i, place := range r.places() {
		r.stop(to, r.stops[i], place)
	}
}

// extend draws the extension line at a place from the outline outwards.
func (r running) extend(to *page.Drawing, at, end float64, address string) {
	start := r.across - lineGap
	if start <= end {
		return
	}
	to.Add(address, page.Stroke{Path: page.Line(r.point(at, start), r.point(at, end)), Width: page.W018, Colour: page.InkSoft})
}

// stop draws one place: extension line, a dot on the row, a line to the figure.
func (r running) stop(to *page.Drawing, s runningStop, place float64) {
	r.extend(to, s.at, r.line, s.address)
	out := r.line - runningJog
	to.Add(s.address, page.Fill{Path: page.Circle(r.point(s.at, r.line), 0.55), Colour: page.Ink})
	to.Add(s.address, page.Stroke{Path: page.Line(r.point(s.at, r.line), r.point(place, out)), Width: page.W018, Colour: page.Ink})
	size := figureSize(s.text)
	drop := float64(size * capHalf)
	t := page.Text{Size: size, String: s.text, Colour: page.Ink, Align: page.End, At: page.Point{X: out - 0.8, Y: place + drop}}
	if !r.vertical {
		t.Align, t.Turn, t.At = page.Start, -90, page.Point{X: place + drop, Y: out - 0.8}
	}
	to.Add(s.address, t)
}

// capHalf is half the height of figures, in em.
const capHalf = 0.34

// spread moves places apart until no two are nearer than pitch, each as little
// as can be (the least sum of squares, by pooling neighbours); the order stays.
// Places must rise.
func spread(places []float64, pitch float64) []float64 {
	type pool struct {
		sum float64
		n   int
	}
	var pools []pool
	for i, p := range places {
		pools = append(pools, pool{p - float64(float64(i)*pitch), 1})
		for k := len(pools) - 1; k > 0 && pools[k-1].sum*float64(pools[k].n) > pools[k].sum*float64(pools[k-1].n); k-- {
			pools[k-1] = pool{pools[k-1].sum + pools[k].sum, pools[k-1].n + pools[k].n}
			pools = pools[:k]
		}
	}
	out := make([]float64, 0, len(places))
	for _, p := range pools {
		for range p.n {
			out = append(out, p.sum/float64(p.n)+float64(float64(len(out))*pitch))
		}
	}
	return out
}
