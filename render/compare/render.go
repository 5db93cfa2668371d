package compare

import (
	"bytes"
	"fmt"
	"image"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// DPI is the resolution of every comparison.
const DPI = 150

// SVG is an SVG file as librsvg draws it, at DPI.
func SVG(t testing.TB, file []byte) *image.Gray {
	t.Helper()
	return House.SVG(t, file)
}

// SVG is an SVG file as librsvg draws it on the device, at DPI.
func (d Device) SVG(t testing.TB, file []byte) *image.Gray {
	t.Helper()
	dpi := strconv.Itoa(DPI)
	return decode(t, d.run(t, file, "rsvg-convert", "--dpi-x", dpi, "--dpi-y", dpi, "--background-color", "white"))
}

// PDF is one page of a PDF, from 1, as Poppler draws it, at DPI.
func PDF(t testing.TB, file []byte, page int) *image.Gray {
	t.Helper()
	path := filepath.Join(t.TempDir(), "page.pdf")
	if err := os.WriteFile(path, file, 0o600); err != nil {
		t.Fatal(err)
	}
	n := strconv.Itoa(page)
	return decode(t, Run(t, nil, "pdftoppm", "-r", strconv.Itoa(DPI), "-png", "-f", n, "-l", n, path))
}

// Chromium is an SVG file as Chromium draws it on the device, at DPI. W and h are the
// sheet's size in mm.
func (d Device) Chromium(t testing.TB, file []byte, w, h float64) *image.Gray {
	t.Helper()
	Tool(t, "chromium")
	dir := t.TempDir()
	in, out := filepath.Join(dir, "sheet.svg"), filepath.Join(dir, "sheet.png")
	if err := os.WriteFile(in, file, 0o600); err != nil {
		t.Fatal(err)
	}
	// CSS: 96 px to the inch. The window's height has to hold a little more
	// than the sheet; what is beyond is cut off again.
	const scale = DPI / 96.0
	wide, high := int(w*96/25.4)+2, int(h*96/25.4)+2
	d.run(t, nil, "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars",
		"--disable-background-networking", "--user-data-dir="+filepath.Join(dir, "profile"),
		fmt.Sprintf("--force-device-scale-factor=%v", scale), fmt.Sprintf("--window-size=%d,%d", wide, high),
		"--screenshot="+out, "file://"+in)
	data, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	img := decode(t, data)
	cut := image.Rect(0, 0, int(w*DPI/25.4+0.5), int(h*DPI/25.4+0.5)).Intersect(img.Rect)
	return img.SubImage(cut).(*image.Gray)
}

func decode(t testing.TB, data []byte) *image.Gray {
	t.Helper()
	img, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	b := img.Bounds()
	gray := image.NewGray(image.Rect(0, 0, b.Dx(), b.Dy()))
	draw.Draw(gray, gray.Rect, img, b.Min, draw.Src)
	return gray
}
