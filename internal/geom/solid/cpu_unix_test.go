//go:build unix

package solid

import "syscall"

// processor returns the processor time that the process has used, in milliseconds:
// other work on a busy machine does not count.
func processor() float64 {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	ms := func(t syscall.Timeval) float64 { return float64(t.Sec)*1e3 + float64(t.Usec)/1e3 }
	return ms(u.Utime) + ms(u.Stime)
}
