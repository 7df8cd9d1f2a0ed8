#!/bin/sh
# Sheets of labels in three formats, read back by parsers that know nothing of us:
# 1, 24 and 500 labels, several copies, a used sheet, names that try to break out.
set -u
# shellcheck source=tests/report/out/out_kit.sh
. "$(dirname "$0")/../out/out_kit.sh"
python_with html.parser xml.etree.ElementTree

cat >"$own/parse.py" <<'END'
"""labels in an HTML document or an SVG picture, each as (x, y, its lines); mm."""
import re
import sys
from html.parser import HTMLParser
from xml.etree import ElementTree

VOID = {"meta", "br", "link"}

class Html(HTMLParser):
    def __init__(self):
        super().__init__()
        self.open, self.labels, self.sheets, self.cautions, self.tags = [], [], 0, 0, set()

    def handle_starttag(self, tag, attrs):
        attrs = dict(attrs)
        kind = attrs.get("class", "")
        self.tags.add(tag)
        if tag not in VOID:
            self.open.append(tag)
        if kind == "sheet":
            self.sheets += 1
        elif kind == "label":
            x, y = re.fullmatch(r"left: ([\d.]+)mm; top: ([\d.]+)mm", attrs["style"]).groups()
            self.labels.append((float(x), float(y), []))
        elif kind == "cautions":
            self.cautions += 1
        elif tag == "p":
            self.labels[-1][2].append("")

    def handle_endtag(self, tag):
        assert self.open.pop() == tag, tag

    def handle_data(self, data):
        if self.open and self.open[-1] == "p":
            self.labels[-1][2][-1] += data

def html(path):
    parser = Html()
    parser.feed(open(path, encoding="utf-8").read())
    parser.close()
    assert parser.open == [], parser.open
    assert parser.tags <= {"html", "head", "meta", "title", "style", "body", "div", "p", "section", "h1", "ul", "li"}
    return parser

def svg(path):
    name = "{http://www.w3.org/2000/svg}"
    root = ElementTree.parse(path).getroot()
    assert root.tag == name + "svg"
    width, height = (int(n) for n in root.get("viewBox").split()[2:])
    assert root.get("width") == "%d.%03dmm" % divmod(width, 1000)
    labels = []
    for label in root.findall(name + "svg"):
        x, y, w, h = (int(label.get(k)) for k in ("x", "y", "width", "height"))
        assert x + w <= width and y + h <= height and label.get("overflow") == "hidden"
        for text in label.findall(name + "text"):
            assert 0 < int(text.get("y")) <= h, (text.get("y"), h)
        labels.append((x / 1000, y / 1000, [t.text for t in label.findall(name + "text")]))
    return labels
END
export PYTHONPATH="$own" PYTHONDONTWRITEBYTECODE=1

for jars in 1 24 500; do
	log=$own/$jars.db
	"$SUPPORT/season" "$log" jars "$jars" || bad "no log of $jars jars"
	gives 0 labels --all -f "$log" -o "$own/$jars.html"
	says "$jars label"
	checks "$jars labels in HTML" "$own/$jars.html" "$jars" <<'END'
import sys, parse
page, wanted = parse.html(sys.argv[1]), int(sys.argv[2])
assert len(page.labels) == wanted, len(page.labels)
assert page.sheets == -(-wanted // 10), page.sheets # two by five
assert page.cautions == 1
for x, y, lines in page.labels:
    assert lines == ["grape jelly", "2026-09-14 · lot 2026-09-14-B1", "half-pint · boiling-water canner · 15 min",
                     "4,650 ft (1,417 m) · best by 2027-09-14 · invented data"], lines
END
	gives 0 labels --all -f "$log" --format text -o "$own/$jars.txt"
	checks "$jars labels as text" "$own/$jars.txt" "$jars" <<'END'
import sys
text, wanted = open(sys.argv[1], encoding="utf-8").read(), int(sys.argv[2])
assert text.count("grape jelly") == text.count("lot 2026-09-14-B1") == text.count("best by 2027-09-14") == wanted
*sheets, cautions = text.split("\f")
assert len(sheets) == -(-wanted // 10)
for sheet in sheets:
    lines = sheet.split("\n")
    assert len(lines) <= 66 and max(map(len, lines)) <= 85, (len(lines), max(map(len, lines)))
assert cautions.count("Never taste") == text.count("Never taste") == 1
END
	gives 0 labels --all -f "$log" --format svg --grid 3x10 --margin 12.7mm,5mm --gap 3mm,0 -o "$own/$jars.svg"
	checks "$jars labels in SVG" "$own" "$jars" <<'END'
import glob, os, sys, parse
folder, wanted = sys.argv[1], int(sys.argv[2])
sheets = -(-wanted // 30)
names = ["%s/%d.svg" % (folder, wanted)] if sheets == 1 else ["%s/%d-%02d.svg" % (folder, wanted, i + 1) for i in range(sheets)]
assert sorted(glob.glob("%s/%d*.svg" % (folder, wanted))) == sorted(names + ["%s/%d-cautions.svg" % (folder, wanted)])
counts = [len(parse.svg(name)) for name in names]
assert sum(counts) == wanted and all(n == 30 for n in counts[:-1]), counts
assert parse.svg("%s/%d-cautions.svg" % (folder, wanted)) == []
END
done

# --- copies, and a sheet of which some labels are used up ----------------------------

gives 0 labels --all -f "$own/24.db" --copies 3 --start 8 -o "$own/copies.html"
says "72 labels on 8 sheets"
checks "copies from the eighth label on" "$own/copies.html" "$own/24.html" <<'END'
import sys, parse
used, whole = parse.html(sys.argv[1]), parse.html(sys.argv[2])
assert len(used.labels) == 72 and used.sheets == 8
assert used.labels[0][:2] == whole.labels[7][:2]
END

# --- what is refused ---------------------------------------------------------------------

gives 2 labels --all -f "$own/24.db" --grid 9x20
says "is the smallest that fits the text"
gives 2 labels --all -f "$own/24.db" --start 11
says "there is no label 11"
gives 2 labels --all -f "$own/24.db" --copies 51
gives 2 labels --all -f "$own/24.db" --format svg
says "--out"
gives 2 labels --all -f "$own/24.db" --format text --grid 3x10 --margin 12.7mm,5mm
says "in plain text such a label would be"
gives 2 labels --all --lot X -f "$own/24.db"
gives 1 labels --lot X -f "$own/24.db"
says 'There is no lot "X"'
gives 3 labels --all -f "$own/24.db" -o "$own/24.db"
says "already exists and was not changed"
gives 3 labels --all -f "$own/24.db" -o "$own/24.html"
gives 0 labels --all -f "$own/24.db" -o "$own/24.html" --yes
# A picture of several sheets comes whole or not at all.
rm "$own/500-01.svg"
gives 3 labels --all -f "$own/500.db" --format svg --grid 3x10 --margin 12.7mm,5mm -o "$own/500.svg"
if [ -e "$own/500-01.svg" ]; then bad "a sheet was written beside those that were there"; else good; fi

# --- names that try to break out ------------------------------------------------------------

"$SUPPORT/season" "$own/names.db" || bad "no log of names"
for format in html text; do
	gives 0 labels --all --every-jar -f "$own/names.db" --format $format
	cp "$own/out" "$own/names.$format"
done
gives 0 labels --all --every-jar -f "$own/names.db" --format svg --grid 1x10 -o "$own/names.svg"
tame "$own/names.html" "$own/names.text" "$own/names-01.svg"
checks "hostile names are only words" "$own" <<'END'
import sys, parse
names = {label[2][0] for label in parse.html(sys.argv[1] + "/names.html").labels}
assert "=1+1 <b>&\"'?[31m]]>  red, é??" in names, names
assert "桃ジャム مربى gelée d'été" in names, names
labels = parse.svg(sys.argv[1] + "/names-01.svg") + parse.svg(sys.argv[1] + "/names-02.svg")
assert "=1+1 <b>&\"'?[31m]]>  red, é??" in {label[2][0] for label in labels}
END

# --- the configuration ------------------------------------------------------------------------

mkdir -p "$own/config/stillroom"
printf 'label_page = a4\nlabel_grid = 3x8\nlabel_margin = 0\nlabel_gap = 0\nlabel_format = svg\n' >"$own/config/stillroom/config"
XDG_CONFIG_HOME=$own/config
export XDG_CONFIG_HOME
gives 0 labels --all -f "$own/24.db" -o "$own/configured"
checks "the configured sheet" "$own/configured" <<'END'
import sys, parse
labels = parse.svg(sys.argv[1])
assert len(labels) == 24
assert {x for x, y, lines in labels} == {0, 70, 140} and {y for x, y, lines in labels} == {i * 37.125 for i in range(8)}
END
gives 0 labels --all -f "$own/24.db" --format html --grid 2x8 # options outrank it
printf 'label_grid = 3 by 8\n' >"$own/config/stillroom/config"
gives 1 labels --all -f "$own/24.db"
says "config:1: \"3 by 8\" is not a grid"

# Packages of dried food, whole: no process, no vacuum, their own best-by.
rm "$own/config/stillroom/config"
printf 'kitchen "Quince Hollow"\ninvented yes\n' >"$own/dried.kitchen"
cat >"$own/dried.csv" <<'END'
product,date,jars,size,method,pack,lot
Plum leather,2021-09-12,2,package,dried,leather,L1
END
gives 0 setup "$own/dried.kitchen" -f "$own/dried.db"
gives 0 import csv "$own/dried.csv" -f "$own/dried.db" --yes
gives 0 labels --lot L1 -f "$own/dried.db" --format text
tr -d '\f' <"$own/out" | sed -n 's/^ *//; /^Before/q; /./p' >"$own/laid"
cat >"$own/wanted" <<'END'
Plum leather                          Plum leather
2021-09-12 · lot L1                   2021-09-12 · lot L1
package · dried                       package · dried
best by 2021-10-12 · invented data    best by 2021-10-12 · invented data
END
same "$own/wanted" "$own/laid"
finish
