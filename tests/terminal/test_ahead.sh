#!/bin/sh
# Before the day, on the real board: the shelf and its check, ledgers, a forecast
# and what to buy, in the usual window and in the smallest; and as commands.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

# Nothing is planned yet.
KITCHEN=$own/quince-hollow.kitchen
grep -vE '^(run|batch) ' "$REPO/demo/quince-hollow-day.kitchen" >"$KITCHEN"
real_log
answer_file=$own/answer.txt

# typed TEXT: into the line that is open, and Enter.
typed() {
	type_text "$1"
	press Enter
	last_key=
}

# stock NAME AMOUNT: as the command tells it.
stock() {
	is "$1" "$("$STILLROOM" supplies -f "$log" | sed -n "s/  *$1\\(, .*\\)*\$//p")" "$2"
}

board() {
	open_window main "$1" "$2" "$3 '$STILLROOM' -f '$log' $4"
}

at="the shelf"
board 80 24 "" ""
wait_for "4,650 ft" "? keys"
press g
wait_for "On the shelf" "60  half-pints" "2 qt  bottled lemon juice" "not counted  citric acid"
shows "lids Box A, spring" "Space ledger" "r received" "c count" "k check all" "f forecast"

at="a receipt and a count"
press Down # a line keeps its place, counted or not
press r
wait_for "Amount" "bought by"
typed 24
wait_for "84  half-pints" "Noted: 24 half-pints came in."
press c
wait_for "What            half-pints" "84_"
typed "five dozen"
wait_for "not an amount"
press C-u
typed "5 dozen"
wait_for "60  half-pints"
press i
wait_for "Who is counting"
typed KM
wait_for "noted by KM"

at="the shelf check goes line by line"
press k
wait_for "What            half-pints" "Found           60_" "Space keeps it"
press Space
wait_for "What            pints" "Found           72_"
typed 70
wait_for "What            quarts" "Found           28_"
press Space
wait_for "What            lids Box A, spring" "Found           60_"
typed 55
wait_for "What            lids Box B, summer" "Found           48_"
press Space
wait_for "What            sugar" "Found           40 lb_"
typed "38 lb"
wait_for "What            bottled lemon juice" "Found           2 qt_"
press Escape
wait_gone "Shelf check"
shows "70  pints" "55  lids Box A, spring" "38 lb  sugar"
stock "pints" 70
stock "sugar" "38 lb"

at="it ends with what is counted"
press k
wait_for "What            bottled lemon juice" "Found           2 qt_"
press Space
wait_for "What            fruit" "Found           150 lb_"
press Enter
wait_for "Shelf check: 0 counted, 2 kept."

at="the ledger of a line"
press Up Up Up Up Up Up Up Up Up Up Space # from the fruit
wait_for "sugar, newest first"
shows "-2 lb" "left 38 lb" "KM counted" "+40 lb" "came in"
press Escape
wait_for "On the shelf"

at="undo"
press u
wait_for "Undone: Supplies counted: 38 lb of sugar" "40 lb  sugar"

at="what one buys at a time"
press b
wait_for "Bought by       5 lb_" "Nothing: loose."
press C-u
typed "10 lb"
wait_for "bought by 10 lb"

at="a forecast"
press f
wait_for "Which fruit:"
typed gravel
wait_for "No recipe here is made from \"gravel\"."
press C-u
typed grapes
wait_for "How much of it"
typed "60 lb"
wait_for "[x] grape jelly" "13 (12-16)" "104 (96-160) half-pints" "loads 12 (11-18)"
shows "3.50 lb of fruit for a quart of juice (2.89 to 3.71), as published."
lacks "USDA AIB 539"
press @
wait_for "Source: grape juice, 3.5 lb a quart" "own runs 0"
press Escape
wait_for "[x] grape jelly"
press v
wait_for "One batch a pot: this recipe is not multiplied."
press Down Down Down
step
wait_for "[x] grape juice"
press Left
wait_for "batches 2, at most as asked"
press v
wait_for "Batches a pot, 1 to 2:"
typed 5
wait_for "Recipes and pots here allow 1 to 2 batches in one pot."
press C-u
typed 2
wait_for "batches 2, at most as asked, 2 in a pot"
press v
typed 1
wait_for "batches 2, at most as asked, quarts"
press Up Up Up j
wait_for "(24-50) pints"
press w
wait_for "How many pints of it:"
typed 60
wait_for "60 pints: 65 lb 10 oz of grapes"

at="what to buy"
press b
wait_for "To buy for the forecast of grapes" "uncounted" "screw bands" "enough"
press Escape
wait_for "Space choose"
press Escape
wait_for "On the shelf"
close_window main

at="the smallest window, without color"
board 40 12 "NO_COLOR=1" ""
wait_for "4,650 ft" "? keys"
press g
wait_for "On the shelf" "60  half-pints" "Space ledger"
press Down
press k
wait_for "half-pints" "60_ pieces" "Space keeps"
press Escape
press f
wait_for "Which fruit:"
typed grapes
wait_for "How much of it"
typed "60 lb"
wait_for "juice 4 gal 1 qt 1 cup" "[x] grape jelly" "batches 13 (12-16)"
press b
wait_for "To buy for" "M half-pints"
press Escape
wait_for "Space choose"
close_window main

at="plain ASCII in a large window"
board 120 40 "" --ascii
wait_for "4,650 ft" "? keys"
press g
wait_for "On the shelf" "i initials" "b bought by"
if LC_ALL=C grep -q '[^ -~]' "$screen"; then bad "not ASCII"; else good; fi
close_window main

at="beside a plan"
"$STILLROOM" setup "$REPO/demo/quince-hollow-day.kitchen" -f "$own/planned.db" >"$answer_file" || bad "no log with a plan"
"$STILLROOM" forecast -f "$own/planned.db" --fruit grapes --weight 60lb --product "grape jelly" >"$answer_file"
holds "$answer_file" "60 lb of grapes; 36 lb of it planned, for 32 jars. Of the other 24 lb:"
"$STILLROOM" shortage -f "$own/planned.db" --fruit grapes --weight 60lb --product "grape jelly" >"$answer_file"
holds "$answer_file" "To buy for the other 24 lb of grapes" "half-pints: likely 72, here 60, spoken for "

at="commands"
"$STILLROOM" forecast -f "$log" --fruit grapes --weight 60lb --product "grape jelly" >"$answer_file"
is "status" "$?" 0
holds "$answer_file" "60 lb of grapes" "  half-pints                               96              104              160"
"$STILLROOM" shortage -f "$log" --fruit grapes --product "grape jelly in pints" --want 200 >"$answer_file"
is "status" "$?" 0
holds "$answer_file" "To buy for 200 pints of grape jelly" "x 10 lb" "to be sure"
"$STILLROOM" shortage -f "$log" --fruit grapes --weight 60lb --product "grape jelly" --json >"$answer_file"
holds "$answer_file" '"name": "sugar"' '"sold_by": 4535.9'
"$STILLROOM" forecast -f "$log" --fruit apples --weight 60lb --product "grape jelly" >"$answer_file" 2>"$own/err"
is "status" "$?" 3
holds "$answer_file" "refused: grape jelly is not made from apples."
is "said twice" "$(cat "$own/err")" ""
"$STILLROOM" forecast -f "$log" --fruit grapes >"$answer_file" 2>&1
is "status" "$?" 2
whole "$log"
finish
