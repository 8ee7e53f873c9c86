package rows

// Limit makes the bound on looks smaller and returns a function that undoes it.
func Limit(n int) func() {
	maxLooks = n
	return func() { maxLooks = MaxLooks }
}
