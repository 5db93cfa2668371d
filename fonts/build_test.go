package fonts

import "testing"

func BenchmarkBuildOneFace(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		build(TTF(Regular))
	}
}
