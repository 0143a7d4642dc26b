package pgembed

import "syscall"

// signalOnOurDeath has the kernel send SIGTERM when we die without a word: the
// postmaster then waits for the clients it still has, writes everything down
// and ends.
func signalOnOurDeath(a *syscall.SysProcAttr) { a.Pdeathsig = syscall.SIGTERM }
