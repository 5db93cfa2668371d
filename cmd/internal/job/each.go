package job

import (
	"context"
	"fmt"
	"runtime"
	"sync"
)

// aside is the key of a ctx whose work leaves a processor to others.
type aside struct{}

// processors are how many a ctx's work may take.
func processors(ctx context.Context) int {
	n := runtime.GOMAXPROCS(0)
	if ctx.Value(aside{}) != nil {
		n = max(1, n-1)
	}
	return n
}

// each calls f with 0 to n-1, as many at a time as there are processors, and
// gives the error of the lowest that failed. It begins none once ctx has ended.
func each(ctx context.Context, n int, f func(i int) error) error {
	errs := make([]error, n)
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(n, processors(ctx)) {
		workers.Go(func() {
			for i := range next {
				errs[i] = f(i)
			}
		})
	}
	var ended error
	for i := range n {
		if ended = stopped(ctx); ended != nil {
			break
		}
		next <- i
	}
	close(next)
	workers.Wait()
	if ended == nil {
		ended = stopped(ctx) // what stopped inside a step has no error of its own to tell
	}
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

// apart does f, which knows of no ctx, and waits for it no longer than until ctx has ended: then what f
// still does is for no one. A panic of f is the caller's.
func apart(ctx context.Context, f func()) error {
	done := make(chan any, 1)
	go func() {
		defer func() { done <- recover() }()
		f()
	}()
	select {
	case p := <-done:
		if p != nil {
			panic(p)
		}
		return stopped(ctx)
	case <-ctx.Done():
		return stopped(ctx)
	}
}

// made is what f makes, done apart.
func made[T any](ctx context.Context, f func() (T, error)) (T, error) {
	var t, none T
	var err error
	if stop := apart(ctx, func() { t, err = f() }); stop != nil {
		return none, stop
	}
	return t, err
}

// stopped is the error of a ctx that has ended, or nil.
func stopped(ctx context.Context) error {
	if ctx.Err() == nil {
		return nil
	}
	return fmt.Errorf("stopped: %w", context.Cause(ctx))
}
