package main

import (
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"scantling": main})
}

// TestScripts runs the command as a maker does: each archive in testdata/script
// is a folder of files and the commands that are given there.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{Dir: "testdata/script", RequireExplicitExec: true, RequireUniqueNames: true})
}
