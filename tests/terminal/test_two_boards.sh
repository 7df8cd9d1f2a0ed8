#!/bin/sh
# Two terminals on one log: what is done in one is seen in the other, and a key
# pressed on an old picture does nothing twice.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

SEEN_SECONDS=30 # it looks every second; only a key or a minute would show it later

# see_soon TEXT: within the time another terminal's act may take.
see_soon() {
	long=$WAIT_SECONDS
	WAIT_SECONDS=$SEEN_SECONDS
	wait_for "$@"
	WAIT_SECONDS=$long
}

# A key between ends a hold: the last one pressed there may have been the same.
at_board() {
	window=$1
	send_key F12
	last_key=
}

real_log
open_window one 80 24 "'$STILLROOM' -f '$log'"
wait_for "Space start a load"
open_window two 80 24 "'$STILLROOM' -f '$log'"
wait_for "Space start a load" "0 jars"

at="a load started in the first"
at_board one
card 1 peaches
answer "How is it packed?"
answer "Which jars?"
wait_for "How many jars?"
step
answer "Which lid box?"
answer "Ready."
wait_for "Space heat is on"
at_board two
see_soon "9 pints peaches" "Space heat is on" "9 jars"

at="the same canner chosen on both"
press 1
wait_chosen 1
at_board one
wait_like "loaded  *for  *\(0:0[2-9]\|0:[1-5]\|[1-9]\)"

at="two presses at once"
# The second one has seen "loaded"; whichever comes second must not start the hold.
at_board one
press Space
tm send-keys -t two Space
wait_for "Wait for a full rolling boil"
at_board two
see_soon "Wait for a full rolling boil"
is "phase" "$(load_field phase B1 "$log")" come_up
is "hold starts" "$(load_field hold_starts B1 "$log")" 0

at="an undo in the second is seen in the first"
press u
wait_for "Undone"
at_board one
see_soon "Space heat is on"

at="two load cards for one canner"
at_board one
card 2 plums
answer "How is it packed?"
wait_for "Which jars?"
at_board two
card 2 pears
wait_for "Which jars?"
step
wait_for "How many jars?"
step
answer "Which lid box?"
answer "Ready."
wait_for "pints pears"
at_board one
step
wait_for "How many jars?"
step
answer "Which lid box?"
answer "Ready."
wait_for "Low kettle already holds"
press Escape
wait_for "pints pears"
is "loads" "$("$STILLROOM" loads --all --json -f "$log" | grep -c '"lot"')" 2

at="one leaves, the other goes on"
press q
wait_for "Leave the board?"
press y
ends one 0
at_board two
press 3
wait_for "Space start a load"
whole "$log"
finish
