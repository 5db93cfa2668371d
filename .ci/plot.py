"""Draws sheets given as lines and texts with Matplotlib, for measure_test.go.

Reads a JSON list of pages from the file named first: {"w", "h" in mm, "lines":
[{"p": [[x, y], ...], "width": mm, "dash": [mm, ...], "fill": bool}], "texts":
[{"s", "x", "y", "size", "angle", "anchor"}]}, y downwards. Writes an SVG a page,
and a PDF of all of them, into memory, and prints as JSON the best of three times in
seconds and the bytes of each. Starting Python and importing are not counted.
"""
import io
import json
import sys
import time

import matplotlib

matplotlib.use("svg")
from matplotlib.backends.backend_pdf import PdfPages
from matplotlib.figure import Figure
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon

matplotlib.rcParams.update({"svg.fonttype": "none", "pdf.fonttype": 42, "font.family": "Liberation Sans"})
PT = 72 / 25.4


def figure(page):
    w, h = page["w"], page["h"]
    fig = Figure(figsize=(w / 25.4, h / 25.4))
    ax = fig.add_axes((0, 0, 1, 1))
    ax.set_xlim(0, w)
    ax.set_ylim(h, 0)
    ax.axis("off")
    for line in page["lines"]:
        if line["fill"]:
            ax.add_patch(Polygon(line["p"], closed=True, facecolor="black", linewidth=line["width"] * PT))
            continue
        xs, ys = zip(*line["p"])
        style = {"linewidth": line["width"] * PT, "color": "black"}
        if line["dash"]:
            style["dashes"] = [d / line["width"] for d in line["dash"]]
        ax.add_line(Line2D(xs, ys, **style))
    for t in page["texts"]:
        ax.text(t["x"], t["y"], t["s"].replace("$", r"\$"), fontsize=t["size"] * PT, rotation=t["angle"],
                rotation_mode="anchor", ha=t["anchor"], va="baseline")
    return fig


def as_svg(pages):
    size = 0
    for page in pages:
        out = io.BytesIO()
        figure(page).savefig(out, format="svg")
        size += out.tell()
    return size


def as_pdf(pages):
    out = io.BytesIO()
    with PdfPages(out) as pdf:
        for page in pages:
            pdf.savefig(figure(page))
    return out.tell()


def best(f, pages):
    times = []
    for _ in range(3):
        start = time.perf_counter()
        size = f(pages)
        times.append(time.perf_counter() - start)
    return min(times), size


with open(sys.argv[1], encoding="utf-8") as f:
    pages = json.load(f)
svg_s, svg_bytes = best(as_svg, pages)
pdf_s, pdf_bytes = best(as_pdf, pages)
print(json.dumps({"svg": svg_s, "svgBytes": svg_bytes, "pdf": pdf_s, "pdfBytes": pdf_bytes, "version": matplotlib.__version__}))
