#!/bin/sh
# What only the house knows is asked for and never guessed: the sheet of a
# low-methoxyl pectin on the batch card, a juicer's water before its run.  80 x 24,
# then the card at 40 x 12.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

log=$logs/log.db
cat >"$own/new.kitchen" <<'LINES'
kitchen   "Quince Hollow"
invented  yes
elevation 4650 ft
canner    1 boiling_water "Big kettle" pint=9
juicer    4 "Tall juicer"
pot       6 "Wide pot" "8 qt"
helper    MK
run       "grapes" "12 lb"
LINES
"$STILLROOM" setup "$own/new.kitchen" -f "$log" >/dev/null || exit 1

# typed TEXT NEXT: the answer, then the question or words that follow.
typed() {
	type_text "$1"
	press Enter
	wait_for "$2"
}

open_window main 80 24 "'$STILLROOM' -f '$log'"
wait_for "6 Wide pot"

at="the sheet is asked for, field by field"
go 6
step
wait_for "What are you cooking?" "grape jelly, low sugar, low-methoxyl pectin  (asks for its sheet)"
type_text grapejellylow
wait_for "grapejellylow_"
press Enter
wait_for "Pectin          _" "Type an amount with tsp, tbsp or g." "one batch: 1 qt grape juice, 2 cups"
typed 5 'Not "5": type an amount with tsp, tbsp or g.'
press C-u
typed "5 tsp" "Calcium         _"
typed "3 tsp" "Acid            _"
typed lemons 'Not "lemons": type an amount and lemon juice, citric acid or vinegar, or none.'
press C-u
typed none "Batches         _"

at="left half way nothing is kept"
press Escape
wait_for "What are you cooking?" "(asks for its sheet)"
type_text grapejellylow
wait_for "grapejellylow_"
press Enter
wait_for "Pectin          _"
typed "5 tsp" "Calcium         _"
typed "3 tsp" "Acid            _"
typed "2 tbsp lemon juice" "Batches         _"
typed 2 "Minutes         _"
typed 25 "kept as this kitchen's own. s changes it"

at="the card goes on with it"
wait_for "Which size?"
step
wait_for "5 tsp" "2 tbsp" "bottled lemon juice" "Its sheet: 25 min of process. The longer counts, this or the table's."

at="changed from the same card, and taken back"
press s
wait_for "Pectin          5 tsp_"
typed "6 tsp" "Calcium         1 tbsp_"
press Space
wait_for "Acid            2 tbsp"
press Escape
wait_for "  5 tsp"
press s
wait_for "Pectin          5 tsp_"
typed "6 tsp" "Calcium         1 tbsp_"
press Space
wait_for "Acid            2 tbsp"
press Space
wait_for "Batches         2_"
press Space
wait_for "Minutes         25_"
press Space
wait_for "kept as this kitchen's own. s changes it. (u undoes)"
press u
wait_for "The sheet's amounts of grape jelly, low sugar" "Which size?"
press s
wait_for "Pectin          5 tsp_"
press Escape
wait_for "Which size?"
press Escape

at="no plan of a run whose length nobody knows"
press p
wait_for "How long a juicer run takes here is not known" "in its times."
press Escape

at="no run without a look at its water"
go 4
step
wait_for "Water           _ min" "So that its pan never"
typed soon "Its water: a whole number from 1 to 600."
press C-u
typed 15 "Which fruit is in the basket?"
press C-u
typed grapes "How much of it?"
press C-u
typed "12 lb" "its water clock runs."
wait_like "4.Tall juicer .* water 1[45] min"
lacks "free ~"
press q
wait_for "Leave the board?"
press y
ends main 0
close_window main

at="the card in a small window"
open_window main 40 12 "'$STILLROOM' -f '$log'"
wait_for "6 Wide pot"
go 6
step
wait_for "What are you cooking?"
type_text applejellylow
wait_for "applejellylow_"
press Enter
wait_for "Pectin      _" "Type an amount with tsp,"
typed lots "Not \"lots\": type an amount"
press Escape
wait_for "What are you cooking?"
press Escape
press q
wait_for "Leave the board?"
press y
ends main 0
finish
