package main

import (
	"context"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestADoubleClickIsToldFromACall(t *testing.T) {
	for _, c := range []struct {
		what string
		s    start
		want bool
	}{
		{"Windows, from the desktop", start{system: "windows", explorer: true, terminal: true}, true},
		{"Windows, from a prompt", start{system: "windows", terminal: true}, false},
		{"macOS, from the Finder", start{system: "darwin", name: "/Users/ada/Downloads/flatwright", folder: "/Users/ada", home: "/Users/ada", terminal: true}, true},
		{"macOS, by name", start{system: "darwin", name: "flatwright", folder: "/Users/ada", home: "/Users/ada", terminal: true}, false},
		{"macOS, in another folder", start{system: "darwin", name: "/usr/local/bin/flatwright", folder: "/Users/ada/knits", home: "/Users/ada", terminal: true}, false},
		{"macOS, no home", start{system: "darwin", name: "/flatwright"}, false},
		{"Linux, from a file manager", start{system: "linux", display: true}, true},
		{"Linux, from a terminal", start{system: "linux", display: true, terminal: true}, false},
		{"Linux, from a script without a screen", start{system: "linux"}, false},
	} {
		assert.Equal(t, c.want, c.s.opened(), c.what)
	}
}

func TestOpenedWithoutArgumentsItServesThePageAndCalledSoItShowsHelp(t *testing.T) {
	var out, errs said
	code := run(context.Background(), nil, environment{in: strings.NewReader(""), out: &out, err: &errs})
	assert.Equal(t, exitWell, code)
	assert.Contains(t, out.String(), "flatwright COMMAND")

	ctx, cancel := context.WithCancel(context.Background())
	browsed := make(chan string, 1)
	out, errs = said{}, said{}
	ended := make(chan int)
	go func() {
		ended <- run(ctx, nil, environment{in: strings.NewReader(""), out: &out, err: &errs, opened: true,
			browse: func(file string) error { browsed <- file; return nil }})
	}()
	select {
	case file := <-browsed:
		assert.Regexp(t, regexp.MustCompile(`url=http://127\.0\.0\.1:\d+/#open=[A-Z0-9]{26}"`), contents(t, file))
		defer assert.NoFileExists(t, file, "it is gone when the program has ended")
	case <-time.After(20 * time.Second):
		t.Error("no browser was opened")
	}
	cancel()
	require.Equal(t, exitWell, <-ended, errs.String())
	assert.Contains(t, errs.String(), "ended")
}
