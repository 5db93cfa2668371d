package serve

import (
	"os/exec"
	"runtime"
)

// Browse opens a page in the person's browser, by the path of its file. The error says that there is
// no way to; the address then has to be opened by hand.
func Browse(file string) error {
	var c *exec.Cmd
	switch runtime.GOOS {
	case "windows":
		c = exec.Command("rundll32", "url.dll,FileProtocolHandler", file)
	case "darwin":
		c = exec.Command("open", file)
	default:
		c = exec.Command("xdg-open", file)
	}
	if err := c.Start(); err != nil {
		return err
	}
	go func() { _ = c.Wait() }() // whether it came up is for the person to see
	return nil
}
