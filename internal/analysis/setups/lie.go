package setups

import (
	"scantling/internal/analysis/operations"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
)

// feed says how the work lies and goes: which side is down, which against the
// fence, which goes first and which way.
func (d *decider) feed(j *operations.Job, p plan.Placement) message.Message {
	part := d.partOf(j)
	key := "setups.feed.router"
	switch {
	case j.Way.Guide == operations.ByEdge:
		key = "setups.feed.plunge"
	case j.Way.Guide == operations.BySled:
		key = "setups.feed.sled"
	case j.Way.Kind == tool.TableSaw && j.Way.Guide == operations.ByGauge:
		key = "setups.feed.saw-gauge"
	case j.Way.Kind == tool.TableSaw:
		key = "setups.feed.saw"
	case j.Way.Guide == operations.ByGauge:
		key = "setups.feed.router-gauge"
	}
	return message.New(key, message.Word("down", sideWord(part, p.Down)), message.Word("fence", sideWord(part, p.Fence)), message.Word("leads", sideWord(part, p.Leads)))
}

// lie says which side to work from, for the hand.
func (d *decider) lie(j *operations.Job, open piece.Side) message.Message {
	return message.New("setups.feed.hand", message.Word("side", sideWord(d.partOf(j), open)))
}

// handNote says why and how the hand makes a slot.
func (d *decider) handNote(j *operations.Job) message.Message {
	switch {
	case j.Cut.Kind == piece.LidKerf:
		return words("setups.hand.lid")
	case j.Cut.Kind == piece.Notch && j.Cut.Joint != "":
		return words("setups.hand.notch")
	case j.Cut.Kind == piece.Notch:
		return words("setups.hand.own-notch")
	case j.Cut.Slot.LeanNear.Nm < 0 || j.Cut.Slot.LeanFar.Nm < 0 || j.Cut.Kind == piece.Flank:
		return words("setups.hand.undercut")
	case j.Cut.Slot.LeanNear.Nm > 0 && j.Cut.Slot.LeanFar.Nm > 0:
		return words("setups.hand.leaning")
	case j.Cut.Kind == piece.ScrewSlot:
		return words("setups.hand.screw-slot")
	case j.Cut.Kind == piece.Mortise:
		return words("setups.hand.mortise")
	case j.Cut.Kind == piece.Channel:
		return words("setups.hand.channel")
	}
	return words("setups.hand.slot")
}

// sideWord returns the key that names a side of a part as it stands in the
// piece: "side.upper edge", "side.inside face". A face that shows and its
// opposite are outside and inside where they look to left or right.
func sideWord(p piece.Part, s piece.Side) string {
	local, high := s.Axis()
	dir := p.Frame.Directions()[local]
	if !high {
		dir = dir.Opposite()
	}
	kind := [3]string{"end", "edge", "face"}[local]
	where := map[piece.Direction]string{
		piece.ToUp: "upper", piece.ToDown: "lower", piece.ToFront: "front", piece.ToBack: "back", piece.ToLeft: "left", piece.ToRight: "right",
	}[dir]
	if axis, _ := dir.Axis(); axis == piece.Right && p.Show != "" {
		switch dir {
		case p.Show:
			where = "outside"
		case p.Show.Opposite():
			where = "inside"
		}
	}
	if where == "" {
		return "side." + string(s)
	}
	return "side." + where + " " + kind
}
