package solid

import (
	"slices"
	"testing"
)

// Two workers give the same bytes as one, and equal boards are built once.
func TestWorkersAgree(t *testing.T) {
	var jobs []Job
	for i := range uint64(40) {
		b, c := mixed(i % 20)
		jobs = append(jobs, Job{b, c, Options{Facets: 8}})
	}
	var one, two Cache
	a, b := one.BuildAll(jobs, 1), two.BuildAll(jobs, 2)
	for i := range jobs {
		if !slices.Equal(a[i].Mesh().Verts, b[i].Mesh().Verts) || !slices.Equal(a[i].Mesh().Tris, b[i].Mesh().Tris) {
			t.Errorf("board %d differs", i)
		}
		if a[i] != a[i%20] {
			t.Errorf("board %d was built twice", i)
		}
	}
	// Another tag is another solid.
	other := jobs[0]
	other.Bodies = []Primitive{board(300, 100, 18)}
	if one.Build(other) == a[0] {
		t.Error("different boards share a solid")
	}
}
