package optimise_test

import (
	"testing"

	"scantling/internal/optimise"
	"scantling/internal/optimise/conform"
)

func TestConforms(t *testing.T) { conform.Suite(t, optimise.Solve) }
