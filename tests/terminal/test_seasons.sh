#!/bin/sh
# Looking back over invented seasons of 300 jars each: the years beside one another,
# the figures of one, browsing, searching and opening, in four windows.  Some names
# in it carry escape sequences; none of them may reach the terminal.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"
: "${SUPPORT:?SUPPORT must name the folder of the helper programs}"

log=$logs/log.db
# Lots carry the local day of their making, and the kit's zone follows the hour.
TZ=UTC "$SUPPORT/make_seasons" "$log" 2022 3 300 || exit 1

at="reports"
"$STILLROOM" seasons -f "$log" >"$own/seasons"
holds "$own/seasons" "By year: busiest station" "kettle" "2024          300      40" "By year: jars" "By year: lids that did not seal" "By year: mean come-up"
"$STILLROOM" season 2023 -f "$log" >"$own/season"
holds "$own/season" "300 jars in 40 loads, from 20 batches and 7 juicer runs" "Lids not sealed, by lid box" \
	"CLEARLY MORE" "Stations, busiest first" "Come-up times, loads" "?[31m"
"$STILLROOM" season 2023 --json -f "$log" >"$own/json"
holds "$own/json" '"season": 2023' '"by_lid_box": [' '"clearly_more": true'
is "escapes in reports" "$(cat "$own/seasons" "$own/season" "$own/json" | tr -d '\n\t -~' | tr -d '\200-\377' | wc -c | tr -d ' ')" 0
"$STILLROOM" season 1999 -f "$log" >"$own/none" 2>"$own/why"
is "a year without work" "$? $(cat "$own/why")" "1 stillroom: Nothing was made in 1999."
"$STILLROOM" season twenty -f "$log" >"$own/none" 2>"$own/why"
is "no year" "$?" 2

open_board() {
	open_window "$1" "$2" "$3" "$4 '$STILLROOM' $5 -f '$log'"
	wait_for "4,650 ft"
}

at="the years"
open_board main 80 24 "" ""
press y
wait_for "By year: jars" "2024" "2022" "300" "Space its figures" "/ search"
press Right
wait_for "By year: lids that did not seal" "% ("
press Right
wait_for "By year: juice by weight of fruit" "qt/10 lb"
press Left Left
wait_for "By year: jars"
press Left
wait_for "By year: packages of dried food"
press Left
wait_for "By year: busiest station" "Low kettle" "40 loads, 300 jars"
press Right Right
wait_for "By year: jars"

at="one year"
press Down
press Space
wait_for "Season 2023" "300 jars in 40 loads" "Lids not sealed, by product" "CLEARLY MORE" "Left year before"
press Left
wait_for "Season 2022"
press Left
wait_for "There is no earlier year."
press Right
wait_for "Season 2023"
press Space
wait_for "Stations, busiest first" "Low kettle"
press PageDown
wait_for "Come-up times, loads" "came up within"

at="browsing"
press b
wait_for "2023" "peaches" "grape jelly" "7 jars"
first=$(sed -n '3s/^ *▌ *//p' "$screen") # without the cursor, which need not come back to it
press PageDown
wait_for "batch"
press PageUp
wait_for "${first:?}"
press Right
wait_for "2024-10"
press Right
wait_for "All years"

at="narrowed"
press s
wait_for "Show which ones?"
type_text restor
press BSpace BSpace BSpace BSpace BSpace BSpace
type_text pressure
wait_for "boil or pressure lost"
press Enter
wait_for "All years, boil or pressure lost" "restart"
press Space
wait_for "was lost after 4:00" "full time again" "Lids: " "no proof of safety"
press Escape
wait_for "All years, boil or pressure lost"
press c
wait_gone "boil or pressure lost"

at="words"
press /
wait_for "Search for:"
type_text 'oft ella'
press Enter
wait_for 'with: oft ella' "batch"
press Space
wait_for "Note: Soft after a week ?[2J in the cellar" "1 x grape jelly" "regular pectin" "8 half-pints" "batch started"
press n
wait_for "Note:"
press Down # else what is typed takes its place, as anywhere
type_text '; opened in spring, marvellous'
press Enter
wait_for "in the cellar; opened in spring, marvellous" "Noted; it can be searched for."
press l
wait_for "All years, with: 202" "load" "batch"
press /
press C-u
type_text 'MARVELLOUS spring'
press Enter
wait_for "with: MARVELLOUS spring" "batch"
lacks "No matches"

at="signs that mean something elsewhere"
for typed in '"' '*' 'AND' 'soft OR' '(' 'NEAR(' 'words:' '^x' '-' '--;' '%s'; do
	press /
	press C-u
	type_text "$typed"
	press Enter
	wait_for "with: $typed"
	lacks "syntax" "SQLite"
done
# A sign is looked for as it stands.
press /
press C-u
type_text '%'
press Enter
wait_for "with: %" "No matches."
press /
press C-u
type_text ';'
press Enter
wait_for "with: ;" "batch"
lacks "No matches"
# Too many words: what was looked for before stays, and what it found.
press /
press C-u
type_text 'marvellous'
press Enter
wait_for "with: marvellous" "batch"
press /
press C-u
type_text 'a b c d e f g h i j k l m'
press Enter
wait_for "Search for at most 12 words." "with: marvellous" "batch"
press Escape
wait_gone "Search for:"
shows "with: marvellous" "batch"
lacks "with: a b c"
press /
press C-u
type_text 'zebra'
press Enter
wait_for "No matches."
press Escape
wait_for "By year"
press Escape
wait_for "1 Big kettle"

at="from the years to a lot"
press y
press /
type_text '2024-09-07-B2'
press Enter
wait_for "with: 2024-09-07-B2" "peaches"
is "lines found" "$(grep -c '^.\{3\}2024' "$screen")" 1
close_window main

at="a small window"
open_board small 40 12 "" ""
press y
wait_for "By year: jars" "2024"
press Space
wait_for "Season 2024"
press Escape
wait_for "By year"
press b
wait_for "peaches: 7 jars"
press Space
wait_for "Load, 2024"
close_window small

at="a wide one, without color, in ASCII"
open_board wide 120 40 "NO_COLOR=1" "--ascii"
press y
wait_for "By year: jars" "####"
press Space
wait_for "Season 2024" "Come-up times, loads" "---"
is "characters beyond ASCII" "$(tr -d '\n -~' <"$screen" | wc -c | tr -d ' ')" 0
press b
wait_for "> 2024"
close_window wide
whole "$log"

at="from a notebook, with years between"
printf 'kitchen "Another"\nelevation 4650 ft\ncanner 1 boiling_water "Big kettle" pint=9\n' >"$own/new.kitchen"
printf '%s\n' "Product,Date,Jars,Size" "Plums,2012-09-02,9,pint" "Grape jelly,2016-09-02,6,pint" >"$own/notebook.csv"
"$STILLROOM" setup "$own/new.kitchen" -f "$logs/note.db" >/dev/null || exit 1
"$STILLROOM" import csv "$own/notebook.csv" -f "$logs/note.db" --yes >/dev/null || exit 1
log=$logs/note.db
"$STILLROOM" seasons -f "$log" >"$own/seasons"
holds "$own/seasons" "  2013-2015  "
open_board old 80 24 "NO_COLOR=1" "--ascii"
press y
wait_for "By year: jars" "2016" "2012"
# five years stand in the line by year: 2012 under the first column, 2016 under the fifth
is "years under the line" "$(sed -n '$d;/^ 2012  *2016/p' "$screen" | sed 's/ *$//')" " 2012                            2016"
press b
wait_for "Grape jelly"
press Space
wait_for "What was done, oldest first" "It was imported; its story stayed where it was written."
close_window old
finish
