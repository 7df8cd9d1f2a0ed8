#!/bin/sh
# A board killed (-9) in a planned day: the next one sends everybody where the last one did,
# by what the log has kept of the plan.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"
KITCHEN=$REPO/demo/quince-hollow-day.kitchen

python=$(sh "$REPO/.ci/python" sqlite3) || {
	echo "no python with sqlite3 is installed"
	exit 77
}

# How much of what was said is in the log; one row for each run and batch to come.
# shellcheck disable=SC2317 # run by until_true
kept() {
	"$python" -c "import sqlite3, sys
print(sqlite3.connect(sys.argv[1]).execute('SELECT count(*) FROM plan_said').fetchone()[0])" "$log"
}

# shellcheck disable=SC2317 # run by until_true
all_kept() {
	[ "$(kept)" -eq "$planned" ]
}

open_board() {
	open_window main 80 24 "'$STILLROOM' -f '$log'"
	wait_like "1 Big kettle  *free"
}

# What next, for helpers and stations: who and what, without the minutes.
orders() {
	press p
	wait_for "the plan said" "Busiest"
	look
	sed -n '/^.  *[A-Z0-9][A-Z]* .*\(now\|:\)/s/ \(now\|[0-9][0-9]:[0-9][0-9]\)  */ /p' "$screen"
	press Escape
	wait_like "1 Big kettle  *free"
}

real_log
planned=$("$STILLROOM" plan --json -f "$log" | grep -c '"state": "planned"')

at="a draft is for trying"
open_board
press p
wait_for "A draft: it would end about"
is "rows kept of a draft" "$(kept)" 0

at="going by it"
press g
wait_for "The day follows this plan."
press Escape
until_true all_kept
before=$(orders)
kill -9 "$(program_in main)"
ends main 137
close_window main

at="started anew"
open_board
is "what next" "$(orders)" "$before"
case $before in
*"Fill Tall juicer"*) good ;;
*) bad "what next says: $before" ;;
esac
finish
