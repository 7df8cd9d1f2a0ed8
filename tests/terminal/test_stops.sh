#!/bin/sh
# Stops at the board, 80 x 24: what goes on only with a reason and is marked from
# then on, wherever it is shown; and warnings that a house turns off.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

# The demonstration kitchen of a full day, with pots large enough for two batches.
sed 's/^pot .* "\(Wide\|Deep\) pot" .*/pot \1/; s/^pot Wide/pot 6 "Wide pot" "16 qt"/; s/^pot Deep/pot 7 "Deep pot" "16 qt"/' \
	"$REPO/demo/quince-hollow-day.kitchen" >"$own/stops.kitchen"
KITCHEN=$own/stops.kitchen

# why TEXT: the reason that is asked for.
why() {
	press C-u
	type_text "$1"
	press Enter
}

# resize COLUMNS ROWS
resize() {
	tm resize-window -t "$window" -x "$1" -y "$2"
}

# warns ID: the report has it; warns_not ID: it has not.
warns() {
	"$STILLROOM" warnings --json -f "$practice" >"$own/warnings"
	holds "$own/warnings" "\"id\": \"$1\""
}

warns_not() {
	"$STILLROOM" warnings --json -f "$practice" >"$own/warnings"
	is "$1" "$(grep -c "\"id\": \"$1\"" "$own/warnings")" 0
}

practise 80 24 600
wait_for "6 Wide pot" "7 Deep pot"

at="juice brought in"
press j
wait_for "No juice in stock."
press n
wait_for "Of which fruit?"
type_text grape
press Enter
wait_for "How much?"
type_text "3 gal"
press Enter
wait_for "Hot, chilled or frozen?"
press Enter
wait_for "3 gal"
press Escape

at="two batches with regular pectin"
go 7
wait_for "Space start a batch"
step
wait_for "What are you cooking?"
type_text grapejelly
wait_for "grapejelly_"
press Enter
answer "Which jars and pack?"
answer "Which size?"
wait_for "How many batches in this pot?"
type_text 2
wait_for "regular pectin is made one batch a pot" "Make 2 separate batches."
step
wait_for "UNKNOWN, because (Esc: no):"

at="a reason that is none"
why ""
wait_for "UNKNOWN, because (Esc: no):" "regular pectin is made one batch a pot"
why "ab"
wait_for "Say in a word or two why; it stays with the jars." "UNKNOWN, because (Esc: no): ab"
why "   "
wait_for "UNKNOWN, because (Esc: no):"
warns_not batch-unknown

at="the reason at 40 x 12"
press C-u
type_text "two small"
resize 40 12
wait_for "UNKNOWN, because" "two small"
wait_for "Say in a word or two why"
resize 80 24
wait_for "UNKNOWN, because (Esc: no): two small"

at="with a reason it goes on"
type_text " burners"
press Enter
wait_for "The process of its jars will count as UNKNOWN." "Space starts the batch"
step
wait_for "Batch started"
press Escape
wait_chosen 7
wait_for "UNKNOWN: 2 x grape jelly"
warns batch-unknown
holds "$own/warnings" "2 batches in one pot: two small burners" '"severity": "caution"'

at="a caution is turned off and taken up"
press w
wait_for "the process of its jars counts as unknown" "o turn off"
lacks "t bring back" "batch-unknown"
press @
wait_for "Where this comes from: Warnings" "Rule: batch-unknown" "Source: "
press Escape
wait_for "the process of its jars counts as unknown" "o turn off"
lacks "batch-unknown"
press o
wait_for "No longer watched for in this house; t brings it back." "1 rule turned off here: @ names it." "t bring back"
press @
wait_for "Turned off in this house: a rule about a batch" "Rule: batch-unknown"
press Escape
wait_for "No longer watched for in this house; t brings it back." # what was said is said still
wait_gone "the process of its jars counts as unknown"
warns_not batch-unknown
press u
wait_for "Undone" "the process of its jars counts as unknown"
press r o
wait_gone "the process of its jars counts as unknown"
press t
wait_for "The last one turned off is watched for again." "the process of its jars counts as unknown"
wait_gone "turned off here"
warns batch-unknown
press Escape
wait_for "UNKNOWN: 2 x grape jelly"

at="tomatoes to the filling"
go 6
step
wait_for "What are you cooking?"
type_text crushedtomatoes
wait_for "crushedtomatoes_"
step
answer "Which size?"
wait_for "How many batches in this pot?"
step
wait_for "Space starts the batch"
step
wait_for "Batch started"
press Escape
wait_chosen 6
do_step boil-hold
wait_for "OFF the heat NOW"
do_step "off the heat"
do_step "fill the jars"
step
wait_for "Filled into which jars?"
press w
wait_for "Jars are hot."
lacks "NOT VALID"

at="no acid"
step
wait_for "How many?"
type_text 7
wait_for "7 pints"
step
answer "Lids from which box?"
wait_for "Is the bottled acid in EVERY jar? Space only if it is."
press n
wait_for "The acid goes in first (1 tbsp of bottled lemon juice)." "NOT VALID, because (Esc: no):"
why "no"
wait_for "Say in a word or two why; it stays with the jars."
at="Esc goes back and nothing is filled"
press Escape
wait_gone "On as NOT VALID"
warns_not batch-not-valid
shows "0 jars so far"
at="no acid, and why"
step
wait_for "NOT VALID, because (Esc: no):"
resize 40 12
wait_for "NOT VALID, because" "The acid goes in first"
why "the lemon juice ran out"
wait_for "7 jars filled."
resize 80 24
wait_for "NOT VALID: crushed tomatoes, 7 jars so far"
sleep 1.6 # a press this soon after the filling began does not count
press d
wait_for "The pot is empty: rinse it."
warns batch-not-valid
holds "$own/warnings" "acid not in every jar: the lemon juice ran out" '"severity": "stop"'

at="a stop is not turned off"
press w
wait_for "Whatever is filled from" "holds up shelving its loads"
lacks "o turn off" "batch-not-valid"
press @
wait_for "Whatever is filled from" "Rule: batch-not-valid"
press Escape
wait_for "holds up shelving its loads"
press o
wait_for "holds up shelving its loads"
lacks "is turned off in this house"
warns batch-not-valid
press Escape

at="their load"
go 1
step
wait_for "Filled jars that wait" "Where they go"
step
wait_for "Load started."
wait_for "NOT VALID: 7 pints crushed tomatoes"
is "verdict when loaded" "$(load_field verdict B2 "$practice")" not_valid
warns not-valid-cold
do_step come-up
do_step hold
wait_for "Space heat off, lid off"
do_step rest
wait_for "Space rest is over"
do_step unload
step
wait_for "The station is free."

at="never valid"
wait_for "ive every jar a fate" "NOT VALID: 7"
is "verdict after a full hold" "$(load_field verdict B2 "$practice")" not_valid
holds "$own/warnings" "the lemon juice ran out"
warns process-not-valid
"$STILLROOM" loads --all --json -f "$practice" >"$own/loads"
holds "$own/loads" '"verdict_why": "acid not in every jar: the lemon juice ran out'

at="the story says why"
go 6
press s
resize 120 40 # a sentence has one line there
wait_for "What was done, oldest first" "acid NOT in every jar: the lemon juice ran out"
press Escape
press q
wait_for "Leave the board?"
press y
ends main 0
whole "$practice"
finish
