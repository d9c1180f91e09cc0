"""truetype.py FONT LETTERS OUTPUT

Writes the letters of a font as TrueType: a smaller file that the screen and the PDF share, because
the writer of PDF takes no outlines of cubic curves (CFF). LETTERS is a file that has, beside
comments, first and last code points in hexadecimal. The same input gives the same bytes."""

import re
import sys

from fontTools import subset
from fontTools.pens.cu2quPen import Cu2QuPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont, newTable

# Farthest that a curve may be from the one it stands for, in units of the font (B612: 2000 an em,
# so 0.026 of a point at 26 points).
CLOSE = 2.0

# Copyright, family, style, unique and full name, name in PostScript, licence and its address.
KEPT_NAMES = [0, 1, 2, 3, 4, 6, 13, 14]


def code_points(path):
    with open(path, encoding="ascii") as file:
        plain = re.sub(r"//.*", "", file.read())
    ends = [int(code, 16) for code in re.findall(r"0x[0-9A-Fa-f]+", plain)]
    if not ends or len(ends) % 2:
        sys.exit(f"{path} has no pairs of first and last code points")
    return [code for first, last in zip(ends[::2], ends[1::2]) for code in range(first, last + 1)]


def keep_letters(font, letters):
    options = subset.Options()
    options.layout_features = []
    options.name_IDs = KEPT_NAMES
    options.notdef_outline = True
    options.glyph_names = False
    options.hinting = False
    options.recalc_timestamp = False
    options.drop_tables += ["GDEF", "GPOS", "GSUB", "VORG"]
    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=letters)
    subsetter.subset(font)


def with_quadratic_curves(font):
    drawn = font.getGlyphSet()
    order = font.getGlyphOrder()
    font["loca"] = newTable("loca")
    table = font["glyf"] = newTable("glyf")
    table.glyphOrder = order
    table.glyphs = {}
    for name in order:
        pen = TTGlyphPen(None)
        drawn[name].draw(Cu2QuPen(pen, CLOSE, reverse_direction=True))
        glyph = table.glyphs[name] = pen.glyph()
        glyph.recalcBounds(table)
        font["hmtx"][name] = (font["hmtx"][name][0], getattr(glyph, "xMin", 0))
    del font["CFF "]
    limits = font["maxp"] = newTable("maxp")
    limits.tableVersion = 0x00010000
    limits.numGlyphs = len(order)
    limits.maxZones = 1
    for name in ("TwilightPoints", "Storage", "FunctionDefs", "InstructionDefs", "StackElements",
                 "SizeOfInstructions", "ComponentElements"):
        setattr(limits, "max" + name, 0)
    font["post"].formatType = 3.0
    font.sfntVersion = "\0\1\0\0"


def main(source, letters, output):
    font = TTFont(source, recalcTimestamp=False, lazy=False)
    keep_letters(font, code_points(letters))
    if "CFF " in font:
        with_quadratic_curves(font)
    font.save(output)


if len(sys.argv) != 4:
    sys.exit(__doc__)
main(*sys.argv[1:])
