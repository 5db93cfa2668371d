package job

import (
	"context"
	"errors"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestEachDoesAllAndGivesTheLowestError(t *testing.T) {
	var done atomic.Int64
	require.NoError(t, each(context.Background(), 100, func(i int) error { done.Add(1 << (i % 2)); return nil }))
	assert.EqualValues(t, 150, done.Load())
	three, seven := errors.New("3"), errors.New("7")
	for range 20 {
		err := each(context.Background(), 10, func(i int) error { return map[int]error{3: three, 7: seven}[i] })
		require.ErrorIs(t, err, three)
	}
}

func TestEachBeginsNothingAfterAnInterrupt(t *testing.T) {
	ctx, stop := context.WithCancelCause(context.Background())
	var done atomic.Int64
	err := each(ctx, 1000, func(i int) error {
		done.Add(1)
		stop(errors.New("interrupt"))
		return nil
	})
	require.ErrorContains(t, err, "interrupt")
	assert.Less(t, done.Load(), int64(1000))
}
