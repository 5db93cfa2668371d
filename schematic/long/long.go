// Package long keeps the tests that take long apart, so that all others are done while a person waits. It is
// imported by tests alone.
package long

import (
	"math/rand/v2"
	"os"
	"strconv"
	"testing"
)

// variable is set in the environment to run the long tests too, as .ci/run does.
const variable = "FLATWRIGHT_LONG"

// Test skips a test that takes long, unless all are to be run.
func Test(t testing.TB) {
	t.Helper()
	if testing.Short() || os.Getenv(variable) == "" {
		t.Skip("a long test: " + variable + "=1 runs it")
	}
}

// Some reports whether the one with the number i of very many alike is tried: every nth, or all of them where
// the long tests are run.
func Some(i, n int) bool {
	return i%n == 0 || !testing.Short() && os.Getenv(variable) != ""
}

// seedVariable is set in the environment to make again what a test made at random.
const seedVariable = "FLATWRIGHT_SEED"

// Seed is a seed of its own for every run, told so that the run can be repeated.
func Seed(t testing.TB) uint64 {
	t.Helper()
	seed := rand.Uint64() // nothing that is written depends on it
	if s := os.Getenv(seedVariable); s != "" {
		n, err := strconv.ParseUint(s, 10, 64)
		if err != nil {
			t.Fatal(err)
		}
		seed = n
	}
	t.Logf("%s=%d repeats this run", seedVariable, seed)
	return seed
}
