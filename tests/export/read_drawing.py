"""Reads DXF files (through ezdxf, with its audit) and SVG files and prints the figures of each as JSON, by its name:
{"errors": [...], "unit": "mm", "size": [w, h], "layers": {name: [{"closed": bool, "points": [[x, y, bulge], ..]} or
{"circle": [x, y, r]} or {"closed": bool, "ellipse": [x, y, major x, major y, ratio]}]}}. y upward in all."""
import json
import math
import re
import sys
import xml.etree.ElementTree as xml


def read_dxf(path):
    import ezdxf
    document = ezdxf.readfile(path)
    audit = document.audit()
    layers = {}
    for entity in document.modelspace():
        kind = entity.dxftype()
        if kind == "CIRCLE":
            centre = entity.dxf.center
            figure = {"circle": [centre.x, centre.y, entity.dxf.radius]}
        elif kind == "ELLIPSE":
            whole = math.isclose(entity.dxf.end_param - entity.dxf.start_param, 2 * math.pi, rel_tol=1e-12)
            centre, major = entity.dxf.center, entity.dxf.major_axis
            figure = {"ellipse": [centre.x, centre.y, major.x, major.y, entity.dxf.ratio], "closed": whole}
        elif kind == "LINE":
            a, b = entity.dxf.start, entity.dxf.end
            figure = {"closed": False, "points": [[a.x, a.y, 0], [b.x, b.y, 0]]}
        elif kind == "LWPOLYLINE":
            figure = {"closed": entity.closed, "points": [list(p) for p in entity.get_points("xyb")]}
        elif kind == "POLYLINE":
            points = [[v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0)] for v in entity.vertices]
            figure = {"closed": entity.is_closed, "points": points}
        else:
            figure = {"other": kind}
        layers.setdefault(entity.dxf.layer, []).append(figure)
    errors = [str(e.message) for e in audit.errors + audit.fixes]
    unit = {4: "mm", 0: "none"}.get(document.header.get("$INSUNITS", 0), "other")
    defined = sorted(layer.dxf.name for layer in document.layers)
    return {"errors": errors, "version": document.dxfversion, "unit": unit, "layers": layers, "defined": defined}


def bulge_of(a, b, radius, large, clockwise_down):
    half = math.asin(min(1, math.dist(a, b) / 2 / radius))
    angle = 2 * (math.pi - half if large else half)
    return math.tan(angle / 4) * (-1 if clockwise_down else 1)


def path_figure(data):
    words = re.findall(r"[MLAZ]|-?[0-9.]+", data)
    points, closed, at = [], False, 0
    while at < len(words):
        word = words[at]
        if word in "ML":
            points.append([float(words[at + 1]), -float(words[at + 2]), 0])
            at += 3
        elif word == "A":
            radius, large, sweep = float(words[at + 1]), words[at + 4] == "1", words[at + 5] == "1"
            end = [float(words[at + 6]), -float(words[at + 7])]
            points[-1][2] = bulge_of(points[-1][:2], end, radius, large, sweep)
            points.append(end + [0])
            at += 8
        elif word == "Z":
            closed = True
            at += 1
        else:
            raise ValueError(data)
    if closed and math.dist(points[0][:2], points[-1][:2]) < 1e-9:
        points.pop()
    return {"closed": closed, "points": points}


def read_svg(path):
    root = xml.parse(path).getroot()
    space = "{http://www.w3.org/2000/svg}"
    layers = {}
    for group in root.findall(space + "g"):
        figures = layers.setdefault(group.get("id"), [])
        for element in group:
            if element.tag == space + "circle":
                figures.append({"circle": [float(element.get("cx")), -float(element.get("cy")), float(element.get("r"))]})
            else:
                figures.append(path_figure(element.get("d")))
    width, height = root.get("width"), root.get("height")
    box = [float(n) for n in root.get("viewBox").split()]
    unit = "mm" if width.endswith("mm") and height.endswith("mm") else "other"
    size = [float(width[:-2]), float(height[:-2])]
    return {"errors": [], "unit": unit, "size": size, "box": box, "layers": layers}


print(json.dumps({path: (read_svg if path.endswith(".svg") else read_dxf)(path) for path in sys.argv[1:]}))
