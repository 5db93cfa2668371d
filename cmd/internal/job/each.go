package job

import (
	"context"
	"fmt"
	"runtime"
	"sync"
)

// each calls f with 0 to n-1, as many at a time as there are processors, and
// gives the error of the lowest that failed. It begins none once ctx has ended.
func each(ctx context.Context, n int, f func(i int) error) error {
	errs := make([]error, n)
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		workers.Go(func() {
			for i := range next {
				errs[i] = f(i)
			}
		})
	}
	var ended error
	for i := range n {
		if ctx.Err() != nil {
			ended = fmt.Errorf("stopped: %w", context.Cause(ctx))
			break
		}
		next <- i
	}
	close(next)
	workers.Wait()
	if ended != nil {
		return ended
	}
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
