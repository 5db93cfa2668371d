package fonts

import "testing"

func BenchmarkBuildOneFace(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := build(TTF(Regular), beyondTable); err != nil {
			b.Fatal(err)
		}
	}
}
