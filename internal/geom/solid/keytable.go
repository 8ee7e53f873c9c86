package solid

// keyTable numbers keys in the order in which they first come. It is a plain
// open-addressed table that is emptied by counting up a stamp.
type keyTable struct {
	slots []slot
	stamp uint32
	mask  uint64
	count int
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
	t.count = 0
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
		t.put(s, slot{key, value, t.stamp})
		return value, true
	}
	return s.value, false
}

// set gives the key a value.
func (t *keyTable) set(key uint64, value int32) {
	if s, fresh := t.find(key); fresh {
		t.put(s, slot{key, value, t.stamp})
	} else {
		s.value = value
	}
}

// put fills a free slot and doubles the table where it is half full.
func (t *keyTable) put(at *slot, s slot) {
	*at = s
	t.count++
	if 2*t.count <= int(t.mask) {
		return
	}
	old := t.slots[:t.mask+1]
	stamp := t.stamp
	t.slots, t.stamp, t.mask = make([]slot, 2*len(old)), 1, uint64(2*len(old)-1)
	for _, o := range old {
		if o.stamp == stamp {
			free, _ := t.find(o.key)
			*free = slot{o.key, o.value, 1}
		}
	}
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
		t.put(s, slot{key, by, t.stamp})
		return by
	}
	s.value += by
	return s.value
}
