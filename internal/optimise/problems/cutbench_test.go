package problems

import (
	"strings"
	"testing"

	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

const small = `{"schema":"cutbench/1","set":"s","instances":[
 {"name":"a","dim":1,"problem":"csp-multi","kerf":3,"stock":[{"id":0,"w":2400,"trim":20,"qty":null,"cost":7},{"id":1,"w":900,"qty":2,"cost":1}],"parts":[{"id":0,"w":700,"qty":4}]},
 {"name":"b","dim":2,"problem":"knapsack","stock":[{"id":0,"w":100,"h":50,"qty":1}],"parts":[{"id":0,"w":30,"h":20,"qty":null,"value":5,"rotate":false}]},
 {"name":"c","dim":2,"problem":"csp-ordered","stock":[{"id":0,"w":100,"h":50}],"parts":[{"id":0,"w":30,"h":20,"qty":1}]},
 {"name":"d","dim":1,"problem":"csp","stock":[{"id":0,"w":-4}],"parts":[{"id":0,"w":30,"qty":1}]}]}`

func TestRead(t *testing.T) {
	set, err := Read(strings.NewReader(small))
	if err != nil {
		t.Fatal(err)
	}
	a, err := set.Instances[0].Problem(Rules{})
	if err != nil || a.Kerf != unit.MM(3) || a.Stock[0].Usable(problem.Boards).Length != unit.MM(2380) || a.Stock[1].Limit != 2 {
		t.Errorf("%+v, %v", a, err)
	}
	b, err := set.Instances[1].Problem(Rules{Turn: true})
	if err != nil || b.Goal != problem.MostValue || !b.Parts[0].Turn || b.Parts[0].Quantity < 7 {
		t.Errorf("%+v, %v", b, err)
	}
	for _, in := range set.Instances[2:] {
		if _, err := in.Problem(Rules{}); err == nil {
			t.Errorf("%s is accepted", in.Name)
		}
	}
	if _, err := Read(strings.NewReader(`{"schema":"cutbench/9"}`)); err == nil {
		t.Error("a newer schema is accepted")
	}
}

func FuzzRead(f *testing.F) {
	f.Add(small)
	f.Fuzz(func(t *testing.T, text string) {
		set, err := Read(strings.NewReader(text))
		if err != nil {
			return
		}
		for _, in := range set.Instances {
			if p, err := in.Problem(Rules{}); err == nil {
				if err := p.Check(); err != nil {
					t.Errorf("accepted, but %v", err)
				}
			}
		}
	})
}
