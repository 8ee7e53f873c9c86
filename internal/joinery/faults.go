package joinery

import (
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// fault is what is wrong with a joint, before it has a place.
type fault struct {
	code diag.Code
	key  string
	args []message.Arg
}

// report files a fault of a joint.
func (w *work) report(j *piece.Joint, f fault, related ...diag.Related) {
	w.file(diag.Error, j, f, related...)
}

// warn files what is doubtful of a joint that can be made all the same.
func (w *work) warn(j *joint, f fault) { w.file(diag.Warning, j.Joint, f) }

func (w *work) file(severity diag.Severity, j *piece.Joint, f fault, related ...diag.Related) {
	args := append([]message.Arg{message.Address("joint", j.Address)}, f.args...)
	w.faults = append(w.faults, diag.Diagnostic{
		Severity: severity, Code: f.code, Text: message.New(f.key, args...),
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

// as is the fault under another code.
func (f fault) as(c diag.Code) fault {
	f.code = c
	return f
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

// tooMuch says that the joints of the piece are more than can be worked out.
func tooMuch(joints int) diag.Diagnostic {
	return diag.Diagnostic{Severity: diag.Error, Code: CodeTooMuch,
		Text: message.New("joint.too-much", message.Count("joints", joints), message.Count("limit", MaxSteps))}
}
