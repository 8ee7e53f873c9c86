package joinery

// butt holds two parts against each other: nothing is taken away but what the
// fasteners ask for. A and B meet over the rectangle that their sides have in
// common.
func (w *work) butt(j *joint) { w.fasten(j) }
