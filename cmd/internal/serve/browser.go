package serve

import (
	"os/exec"
	"runtime"
)

// Browse opens an address in the person's browser. The error says that there is
// no way to; the address then has to be opened by hand.
func Browse(address string) error {
	var c *exec.Cmd
	switch runtime.GOOS {
	case "windows":
		c = exec.Command("rundll32", "url.dll,FileProtocolHandler", address)
	case "darwin":
		c = exec.Command("open", address)
	default:
		c = exec.Command("xdg-open", address)
	}
	if err := c.Start(); err != nil {
		return err
	}
	go func() { _ = c.Wait() }() // whether it came up is for the person to see
	return nil
}
