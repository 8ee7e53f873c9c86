//go:build !unix

package solid

// processor is not known here.
func processor() float64 { return 0 }
