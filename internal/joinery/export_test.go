package joinery

// Limit makes the bound on steps smaller and returns a function that undoes it.
func Limit(n int) func() {
	maxSteps = n
	return func() { maxSteps = MaxSteps }
}
