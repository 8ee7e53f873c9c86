package work

import "context"

// pollEvery is how many units pass between two looks at the context.
const pollEvery = 1 << 16

// Meter counts work against a limit.
type Meter struct {
	ctx     context.Context
	limit   int64
	used    int64
	poll    int64
	stopped bool
	spent   bool
}

// New returns a meter for limit units that also ends when ctx is done.
func New(ctx context.Context, limit int64) *Meter {
	return &Meter{ctx: ctx, limit: limit, poll: -1}
}

// Take asks for n units. If they may be spent it counts them and returns true;
// otherwise it returns false from then on, so that the limit is never passed.
func (m *Meter) Take(n int64) bool {
	if m.stopped || m.spent {
		return false
	}
	if n > m.limit-m.used {
		m.spent = true
		return false
	}
	if m.used > m.poll {
		if m.ctx.Err() != nil {
			m.stopped = true
			return false
		}
		m.poll = m.used + pollEvery
	}
	m.used += n
	return true
}

// Ended says that a request was refused.
func (m *Meter) Ended() bool { return m.stopped || m.spent }

// Stopped says that the context ended the work.
func (m *Meter) Stopped() bool { return m.stopped }

// Spent says that the limit ended the work.
func (m *Meter) Spent() bool { return m.spent }

// Used returns the units counted.
func (m *Meter) Used() int64 { return m.used }

// Left returns the units that may still be spent.
func (m *Meter) Left() int64 { return max(0, m.limit-m.used) }

// Split returns a meter for at most n of the units that are left, for work of
// its own. [Meter.Join] books what it used.
func (m *Meter) Split(n int64) *Meter {
	part := New(m.ctx, min(n, m.Left()))
	part.stopped = m.stopped
	return part
}

// Join books what a split meter used, and whether the context ended it.
func (m *Meter) Join(part *Meter) {
	m.used += part.used
	m.stopped = m.stopped || part.stopped
	if part.spent && m.Left() < m.limit/16 {
		m.spent = true
	}
}

// Bonus allows n units more than were used so far, whatever the limit was, and
// returns the meter.
func (m *Meter) Bonus(n int64) *Meter {
	m.limit, m.spent = m.used+n, false
	return m
}

// Err returns why the context ended, or nil.
func (m *Meter) Err() error { return m.ctx.Err() }

// Cancelled looks at the context at once.
func (m *Meter) Cancelled() bool {
	m.stopped = m.stopped || m.ctx.Err() != nil
	return m.stopped
}
