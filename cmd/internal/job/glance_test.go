package job_test

import (
	"context"
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/cmd/internal/job"
	"flatwright/examples"
	"flatwright/layout/place"
)

// What comes at once is what comes in full, byte for byte.
func TestAGlanceIsTheDrawingOfTheSizeAmongAll(t *testing.T) {
	for _, name := range examples.Names() {
		src := job.Source{Name: name, Text: examples.Text(name)}
		for _, o := range []job.DrawOptions{{}, {Text: 6.35}} {
			l, err := job.Live(context.Background(), src, o, nil)
			require.NoError(t, err, name)
			for _, size := range []string{l.Sizes.Names[0], l.Sizes.Names[l.Sizes.Len()-1]} {
				o.Size = size
				whole, err := job.Live(context.Background(), src, o, nil)
				require.NoError(t, err, name)
				first, err := job.Glance(context.Background(), src, o, l.Scales, l.Letters)
				require.NoError(t, err, name)
				require.Len(t, first.Pages, len(whole.Pages), "%s %s", name, size)
				for i := range whole.Pages {
					assert.Equal(t, string(whole.Pages[i]), string(first.Pages[i]), "%s %s", name, size)
				}
				assert.Equal(t, whole.Scales, l.Scales)
			}
		}
	}
}

func TestADrawingThatNobodyWaitsForEnds(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	src := job.Source{Name: "p.yaml", Text: examples.Text("saltmarsh-cardigan")}
	_, err := job.Glance(ctx, src, job.DrawOptions{Size: "M"}, place.Scales{Pieces: 8}, nil)
	assert.Error(t, err)
	_, err = job.Live(ctx, src, job.DrawOptions{Size: "M"}, nil)
	assert.True(t, errors.Is(err, context.Canceled), err)
}
