package fonts

// Has reports whether the face draws a character as itself.
func Has(f Face, r rune) bool { return metricsOf(f).of(r) != 0 }
