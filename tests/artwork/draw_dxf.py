"""Writes DXF drawings with ezdxf into a folder, and in cases.csv what they enclose: file, area in mm^2, colours of the
regions from the largest down, outlines in all, and a word of what the reader must say ("" for nothing).

Areas are closed forms of the numbers used here, or, for splines, the polygon that ezdxf itself makes of the curve."""

import math
import sys
from pathlib import Path

import ezdxf
from ezdxf import path as ezpath
from ezdxf import units
from ezdxf.math import Vec2

folder = Path(sys.argv[1])
cases = []


def drawing(version="R2000", unit=units.MM):
    document = ezdxf.new(version)
    if version != "R12":
        document.units = unit
    return document, document.modelspace()


def save(name, document, area, colours, outlines, said=""):
    document.saveas(folder / f"{name}.dxf")
    cases.append(f"{name}.dxf,{area!r},{' '.join(colours)},{outlines},{said}")


def shoelace(points):
    return abs(sum(a.x * b.y - b.x * a.y for a, b in zip(points, points[1:] + points[:1]))) / 2


def uniform_cubic(poles):
    """A closed cubic B-spline by the basis functions of even knots: (1-t)^3, 3t^3-6t^2+4, -3t^3+3t^2+3t+1, t^3 over 6."""
    points = []
    for i in range(len(poles)):
        p = [poles[(i + k) % len(poles)] for k in range(4)]
        for n in range(2000):
            t = n / 2000
            basis = [(1 - t) ** 3 / 6, (3 * t**3 - 6 * t**2 + 4) / 6, (-3 * t**3 + 3 * t**2 + 3 * t + 1) / 6, t**3 / 6]
            points.append(Vec2(sum(b * q[0] for b, q in zip(basis, p)), sum(b * q[1] for b, q in zip(basis, p))))
    return points


def rational_cubic(poles, weights):
    """One rational Bezier piece by the Bernstein polynomials."""
    points = []
    for n in range(20001):
        t = n / 20000
        basis = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t**2 * (1 - t), t**3]
        w = sum(b * v for b, v in zip(basis, weights))
        points.append(Vec2(*[sum(b * v * q[k] for b, v, q in zip(basis, weights, poles)) / w for k in (0, 1)]))
    return points


ink = "000000"

doc, msp = drawing()
msp.add_circle((10, 20), 5)
save("circle", doc, math.pi * 25, [ink], 1)

doc, msp = drawing(unit=units.IN)
msp.add_circle((1, 2), 0.5)
save("circle-inch", doc, math.pi * 12.7**2, [ink], 1)

doc, msp = drawing(unit=units.CM)
msp.add_circle((1, 2), 0.5)
save("circle-cm", doc, math.pi * 25, [ink], 1)

doc, msp = drawing(version="R12")
msp.add_circle((0, 0), 5)
save("circle-r12", doc, math.pi * 25, [ink], 1, "INSUNITS")

doc, msp = drawing()
corners = [(0, 0), (30, 0), (30, 20), (0, 20)]
for i in (2, 0, 3, 1):  # out of order, every other one backwards
    a, b = corners[i], corners[(i + 1) % 4]
    msp.add_line(*((a, b) if i % 2 else (b, a)))
save("loose-lines", doc, 600, [ink], 1)

doc, msp = drawing()
msp.add_line((0, 0), (30, 0))
msp.add_line((30.004, 0.003), (30, 20))
msp.add_line((30, 20), (0, 0))
save("gap", doc, 300 + (20 * 0.004 - 30 * 0.003) / 2, [ink], 1, "gap")

doc, msp = drawing()
msp.add_line((0, 0), (30, 0))
msp.add_line((30.5, 0), (30, 20))
msp.add_line((30, 20), (0, 0))
save("open", doc, 0, [], 0, "stays open")

doc, msp = drawing()
for _ in range(2):
    msp.add_line((0, 0), (30, 0))
    msp.add_line((30, 0), (30, 20))
    msp.add_line((30, 20), (0, 0))
save("twice", doc, 300, [ink], 1, "twice")

doc, msp = drawing()
msp.add_arc((0, 0), 10, 0, 180)
msp.add_line((-10, 0), (10, 0))
save("half-disc", doc, math.pi * 50, [ink], 1)

doc, msp = drawing()
msp.add_arc((0, 0), 10, 350, 10)  # through zero
msp.add_line((10 * math.cos(math.radians(10)), 10 * math.sin(math.radians(10))), (0, 0))
msp.add_line((0, 0), (10 * math.cos(math.radians(10)), -10 * math.sin(math.radians(10))))
save("arc-through-zero", doc, math.pi * 100 * 20 / 360, [ink], 1)

doc, msp = drawing()
msp.add_lwpolyline([(0, 0, 0), (20, 0, 1), (20, 10, 0), (0, 10, 1)], format="xyb", close=True)
save("stadium", doc, 200 + math.pi * 25, [ink], 1)

doc, msp = drawing()
quarter = math.tan(math.pi / 8)
msp.add_lwpolyline([(0, 0, 0), (20, 0, -quarter), (30, 10, 0), (0, 10, 0)], format="xyb", close=True)
save("hollow-corner", doc, 20 * 10 + 10 * 10 - math.pi * 100 / 4, [ink], 1)

doc, msp = drawing(version="R12")
msp.add_polyline2d([(0, 0, 0, 0, 0), (20, 0, 0, 0, 1), (20, 10, 0, 0, 0), (0, 10, 0, 0, 1)], format="xyseb", close=True)
save("polyline-bulge", doc, 200 + math.pi * 25, [ink], 1, "INSUNITS")

doc, msp = drawing()
msp.add_ellipse((5, 5), major_axis=(12, 9), ratio=0.4)
save("ellipse", doc, math.pi * 15 * 6, [ink], 1)

doc, msp = drawing()
msp.add_ellipse((0, 0), major_axis=(20, 0), ratio=0.5, start_param=0, end_param=math.pi)
msp.add_line((-20, 0), (20, 0))
save("half-ellipse", doc, math.pi * 100, [ink], 1)

doc, msp = drawing()
spline = msp.add_open_spline([(0, 0), (10, 30), (20, -10), (30, 20), (40, 0)])
msp.add_line((40, 0), (0, 0))
# counted with its sign: the curve crosses the line, so both sides are measured apart
flat = list(ezpath.make_path(spline).flattening(1e-6, 64))
plus = sum(0.5 * (b.x - a.x) * (max(a.y, 0) + max(b.y, 0)) for a, b in zip(flat, flat[1:]))
minus = sum(0.5 * (b.x - a.x) * (min(a.y, 0) + min(b.y, 0)) for a, b in zip(flat, flat[1:]))
save("spline", doc, plus - minus, [ink], 1 if minus == 0 else 2, "" if minus == 0 else "cross")

doc, msp = drawing()
spline = msp.add_spline()
spline.set_closed([(0, 0, 0), (30, 0, 0), (30, 20, 0), (15, 35, 0), (0, 20, 0)])
save("closed-spline", doc, shoelace(uniform_cubic([(0, 0), (30, 0), (30, 20), (15, 35), (0, 20)])), [ink], 1)

doc, msp = drawing()
spline = msp.add_rational_spline([(0, 0), (10, 30), (20, 30), (40, 0)], weights=[1, 3, 2, 1])
msp.add_line((40, 0), (0, 0))
save("rational-spline", doc, shoelace(rational_cubic([(0, 0), (10, 30), (20, 30), (40, 0)], [1, 3, 2, 1])), [ink], 1)

doc, msp = drawing()
spline = msp.add_open_spline([(0, 0), (5, 20), (15, 30), (25, 30), (35, 20), (40, 0)], degree=5)
msp.add_line((40, 0), (0, 0))
save("quintic", doc, shoelace(list(ezpath.make_path(spline).flattening(1e-6, 64))), [ink], 1)

doc, msp = drawing()
block = doc.blocks.new("reed", base_point=(1, 1))
block.add_lwpolyline([(1, 1), (5, 1), (5, 3)], close=True)
msp.add_blockref("reed", (10, 10), dxfattribs={"xscale": 2, "yscale": 3, "rotation": 30})
msp.add_blockref("reed", (40, 10), dxfattribs={"xscale": -1, "yscale": 1})
save("blocks", doc, 4 * 6 + 4, [ink, ink], 2)

doc, msp = drawing()
inner = doc.blocks.new("dot")
inner.add_circle((0, 0), 1)
outer = doc.blocks.new("pair")
outer.add_blockref("dot", (0, 0))
outer.add_blockref("dot", (5, 0), dxfattribs={"xscale": 2, "yscale": 2})
msp.add_blockref("pair", (0, 0), dxfattribs={"xscale": 3, "yscale": 3, "rotation": 90})
save("nested-blocks", doc, math.pi * (9 + 36), [ink, ink], 2)

doc, msp = drawing()
block = doc.blocks.new("dot")
block.add_circle((0, 0), 1)
msp.add_blockref("dot", (0, 0), dxfattribs={"column_count": 4, "row_count": 3, "column_spacing": 5, "row_spacing": 6})
save("array", doc, 12 * math.pi, [ink] * 12, 12)

doc, msp = drawing(version="R2004")  # the first with true colours
doc.layers.add("WAVES", color=5)
doc.layers.add("REEDS", true_color=ezdxf.rgb2int((0x12, 0x34, 0x56)))
msp.add_circle((0, 0), 4, dxfattribs={"layer": "WAVES"})
msp.add_circle((20, 0), 3, dxfattribs={"layer": "REEDS"})
msp.add_circle((40, 0), 2, dxfattribs={"layer": "WAVES", "color": 1})
msp.add_circle((60, 0), 1, dxfattribs={"true_color": ezdxf.rgb2int((0xC0, 0x20, 0x20))})
save("colours", doc, math.pi * (16 + 9 + 4 + 1), ["0000ff", "123456", "ff0000", "c02020"], 4)

doc, msp = drawing()
table = ezdxf.colors.DXF_DEFAULT_COLORS
wanted = []
# ezdxf's own table of odd indices leaves its wheel of hues from 109 on
for n, index in enumerate([1, 2, 3, 4, 5, 6, 8, 9, *range(10, 109), *range(110, 250, 2), *range(250, 256)]):
    msp.add_circle((10 * n, 0), 4 - n / 100, dxfattribs={"color": index})
    wanted.append(f"{table[index]:06x}")
save("index-colours", doc, math.pi * sum((4 - n / 100) ** 2 for n in range(len(wanted))), wanted, len(wanted))

doc, msp = drawing()
doc.layers.add("OFF").off()
msp.add_circle((0, 0), 4, dxfattribs={"layer": "OFF"})
msp.add_circle((20, 0), 3)
save("layer-off", doc, math.pi * 9, [ink], 1, "switched off")

doc, msp = drawing()
block = doc.blocks.new("dot")
block.add_circle((0, 0), 1, dxfattribs={"color": 0})
block.add_circle((5, 0), 0.5)
doc.layers.add("RED", color=1)
msp.add_blockref("dot", (0, 0), dxfattribs={"color": 3, "layer": "RED"})
save("colour-by-block", doc, math.pi * 1.25, ["00ff00", "ff0000"], 2)

doc, msp = drawing()
for side in (20, 15, 10):
    msp.add_lwpolyline([(-side, -side), (side, -side), (side, side), (-side, side)], close=True)
save("nesting", doc, 4 * (400 - 225 + 100), [ink, ink], 3)

doc, msp = drawing()
msp.add_circle((0, 0), 3, dxfattribs={"color": 5})  # drawn first, lies inside: still above
msp.add_circle((0, 0), 10, dxfattribs={"color": 1})
save("inside-lies-above", doc, math.pi * 100, ["ff0000", "0000ff"], 3, "lies on this one")

doc, msp = drawing()
msp.add_circle((7, -5), 3, dxfattribs={"extrusion": (0, 0, -1)})
msp.add_arc((0, 0), 10, 0, 90, dxfattribs={"extrusion": (0, 0, -1)})
msp.add_line((-10, 0), (0, 0))
msp.add_line((0, 0), (0, 10))
save("seen-from-behind", doc, math.pi * 25 + math.pi * 9, [ink, ink], 2)

doc, msp = drawing()
msp.add_text("heron")
msp.add_circle((20, 0), 3)
msp.add_point((1, 1))
save("text", doc, math.pi * 9, [ink], 1, "TEXT")

(folder / "cases.csv").write_text("\n".join(cases) + "\n")
