#!/bin/sh
# A browser lays the labels out: one page a sheet and one of cautions, and no word
# sticks out of its label.  Only where Chromium is installed.
set -u
# shellcheck source=tests/report/out/out_kit.sh
. "$(dirname "$0")/../out/out_kit.sh"

chromium=$(command -v chromium || command -v chromium-browser) || {
	echo "chromium is not installed"
	exit 77
}

browse() {
	"$chromium" --headless --no-sandbox --disable-gpu --user-data-dir="$own/profile" "$@" 2>/dev/null
}

# pages FILE: of a PDF.
pages() {
	LC_ALL=C tr '\r' '\n' <"$1" | LC_ALL=C grep -a -c '/Type */Page\([^s]\|$\)'
}

"$SUPPORT/season" "$own/names.db" || bad "no log"
"$SUPPORT/season" "$own/24.db" jars 24 || bad "no log"
gives 0 labels --all -f "$own/24.db" -o "$own/24.html"
gives 0 labels --all --every-jar -f "$own/names.db" --copies 2 -o "$own/names.html"
gives 0 labels --all --every-jar -f "$own/names.db" --page 80x40mm --grid 2x2 --margin 0 --gap 0 -o "$own/small.html"

browse --no-pdf-header-footer --print-to-pdf="$own/24.pdf" "file://$own/24.html"
if [ "$(pages "$own/24.pdf")" -eq 4 ]; then good; else bad "$(pages "$own/24.pdf") pages, not 3 and 1"; fi

# Each label's own measure of itself, written into the title.
for name in 24 names small; do
	sed 's|</body>|<script>\
let out = 0;\
for (const label of document.querySelectorAll(".label"))\
	out += label.scrollHeight > label.clientHeight \|\| label.scrollWidth > label.clientWidth;\
document.title = "labels that overflow: " + out;\
</script></body>|' "$own/$name.html" >"$own/$name-measured.html"
	browse --dump-dom "file://$own/$name-measured.html" >"$own/dom"
	if grep -q '<title>labels that overflow: 0</title>' "$own/dom"; then good; else
		bad "$name: $(grep -o '<title>[^<]*' "$own/dom")"
	fi
done

# The picture of a sheet is one, and its words are where the labels are.
gives 0 labels --all -f "$own/24.db" --format svg --grid 3x8 -o "$own/24.svg"
browse --screenshot="$own/24.png" --window-size=816,1056 "file://$own/24.svg"
if [ -s "$own/24.png" ]; then good; else bad "no picture of the SVG"; fi
finish
