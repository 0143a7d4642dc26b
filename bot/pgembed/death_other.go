//go:build unix && !linux

package pgembed

import "syscall"

// signalOnOurDeath has no counterpart here: the server goes on until the next
// start joins it and the last one out stops it.
func signalOnOurDeath(*syscall.SysProcAttr) {}
