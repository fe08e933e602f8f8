"""Reads a DXF file with ezdxf and prints as JSON what it found, audit included."""

import json
import math
import sys

import ezdxf
from ezdxf.colors import DXF_DEFAULT_COLORS, int2rgb
from ezdxf.lldxf.encoding import decode_dxf_unicode
from ezdxf.tools.text import plain_text


def point(p):
    return [p.x, p.y]


def arc(e):
    sweep = (e.dxf.end_angle - e.dxf.start_angle) % 360
    middle = math.radians(e.dxf.start_angle + sweep / 2)
    center, radius = e.dxf.center, e.dxf.radius
    return [
        point(e.start_point),
        [center.x + radius * math.cos(middle), center.y + radius * math.sin(middle)],
        point(e.end_point),
    ]


def points(e):
    kind = e.dxftype()
    if kind == "LINE":
        return [point(e.dxf.start), point(e.dxf.end)]
    if kind == "ARC":
        return arc(e)
    if kind == "CIRCLE":
        return [point(e.dxf.center)]
    if kind == "SOLID":
        return [point(p) for p in e.wcs_vertices()]
    if kind == "TEXT":
        return [point(e.get_pos()[1])]
    return []


def entity(e):
    found = {
        "type": e.dxftype(),
        "layer": e.dxf.layer,
        "lineType": e.dxf.linetype,
        "weight": e.dxf.lineweight,
        "points": points(e),
    }
    if e.dxftype() == "CIRCLE":
        found["radius"] = e.dxf.radius
    if e.dxftype() == "TEXT":
        found["text"] = plain_text(decode_dxf_unicode(e.dxf.text))
        found["height"] = e.dxf.height
        found["turn"] = e.dxf.rotation
        found["align"] = e.get_pos()[0]
        found["style"] = e.dxf.style
    return found


def line_type(t):
    pattern = [tag.value for tag in t.pattern_tags.tags if tag.code == 49]
    return {"name": t.dxf.name, "pattern": pattern}


doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
print(
    json.dumps(
        {
            "version": doc.dxfversion,
            "units": doc.units,
            "measurement": doc.header["$MEASUREMENT"],
            "faults": [e.message for e in audit.errors + audit.fixes],
            "layers": [
                {
                    "name": layer.dxf.name,
                    "lineType": layer.dxf.linetype,
                    "weight": layer.dxf.lineweight,
                    "colour": int2rgb(DXF_DEFAULT_COLORS[layer.dxf.color]),
                }
                for layer in doc.layers
            ],
            "lineTypes": [line_type(t) for t in doc.linetypes],
            "entities": [entity(e) for e in doc.modelspace()],
        }
    )
)
