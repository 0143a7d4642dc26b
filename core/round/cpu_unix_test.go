//go:build unix

package round

import (
	"syscall"
	"time"
)

// spent gives the processor time that the tests have used so far: on a busy
// machine the clock on the wall tells of the others.
func spent() time.Duration {
	var r syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &r) != nil {
		return 0
	}
	return time.Duration(r.Utime.Nano() + r.Stime.Nano())
}
