package joinery

import (
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Codes of joints that cannot be made.
const (
	// CodePart: a joint names a part that the piece does not have, or one part twice.
	CodePart diag.Code = "joint-part"
	// CodeApart: the parts of a joint do not meet.
	CodeApart diag.Code = "joint-apart"
	// CodeNoOverlap: the parts only touch, where the joint lets one into the other.
	CodeNoOverlap diag.Code = "joint-no-overlap"
	// CodeOverlap: the parts overlap, where the joint only holds them against each other.
	CodeOverlap diag.Code = "joint-overlap"
	// CodeTooDeep: a joint goes deeper than the part that it enters is thick.
	CodeTooDeep diag.Code = "joint-too-deep"
	// CodeDepth: the parts as drawn overlap by something else than the joint's depth.
	CodeDepth diag.Code = "joint-depth"
	// CodeStops: the stopped ends leave nothing of the joint.
	CodeStops diag.Code = "joint-stops"
	// CodeFingers: the fingers of a box joint do not add up to its width.
	CodeFingers diag.Code = "joint-fingers"
	// CodeGrain: a box joint where the parts do not both meet in end grain.
	CodeGrain diag.Code = "joint-grain"
	// CodeHalving: a halving of parts that have no common surface to halve.
	CodeHalving diag.Code = "joint-halving"
	// CodeHoles: dowels or fasteners that have no room in the joint.
	CodeHoles diag.Code = "joint-holes"
	// CodeClaims: two joints claim the same wood for different parts.
	CodeClaims diag.Code = "joint-claims"
	// CodeBuried: a cut that is open to no side of its part.
	CodeBuried diag.Code = "joint-buried"
)

// fault is what is wrong with a joint, before it has a place.
type fault struct {
	code diag.Code
	key  string
	args []message.Arg
}

// report files a fault of a joint.
func (w *work) report(j *piece.Joint, f fault, related ...diag.Related) {
	args := append([]message.Arg{message.Address("joint", j.Address)}, f.args...)
	w.faults = append(w.faults, diag.Diagnostic{
		Severity: diag.Error, Code: f.code, Text: message.New(f.key, args...),
		Where: j.Where, Address: j.Address, Related: related,
	})
}

// fail reports a fault and takes the joint out of the numbers.
func (w *work) fail(j *joint, f fault) {
	if !j.failed {
		w.report(j.Joint, f)
	}
	j.failed = true
}

func pairArgs(j *piece.Joint) []message.Arg {
	return []message.Arg{message.Address("a", j.A), message.Address("b", j.B)}
}

func unknownPart(a address.Address) fault {
	return fault{CodePart, "joint.part-unknown", []message.Arg{message.Address("part", a)}}
}

func samePart(a address.Address) fault {
	return fault{CodePart, "joint.part-twice", []message.Arg{message.Address("part", a)}}
}

func unknownKind(j *joint) fault {
	return fault{CodePart, "joint.kind-unknown", []message.Arg{message.Text("kind", string(j.Kind))}}
}

func axisWord(a piece.Axis) message.Arg {
	return message.Word("axis", [3]string{"axis.right", "axis.back", "axis.up"}[a])
}

func doNotMeet(j *piece.Joint, g gap) fault {
	if g.size <= 0 {
		return fault{CodeApart, "joint.meet-in-a-line", pairArgs(j)}
	}
	return fault{CodeApart, "joint.apart", append(pairArgs(j), message.Length("distance", g.size), axisWord(g.axis))}
}

func onlyTouch(j *joint) fault {
	return fault{CodeNoOverlap, "joint.only-touch", append(pairArgs(j.Joint), message.Length("depth", j.Depth.Nm))}
}

func shouldTouch(j *joint) fault {
	e, _ := j.meets.entry.Axis()
	return fault{CodeOverlap, "joint.should-touch", append(pairArgs(j.Joint), message.Length("overlap", j.meets.region.size(e)))}
}

func tooDeep(j *joint, depth, size unit.Length) fault {
	return fault{CodeTooDeep, "joint.too-deep", append(pairArgs(j.Joint), message.Length("depth", depth), message.Length("thickness", size))}
}

func depthDiffers(j *joint, drawn unit.Length) fault {
	return fault{CodeDepth, "joint.depth-differs", append(pairArgs(j.Joint), message.Length("depth", j.Depth.Nm), message.Length("drawn", drawn))}
}

func noRoom(j *joint, key string, is, limit unit.Length) fault {
	return fault{CodeHoles, key, append(pairArgs(j.Joint), message.Length("is", is), message.Length("limit", limit))}
}

func notFlush(in, through *piece.Part, depth, size unit.Length) fault {
	return fault{CodeDepth, "joint.not-flush", []message.Arg{
		message.Address("a", in.Address), message.Address("b", through.Address),
		message.Length("depth", depth), message.Length("thickness", size)}}
}

func fingersDiffer(j *joint, sum, width piece.Figure) fault {
	return fault{CodeFingers, "joint.fingers-do-not-add-up", append(pairArgs(j.Joint),
		message.Length("sum", sum.Nm), message.Length("width", width.Nm))}
}
