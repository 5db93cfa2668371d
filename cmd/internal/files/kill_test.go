package files

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"flatwright/schematic/long"
)

// writerFolder names the folder in the environment of the writer of
// TestAWriterKilledAtAnyMomentLeavesEveryFileWhole.
const writerFolder = "FLATWRIGHT_TEST_WRITER"

// generation is a set of files whose every byte says which one it is.
func generation(n int) []File {
	var all []File
	for i, size := range []int{10, 4_000, 40_000, 200_000} {
		all = append(all, File{fmt.Sprintf("%d.svg", i), bytes.Repeat([]byte{byte('a' + n%20)}, size)})
	}
	return all
}

// It is no test but the program that is killed: it writes, and says so, without end.
func TestWriter(t *testing.T) {
	dir := os.Getenv(writerFolder)
	if dir == "" {
		t.Skip("it is run by another test")
	}
	for n := 1; ; n++ {
		if err := Write(context.Background(), dir, generation(n)); err != nil {
			fmt.Println("failed:", err)
			return
		}
		fmt.Println("written")
	}
}

// A program is killed at random moments while it writes four files a thousand times. Every
// file that is then found is whole: all of its bytes are of one generation.
func TestAWriterKilledAtAnyMomentLeavesEveryFileWhole(t *testing.T) {
	long.Test(t)
	const enough = 1000
	dir := t.TempDir()
	rng := rand.New(rand.NewPCG(1, 2))
	kills, writes, apart, left := 0, 0, 0, 0
	for end := time.Now().Add(time.Minute); writes < enough && time.Now().Before(end); kills++ {
		child := exec.Command(os.Args[0], "-test.run=^TestWriter$")
		child.Env = append(os.Environ(), writerFolder+"="+dir)
		out, err := child.StdoutPipe()
		require.NoError(t, err)
		require.NoError(t, child.Start())
		lines := bufio.NewScanner(out)
		first := make(chan bool, 1)
		counted := make(chan int, 1)
		go func() {
			n := 0
			for lines.Scan() {
				if strings.HasPrefix(lines.Text(), "written") {
					if n++; n == 1 {
						first <- true
					}
				}
			}
			counted <- n
		}()
		select {
		case <-first: // it is in the midst of its work now
		case <-time.After(20 * time.Second):
			require.Fail(t, "the writer does not write")
		}
		time.Sleep(time.Duration(rng.IntN(40_000)) * time.Microsecond)
		require.NoError(t, child.Process.Kill())
		writes += <-counted
		require.Error(t, child.Wait())

		entries, err := os.ReadDir(dir)
		require.NoError(t, err)
		seen := map[byte]bool{}
		for _, e := range entries {
			path := filepath.Join(dir, e.Name())
			body, err := os.ReadFile(path)
			require.NoError(t, err)
			if strings.HasPrefix(e.Name(), tempStart) {
				left++
				require.NoError(t, os.Remove(path))
				continue
			}
			require.NotEmpty(t, body, e.Name())
			require.Equal(t, len(body), bytes.Count(body, body[:1]), "%s is of two generations", e.Name())
			require.Len(t, body, len(generation(0)[e.Name()[0]-'0'].Body), "%s is not whole", e.Name())
			seen[body[0]] = true
		}
		require.LessOrEqual(t, len(seen), 2, "old and new, and nothing else")
		if len(seen) == 2 {
			apart++
		}
	}
	t.Logf("killed %d times in %d writes of four files; %d times between two names, %d temporary files left", kills, writes, apart, left)
	require.Greater(t, kills, 20)
}
