//go:build unix

package pgembed

import (
	"context"
	"os"
	"os/exec"
	"runtime"
	"syscall"
)

// child is a postmaster that this process started.
type child struct {
	cmd  *exec.Cmd
	done chan struct{} // closed when it has ended
}

// startChild starts a process and waits for its end on a thread of its own:
// the signal that the child gets when we die is tied to the thread that
// started it (prctl(2), PR_SET_PDEATHSIG), so that thread has to stay.
func startChild(cmd *exec.Cmd) (*child, error) {
	c := &child{cmd: cmd, done: make(chan struct{})}
	started := make(chan error)
	go func() {
		runtime.LockOSThread()
		defer runtime.UnlockOSThread()
		err := cmd.Start()
		started <- err
		if err != nil {
			return
		}
		cmd.Wait() // its exit status is told by its log
		close(c.done)
	}()
	return c, <-started
}

func (c *child) pid() int { return c.cmd.Process.Pid }

func (c *child) kill() {
	c.cmd.Process.Signal(syscall.SIGQUIT) // immediate shutdown, children included
	<-c.done
}

func (c *child) wait(ctx context.Context) {
	select {
	case <-c.done:
	case <-ctx.Done():
	}
}

// dress sets the user, the process group and the environment of a command.
func (p place) dress(cmd *exec.Cmd) {
	cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	if p.owner.other {
		cmd.SysProcAttr.Credential = &syscall.Credential{Uid: uint32(p.owner.uid), Gid: uint32(p.owner.gid)}
	}
	cmd.Env = []string{"PATH=" + os.Getenv("PATH"), "LC_ALL=C.UTF-8", "TZ=UTC",
		"HOME=" + p.home, "USER=" + p.owner.name, "LOGNAME=" + p.owner.name}
}
