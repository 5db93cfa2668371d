package job

import (
	"context"
	"errors"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

func TestAnEndedContextWaitsForNothing(t *testing.T) {
	ctx, cancel := context.WithCancelCause(context.Background())
	release := make(chan struct{})
	defer close(release)
	time.AfterFunc(10*time.Millisecond, func() { cancel(errors.New("interrupt")) })
	_, err := made(ctx, func() (int, error) { <-release; return 1, nil })
	assert.EqualError(t, err, "stopped: interrupt")

	n, err := made(context.Background(), func() (int, error) { return 7, errors.New("mine") })
	assert.Equal(t, 7, n)
	assert.EqualError(t, err, "mine")
	assert.PanicsWithValue(t, "dropped", func() { _ = apart(context.Background(), func() { panic("dropped") }) })
}
