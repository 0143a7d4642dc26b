//go:build !unix

package round

import "time"

var begin = time.Now()

// spent gives the time since the tests began, where the processor's is not
// told.
func spent() time.Duration { return time.Since(begin) }
