#!/bin/sh
# Labels from the board, by a key in the day view and at the seal check; and an import
# taken back in the house view.
set -u
: "${SUPPORT:?SUPPORT must name the support programs}"
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

log=$logs/log.db
TZ=UTC "$SUPPORT/season" "$log" open || exit 1
printf 'product,date,jars,size,lot\n"Peaches <in> syrup\033",%s,7,quarts,\n' "$(date +%F)" >"$own/bad.csv"
printf 'product,date,jars,size,lot\n"Peaches <in> syrup",%s,7,quarts,../x\n' "$(date +%F)" >"$own/notebook.csv"

at="a notebook"
"$STILLROOM" import csv "$own/bad.csv" -f "$log" --yes >"$screen" 2>&1
is "exit status" "$?" 3
"$STILLROOM" import csv "$own/notebook.csv" -f "$log" --yes >"$screen" 2>&1
is "exit status" "$?" 0
open_window main 80 24 "'$STILLROOM' -f '$log'"
wait_for "1 Big kettle" "0 2026-09-17-B1"

at="the day"
press d
wait_for "load: 7 jars Peaches <in> syrup, minutes not noted, unknown" "l labels"
press l
wait_for "7 labels on 1 sheet:" "labels----x.html" "/" # its path from the root
holds "$logs/labels----x.html" "DO NOT EAT. PROCESS UNKNOWN: written in a notebook, not by this program; nobody noted whose recipe it was; it is not a food in the published tables; nobody noted whether it was packed hot or raw; nobody noted the canner; nobody noted the elevation; nobody noted the time." \
	"Peaches &#60;in&#62; syrup"
press Escape

at="once more does not write over it"
press d
wait_for "load: 7 jars"
press l
wait_for "labels----x-2.html"
press Escape

at="the seal check"
wait_for "0 2026-09-17-B1"
press 0
wait_like "^[^ 0-9]0 2026-09-17-B1"
step
wait_for "Jar 1: unchecked, no liquid lost"
press l
wait_for "3 jars, and none has sealed yet"
press e
wait_for "All checked: by which?"
press p t y Space
wait_for "All others are sealed."
press l
wait_for "3 labels on 1 sheet:"
holds "$logs/labels-2026-09-17-B1.html" "still cooling" "best by 2027-09-1"
press Escape

at="the import taken back"
press h
wait_for "Quince Hollow"
press u
wait_for "Undone: Imported from notebook.csv: 1 lot, 1 load, 7 jars"
press Escape
press d
wait_for "nothing was started"
is "jars of the notebook" "$("$STILLROOM" jars --all --json -f "$log" | grep -c '"lot": "../x"')" 0
press Escape
press q
wait_for "Leave the board?"
press y
ends main 0
finish
