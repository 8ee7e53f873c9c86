package piece

import "scantling/internal/ledger"

// Held is the part of a stretch of the joint's region over which its wood is really
// held: of a tenon what lies between its shoulders, for the rest of its part's width
// only stands against the other. The stretch lies along an axis; a is the part that
// has the tenon.
func (j *Joint) Held(e Extent, along Axis, a *Part, l *ledger.Ledger) Extent {
	if j.Kind != TenonJoint || j.Tenon == nil {
		return e
	}
	if local, _ := a.Frame.LocalOf(along); local != AlongWidth {
		return e
	}
	name := string(j.Address) + ".held"
	return Extent{Low: l.Sum(name, e.Low, j.Tenon.Low), High: l.Less(name, e.High, j.Tenon.High)}
}
