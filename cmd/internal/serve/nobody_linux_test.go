package serve

import (
	"os/exec"
	"syscall"
)

// asNobody lets a command run as the user who has no rights.
func asNobody(c *exec.Cmd) {
	c.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
}
