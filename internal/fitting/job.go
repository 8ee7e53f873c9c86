package fitting

import (
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/hardware"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Job is a fitting to be laid against a part, once or in a row.
type Job struct {
	// Name is the block's, as a word of an address.
	Name    string
	Fitting hardware.Fitting
	Count   int
	// On is the part that it is fixed to and With the other one, if it needs one.
	On, With *piece.Part
	// Side is the way that the side of On looks which it lies against; Toward the
	// way that a hinge's knuckle stands out.
	Side, Toward piece.Direction
	// Runs is the axis that its length lies along; not that of Side.
	Runs piece.Axis
	// Margin is from either end of the side to the middle of the first and the last
	// of several, along the runs; of one alone, from the low end, or nil for the
	// middle. Centre is its middle across, from the low end, or nil for the middle of
	// the side.
	Margin, Centre *piece.Figure
	// WoodOn and WoodWith are for the lead holes of screws.
	WoodOn, WoodWith hardware.Wood
	Ledger           *ledger.Ledger
	Where            diag.Place
}

// Result is what a job comes to.
type Result struct {
	Bodies []piece.Body
	Cuts   []piece.Cut
}

// Fault is what is wrong with a job: a code, and the key and arguments of its text.
type Fault struct {
	Code diag.Code
	Text message.Message
}

// MaxCount bounds the fittings of one job.
const MaxCount = 100

// Lay works a job out. A fault is nil where it can be fitted.
func Lay(j Job) (Result, *Fault) {
	b := bench{Job: j}
	if j.On.Tilt != nil || j.With != nil && j.With.Tilt != nil {
		b.fail(CodeTilted, "fitting.tilted", message.Address("part", j.On.Address))
		return Result{}, b.fault
	}
	b.lay()
	if b.fault != nil {
		return Result{}, b.fault
	}
	return b.out, nil
}

// bench is a job in hand.
type bench struct {
	Job
	out   Result
	fault *Fault
	nth   int
}

func (b *bench) lay() {
	work := map[hardware.FittingKind]func(){
		hardware.Knob: b.knob, hardware.Pull: b.pull, hardware.TurnButton: b.turnButton, hardware.Hinge: b.hinge, hardware.Catch: b.catch,
		hardware.Runner: b.runner, hardware.Slide: b.slide, hardware.Button: b.button,
	}[b.Fitting.Kind]
	side, _ := b.Side.Axis()
	switch {
	case work == nil:
		b.fail(CodePlace, "fitting.unknown-kind", message.Text("kind", string(b.Fitting.Kind)))
		return
	case b.Runs == side:
		b.fail(CodePlace, "fitting.runs-into-the-side", message.Text("name", b.Fitting.Name))
		return
	case b.Count > MaxCount:
		b.fail(CodePlace, "fitting.too-many", message.Count("count", b.Count), message.Count("limit", MaxCount))
		return
	}
	for b.nth = 1; b.nth <= b.Count && b.fault == nil; b.nth++ {
		work()
	}
}

// fail keeps the first fault.
func (b *bench) fail(code diag.Code, key string, args ...message.Arg) {
	if b.fault == nil {
		args = append([]message.Arg{message.Text("fitting", b.Fitting.Name), message.Address("on", b.On.Address)}, args...)
		b.fault = &Fault{code, message.New(key, args...)}
	}
}

// needs reports whether there is another part, and says so where there is none.
func (b *bench) needs() bool {
	if b.With == nil {
		b.fail(CodePlace, "fitting.needs-another-part")
	}
	return b.With != nil
}

// size is a length of the catalogue.
func (b *bench) size(word string, l unit.Length) piece.Figure {
	s, origin := b.Fitting.Source, ledger.Reference
	if s.Status == figure.Stated {
		origin = ledger.Bought
	}
	return b.Ledger.Figure(b.Ledger.Given(ledger.Entry{
		Name: s.Key + "." + word, Value: unit.OfLength(l), Origin: origin, Source: s.Key + " " + b.Fitting.Name, Status: string(s.Status),
	}))
}

// along is the middle of the fitting in hand along the runs.
func (b *bench) along(p *piece.Part) piece.Figure {
	l, e, name := b.Ledger, p.Extent[b.Runs], b.Name+".place"
	switch {
	case b.Count == 1 && b.Margin != nil:
		return l.Sum(name, e.Low, *b.Margin)
	case b.Count == 1:
		return l.Half(name, l.Sum(name, e.Low, e.High))
	}
	margin := b.size("length", 0)
	if b.Margin != nil {
		margin = *b.Margin
	} else { // shared along the side, as far from the ends as half of what is between
		margin = l.ShareOf(name, l.Less(name, e.High, e.Low), 1, 2*b.Count)
	}
	first := l.Sum(name, e.Low, margin)
	span := l.Less(name, l.Less(name, e.High, margin), first)
	return l.Sum(name, first, l.Times(name, span, int64(b.nth-1), int64(b.Count-1)))
}

// middle is the middle of the fitting in hand across the runs.
func (b *bench) middle(p *piece.Part) piece.Figure {
	l, e, name := b.Ledger, p.Extent[b.across()], b.Name+".place"
	if b.Centre != nil {
		return l.Sum(name, e.Low, *b.Centre)
	}
	return l.Half(name, l.Sum(name, e.Low, e.High))
}

// across is the axis of the side that is not the runs.
func (b *bench) across() piece.Axis {
	side, _ := b.Side.Axis()
	return 3 - side - b.Runs
}

// about is a stretch of a size about a middle.
func (b *bench) about(mid, size piece.Figure) piece.Extent {
	l, name := b.Ledger, b.Name+".edge"
	low := l.Less(name, mid, l.Half(name, size))
	return piece.Extent{Low: low, High: l.Sum(name, low, size)}
}

// from is a stretch of a size that begins at a place and goes a way.
func (b *bench) from(at, size piece.Figure, way piece.Direction) piece.Extent {
	l, name := b.Ledger, b.Name+".edge"
	if _, sign := way.Axis(); sign < 0 {
		return piece.Extent{Low: l.Less(name, at, size), High: at}
	}
	return piece.Extent{Low: at, High: l.Sum(name, at, size)}
}

// face is where a side of a part lies.
func face(p *piece.Part, d piece.Direction) piece.Figure {
	axis, sign := d.Axis()
	if sign < 0 {
		return p.Extent[axis].Low
	}
	return p.Extent[axis].High
}

// body files what the fitting in hand takes up.
func (b *bench) body(word string, at [3]piece.Extent) *piece.Body {
	b.out.Bodies = append(b.out.Bodies, piece.Body{Of: b.nth, Word: word, Extent: at})
	return &b.out.Bodies[len(b.out.Bodies)-1]
}

// drum files a round body about an axis.
func (b *bench) drum(word string, at [3]piece.Extent, axis piece.Axis) {
	x := b.body(word, at)
	x.Round, x.Axis = true, axis
}

// address is that of a cut of the fitting in hand, below its part.
func (b *bench) address(p *piece.Part) address.Address {
	if b.Count == 1 {
		return p.Address.Child(b.Name)
	}
	return p.Address.Nth(b.Name, b.nth)
}
