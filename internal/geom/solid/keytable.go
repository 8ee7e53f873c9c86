package solid

// keyTable numbers keys in the order in which they first come. It is a plain
// open-addressed table that is emptied by counting up a stamp.
type keyTable struct {
	slots []slot
	stamp uint32
	mask  uint64
}

type slot struct {
	key   uint64
	value int32
	stamp uint32
}

// reset empties the table and makes room for n keys.
func (t *keyTable) reset(n int) {
	size := 32
	for size < 2*n {
		size *= 2
	}
	if len(t.slots) < size {
		t.slots, t.stamp = make([]slot, size), 0
	}
	t.mask = uint64(size - 1)
	t.stamp++
	if t.stamp == 0 {
		clear(t.slots)
		t.stamp = 1
	}
}

// at returns the value of the key, which is the one given if the key is new.
func (t *keyTable) at(key uint64, value int32) (got int32, fresh bool) {
	s, fresh := t.find(key)
	if fresh {
		*s = slot{key, value, t.stamp}
	}
	return s.value, fresh
}

func (t *keyTable) find(key uint64) (s *slot, fresh bool) {
	h := key * 0x9E3779B97F4A7C15
	for i := (h ^ h>>32) & t.mask; ; i = (i + 1) & t.mask {
		s := &t.slots[i]
		if s.stamp != t.stamp {
			return s, true
		}
		if s.key == key {
			return s, false
		}
	}
}

// add adds to the value of a key that starts at zero and returns the sum.
func (t *keyTable) add(key uint64, by int32) int32 {
	s, fresh := t.find(key)
	if fresh {
		*s = slot{key, 0, t.stamp}
	}
	s.value += by
	return s.value
}
