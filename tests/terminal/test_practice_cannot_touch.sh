#!/bin/sh
# Practice and the real day never meet: a practice clock is refused on a real
# log, a practice log is no day's board, and a practising screen says so.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

practice=$own/practice.db

sum() {
	cksum <"$1"
}

# refused TEXT ARGUMENT...: in a terminal of its own; the answer is a sentence, with status 3.
refused() {
	text=$1
	shift
	open_window main 240 24 "'$STILLROOM' $*" # a long path must not break the sentence
	ends main 3
	wait_for "refused: " "$text"
	lacks "? keys"
	close_window main
}

real_log
before=$(sum "$log")

at="rehearse on a real log"
refused "is a real log" "rehearse --scratch '$log'"
refused "continues as it is" "rehearse --scratch '$log' --speed 60"
refused "continues as it is" "rehearse --scratch '$log' --kitchen '$KITCHEN'"
is "the real log" "$(sum "$log")" "$before"

at="practice in the kitchen of a real log"
open_window main 80 24 "'$STILLROOM' rehearse -f '$log' --speed 120 --scratch '$practice'"
wait_for "PRACTICE, nothing is real" "Space start a load"
card 1 peaches
answer "How is it packed?"
answer "Which jars?"
wait_for "How many jars?" "30 min"
step
answer "Which lid box?"
answer "Ready."
wait_for "9 pints peaches"
for key in h w s x q '?'; do
	press "$key"
	wait_gone "Space heat is on"
	shows "PRACTICE"
	press Escape
	wait_for "Space heat is on"
done
for size in "40 12" "40 24" "120 40" "80 24"; do
	tm resize-window -t main -x "${size% *}" -y "${size#* }"
	wait_like '? keys *$'
	shows "PRACTICE"
done
press q
wait_for "Leave the board?"
press y
ends main 0
wait_for "The practice log is kept. To continue with it: stillroom rehearse --scratch"
close_window main
is "the real log" "$(sum "$log")" "$before"
is "loads in the real log" "$("$STILLROOM" loads --all --json -f "$log" | grep -c '"lot"')" 0

at="the board of a practice log"
refused "practice log" "-f '$practice'"

at="practice goes on where it was"
open_window main 80 24 "'$STILLROOM' rehearse --scratch '$practice'"
wait_for "PRACTICE" "9 pints peaches"
close_window main

at="practice in a log without a name"
TMPDIR=$own
export TMPDIR
open_window main 80 24 "TMPDIR='$own' '$STILLROOM' rehearse --kitchen '$KITCHEN'"
wait_for "PRACTICE" "Space start a load"
press q
wait_for "Leave the board?"
press y
ends main 0
wait_for "stillroom rehearse --scratch"
is "practice logs" "$(find "$own" -name 'stillroom-practice-*.db' | wc -l | tr -d ' ')" 1
close_window main

at="no log to take the kitchen from"
open_window main 80 24 "'$STILLROOM' rehearse"
ends main 1
wait_for "stillroom: there is no log yet to copy the kitchen from"
is "the usual log" "$(ls "$own/data/stillroom" 2>/dev/null)" ""

at="reports of a practice log say so"
"$STILLROOM" loads --all --json -f "$practice" >"$screen"
holds "$screen" '"practice_speed": 120'
finish
