package share

import (
	"cmp"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// SourceChannel is the rule by which [ChannelFor] chooses: half the rod in the
// wood, by the least cutter that takes it.
var SourceChannel = figure.PracticeSource("share.channel-half-the-rod")

// Channel is a round-bottomed channel for a rod with the cutter that makes it.
type Channel struct {
	Cutter tool.Cutter
	Groove Groove
	Mouth  unit.Length
	Rod    unit.Length
	Seat
}

// Half reports whether half the rod lies in the wood, as it should.
func (c Channel) Half() bool { return c.Sit == c.Rod/2 }

// depthStep is the step to which a depth that is not half the rod is rounded
// down, so that it can be set.
const depthStep = unit.Millimetre / 10

// ChannelFor returns the channel in which a rod lies deepest, at most to half its
// diameter, among the round-nose cutters given, with a mouth of at most widest
// (zero is no limit). Where several serve, the narrowest mouth wins, then the
// name: so the least cutter that takes the rod cuts to half of it. Where none
// does, a channel is shallower or the rod rides on the edges of a smaller one;
// Sit then says how deep it lies. Common practice, no source.
//
// Errors: "share.no-round-nose" where no cutter gives any seat; those of
// [Groove.Seat] for the rod.
func ChannelFor(rod unit.Length, cutters []tool.Cutter, widest unit.Length) (Channel, error) {
	if err := figure.LengthRange(SourceChannel.Key, "quantity.rod", rod, 2, maxRadius); err != nil {
		return Channel{}, err
	}
	var best Channel
	for _, c := range cutters {
		found, ok := channelWith(c, rod, widest)
		if !ok {
			continue
		}
		better := cmp.Or(cmp.Compare(found.Sit, best.Sit), cmp.Compare(best.Mouth, found.Mouth), cmp.Compare(best.Cutter.Name, found.Cutter.Name))
		if best.Sit == 0 || better > 0 {
			best = found
		}
	}
	if best.Sit == 0 {
		return Channel{}, figure.Refuse("share.no-round-nose", message.Length("rod", rod), message.Length("widest", widest)).
			Or("share.buy-cutter", message.Length("diameter", rod)).Or("share.wider-pitch")
	}
	return best, nil
}

func channelWith(c tool.Cutter, rod, widest unit.Length) (Channel, bool) {
	radius := c.NoseRadius()
	if radius <= 0 || radius > maxRadius {
		return Channel{}, false
	}
	depth := min(rod/2, radius)
	if c.CuttingLength > 0 {
		depth = min(depth, c.CuttingLength)
	}
	if widest > 0 && (Groove{radius, depth}).Mouth() > widest {
		depth = DepthForMouth(radius, widest).Round(depthStep, unit.Down)
	}
	if depth <= 0 {
		return Channel{}, false
	}
	g := Groove{radius, depth}
	seat, err := g.Seat(rod)
	if err != nil || seat.Sit <= 0 {
		return Channel{}, false
	}
	return Channel{c, g, g.Mouth(), rod, seat}, true
}

// WithCutter returns the channel that a given cutter makes at a given depth.
//
// Errors: "share.not-round-nose" for another shape; "share.cutter-too-short";
// those of [Groove.Seat].
func WithCutter(c tool.Cutter, depth, rod unit.Length) (Channel, error) {
	if c.Shape != tool.RoundNose {
		return Channel{}, figure.Refuse("share.not-round-nose", message.Text("cutter", c.Name), message.Word("shape", string(c.Shape)))
	}
	if !c.Reaches(depth) {
		return Channel{}, figure.Refuse("share.cutter-too-short", message.Text("cutter", c.Name), message.Length("depth", depth), message.Length("reach", c.CuttingLength))
	}
	g := Groove{c.NoseRadius(), depth}
	seat, err := g.Seat(rod)
	if err != nil {
		return Channel{}, err
	}
	return Channel{c, g, g.Mouth(), rod, seat}, nil
}
