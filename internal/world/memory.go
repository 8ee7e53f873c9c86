package world

import (
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"
	"sync"
)

// Memory is a world that is kept in memory. It may be used by several
// goroutines. The zero Memory is empty and its date is the zero Date.
type Memory struct {
	mu    sync.Mutex
	files map[string][]byte
	size  int
	limit int
	today Date
}

// MaxMemory is how many bytes a Memory holds in all unless it is told otherwise.
const MaxMemory = 256 << 20

// NewMemory returns a world with the given files, which it copies, on the given
// day, that holds at most limit bytes in all; 0 stands for [MaxMemory]. Files
// with bad names or beyond the limits are an error.
func NewMemory(files map[string][]byte, today Date, limit int) (*Memory, error) {
	m := &Memory{today: today, limit: limit}
	for _, name := range slices.Sorted(maps.Keys(files)) {
		if err := m.Write(name, files[name]); err != nil {
			return nil, err
		}
	}
	return m, nil
}

// Read implements [World].
func (m *Memory) Read(name string) ([]byte, error) {
	if err := CheckName(name); err != nil {
		return nil, err
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	data, ok := m.files[name]
	if !ok {
		return nil, fmt.Errorf("read %s: %w", name, fs.ErrNotExist)
	}
	return append([]byte{}, data...), nil
}

// Write implements [World].
func (m *Memory) Write(name string, data []byte) error { return m.put(name, data, false) }

// Append implements [World].
func (m *Memory) Append(name string, data []byte) error { return m.put(name, data, true) }

func (m *Memory) put(name string, data []byte, keep bool) error {
	if err := CheckName(name); err != nil {
		return err
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	old := m.files[name]
	var start []byte
	if keep {
		start = old
	}
	limit := m.limit
	if limit <= 0 {
		limit = MaxMemory
	}
	length := len(start) + len(data)
	size := m.size - len(old) + length
	switch {
	case length > MaxFile:
		return fmt.Errorf("write %s: %d bytes; a file holds at most %d: %w", name, length, MaxFile, ErrTooLarge)
	case size > limit:
		return fmt.Errorf("write %s: %d bytes in all; at most %d are kept: %w", name, size, limit, ErrTooLarge)
	case m.files == nil:
		m.files = map[string][]byte{}
	}
	if _, known := m.files[name]; !known && len(m.files) >= MaxFiles {
		return fmt.Errorf("write %s: there are %d files already: %w", name, MaxFiles, ErrTooLarge)
	}
	if other := m.inTheWay(name); other != "" {
		return fmt.Errorf("write %s: %s is in the way: %w", name, other, fs.ErrInvalid)
	}
	m.files[name] = slices.Concat([]byte{}, start, data)
	m.size = size
	return nil
}

// inTheWay returns the file that has the name of a folder of the given name, or
// a file in a folder of that name.
func (m *Memory) inTheWay(name string) string {
	for i, c := range name {
		if c == '/' {
			if _, file := m.files[name[:i]]; file {
				return name[:i]
			}
		}
	}
	if _, known := m.files[name]; known {
		return ""
	}
	for other := range m.files {
		if strings.HasPrefix(other, name+"/") {
			return name + "/"
		}
	}
	return ""
}

// List implements [World].
func (m *Memory) List(folder string) ([]string, error) {
	if err := CheckFolder(folder); err != nil {
		return nil, err
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	var names []string
	for _, name := range slices.Sorted(maps.Keys(m.files)) {
		if folder == "" || strings.HasPrefix(name, folder+"/") {
			names = append(names, name)
		}
	}
	return names, nil
}

// Today implements [World].
func (m *Memory) Today() Date {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.today
}

// SetToday changes the date.
func (m *Memory) SetToday(d Date) {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.today = d
}
