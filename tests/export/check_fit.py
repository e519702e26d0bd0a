"""How the pieces and pockets of a DXF drawing fit, by another library (shapely): check_fit.py FILE.dxf RADIUS CLEARANCE
prints {"pieces": n, "nearest": mm, "unreached": mm2, "pocket_unreached": mm2, "off": mm}: the shortest way between two
pieces; what a cutter of RADIUS does not reach beside a piece, and in the pockets; how far the pockets' outlines lie from
those of all pieces grown by CLEARANCE, the greatest way either way."""
import json
import math
import sys

import ezdxf
from shapely.geometry import LineString, Polygon
from shapely.ops import unary_union
from shapely.strtree import STRtree

CHORD = 2e-5  # mm between an arc and the chords that stand for it
SEGMENTS = 128  # of a quarter circle that an offset makes


def arc_points(a, b, bulge):
    """Points of the arc from a to b, b left out (DXF: bulge is the tangent of a quarter of the arc's angle)."""
    angle = 4 * math.atan(bulge)
    chord = math.dist(a, b)
    radius = chord / 2 / abs(math.sin(angle / 2))
    n = max(1, math.ceil(abs(angle) / (2 * math.acos(1 - min(0.5, CHORD / radius)))))
    middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
    rise = chord / 2 / math.tan(angle / 2)
    centre = [middle[0] - (b[1] - a[1]) / chord * rise, middle[1] + (b[0] - a[0]) / chord * rise]
    start = math.atan2(a[1] - centre[1], a[0] - centre[0])
    return [(centre[0] + radius * math.cos(start + angle * k / n), centre[1] + radius * math.sin(start + angle * k / n))
            for k in range(n)]


def outline_of(entity):
    if entity.dxftype() == "CIRCLE":
        c, r = entity.dxf.center, entity.dxf.radius
        n = math.ceil(math.pi / math.acos(1 - CHORD / r))
        return [(c.x + r * math.cos(2 * math.pi * k / n), c.y + r * math.sin(2 * math.pi * k / n)) for k in range(n)]
    points, flat = list(entity.get_points("xyb")), []
    for i, (x, y, bulge) in enumerate(points):
        after = points[(i + 1) % len(points)]
        flat += arc_points((x, y), after[:2], bulge) if bulge else [(x, y)]
    return flat


def nested(outlines):
    """Outer outlines with their holes: an outline in an odd number of others is a hole."""
    polygons = sorted((Polygon(o) for o in outlines), key=lambda p: -p.area)
    found = []
    for polygon in polygons:
        inside = polygon.representative_point() if not found else polygon.exterior.interpolate(0.5, normalized=True)
        around = [k for k, (outer, holes) in enumerate(found) if outer.contains(inside)]
        holes_around = sum(1 for k in around for hole in found[k][1] if Polygon(hole).contains(inside))
        if len(around) > holes_around:
            found[around[-1]][1].append(list(polygon.exterior.coords))
        else:
            found.append((polygon, []))
    return [Polygon(outer.exterior.coords, holes) for outer, holes in found]


def part_area(shape):
    """Without slivers thinner than the offsets' own noise."""
    parts = getattr(shape, "geoms", [shape])
    return sum(p.area for p in parts if p.area > 0 and 2 * p.area > 1e-4 * p.length)


def grown(shape, by):
    return shape.buffer(by, resolution=SEGMENTS)


def farthest(lines, other):
    """The greatest way from a vertex of the lines to the other outline."""
    pieces = [LineString(pair) for line in other for pair in zip(line.coords, line.coords[1:])]
    tree, worst = STRtree(pieces), 0
    from shapely.geometry import Point
    for line in lines:
        for x, y in line.coords:
            point = Point(x, y)
            near = tree.query(point.buffer(0.01))
            worst = max(worst, min((point.distance(piece) for piece in near), default=0.01))
    return worst


def rings(shape):
    return [ring for p in getattr(shape, "geoms", [shape]) for ring in [p.exterior, *p.interiors]]


def main(path, radius, clearance):
    layers = {}
    for entity in ezdxf.readfile(path).modelspace():
        layer = "piece" if entity.dxf.layer.startswith("piece-") else entity.dxf.layer
        if layer == "pocket" or layer == "piece":
            layers.setdefault(layer, []).append(outline_of(entity))
    pieces, pockets = nested(layers["piece"]), unary_union(nested(layers["pocket"]))
    nearest = min((a.distance(b) for i, a in enumerate(pieces) for b in pieces[:i]
                   if a.envelope.distance(b.envelope) < 2), default=2)
    unreached = max(part_area(grown(grown(p, radius), -radius).difference(p)) +
                    part_area(p.difference(grown(grown(p, -radius), radius))) for p in pieces)
    pocket_unreached = part_area(pockets.difference(grown(grown(pockets, -radius), radius)))
    wanted = unary_union([grown(p, clearance) for p in pieces])
    off = max(farthest(rings(pockets), rings(wanted)), farthest(rings(wanted), rings(pockets)))
    print(json.dumps({"pieces": len(pieces), "nearest": nearest, "unreached": unreached,
                      "pocket_unreached": pocket_unreached, "off": off}))


main(sys.argv[1], float(sys.argv[2]), float(sys.argv[3]))
