#!/bin/sh
# The board of a real log killed (-9) in the middle of keys, again and again:
# the clocks go on to the second, and what the screen had acknowledged is there.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

KILLS=7 # one jar each
SLACK_MS=400 # of a loaded machine, between the clock's second and its frame

now_ms() {
	echo $(($(date +%s%N) / 1000000))
}

# up to N: a whole number of 0..N-1
chance() {
	echo $(($(od -An -N2 -tu2 /dev/urandom) % $1))
}

open_board() {
	open_window main 80 24 "'$STILLROOM' -f '$log'"
	wait_like "1 Big kettle  *$1"
}

# Milliseconds of wall time at which the phase of load 1 began.
began_ms() {
	stamp=$("$STILLROOM" loads --all --json -f "$log" | sed -n 's/.*-B1".*"phase_began": "\([^"]*\)".*/\1/p')
	echo $(($(date -d "$stamp" +%s%N) / 1000000))
}

# left_at MS: what a clock of `minutes` that began at `began` shows then.
left_at() {
	echo $(((began + minutes * 60000 - $1 + 999) / 1000))
}

# The time left of canner 1 is the right one: on the screen in whole minutes, rounded down, in
# what is printed to the second.
clock_agrees() {
	before=$(now_ms)
	look
	after=$(now_ms)
	shown=$(sed -n 's/^.1 Big kettle  *hold  *\([0-9]*\) min .*/\1/p' "$screen")
	most=$(left_at $((before - SLACK_MS)))
	least=$(left_at "$after")
	if [ -n "$shown" ] && [ $((shown * 60 + 59)) -ge "$least" ] && [ $((shown * 60)) -le "$most" ]; then good; else
		bad "canner 1 shows \"$shown\" min left, it is $least to $most"
	fi
	said=$(load_field seconds_left B1 "$log")
	least=$(left_at "$(now_ms)")
	if [ "$said" -ge "$least" ] && [ "$said" -le "$most" ]; then good; else
		bad "loads says $said s left, it is $least to $most"
	fi
}

kill_board() {
	kill -9 "$(program_in main)"
	ends main 137
	close_window main
}

marked_in_log() {
	"$STILLROOM" jars --all --json -f "$log" | grep -c '"state": "unsealed"'
}

marked_on_screen() {
	grep -o UNSEALED "$screen" | wc -l | tr -d ' '
}

real_log
open_board free

at="a hold on the real clock"
minutes=30
card 1 peaches
answer "How is it packed?"
answer "Which jars?"
wait_for "How many jars?" "30 min"
step
answer "Which lid box?"
answer "Ready."
wait_for "Space heat is on"
wait_like "loaded  *for  *\(0:0[2-9]\|0:[1-5]\|[1-9]\)"
step
wait_like "come-up  *for  *\(0:0[2-9]\|0:[1-5]\|[1-9]\)"
step
wait_for "so soon? Have you SEEN it: full rolling boil" "Press Space again if so."
step
wait_for "Keep a complete boil"
began=$(began_ms)
clock_agrees
at="a step before the time"
wait_like "hold  *29 min"
sleep 2 # a press right after the step counts as a bounce of it
step
wait_for "left of the hold. Only exceptions (x) end it sooner."
is "phase" "$(load_field phase B1 "$log")" hold

at="a load given up in canner 2"
card 2 grapejelly
answer "How is it packed?"
answer "Which jars?"
wait_for "How many jars?"
type_text 7
step
answer "Which lid box?"
answer "Is its acid in?"
answer "Ready."
wait_for "Space heat is on"
press x
# What cannot be made good is not what stands under the cursor.
wait_for "heat is gone or the load is given up: process NOT valid"
press Down
step
wait_for "Noted: heat is gone" "Space jars are out"
wait_like "unload  *for  *\(0:0[2-9]\|0:[1-5]\|[1-9]\)"
step
wait_for "2 Low kettle      free"

marked=0
round=1
while [ "$round" -le "$KILLS" ]; do
	at="kill $round"
	press 0
	wait_like "^[^ 0-9]0 2"
	step
	wait_for "Process NOT VALID" "Jar 1:"
	jar=1
	while [ "$jar" -lt "$round" ]; do
		press Right
		jar=$((jar + 1))
	done
	wait_for "Jar $round:"
	press n
	sleep "0.0$(chance 10)$(chance 10)"
	look
	kill_board
	shown=$(marked_on_screen)
	marked=$(marked_in_log)
	# What was to be seen is kept; one more may have been on its way.
	if [ "$marked" -ge "$shown" ] && [ "$marked" -le $((shown + 1)) ]; then good; else
		bad "$shown jars marked on the screen, $marked in the log"
	fi
	whole "$log"
	open_board hold
	clock_agrees
	is "phase" "$(load_field phase B1 "$log")" hold
	is "phase of the load given up" "$(load_field phase B2 "$log")" seal_check
	round=$((round + 1))
done

at="killed while keys pour in"
(
	i=0
	while [ "$i" -lt 40 ]; do
		tm send-keys -t main 3 Space g r e e n Down Space Escape 1 x Escape s Escape l u 0 w Escape 2>/dev/null
		i=$((i + 1))
	done
) &
sender=$!
sleep "0.$(chance 10)$(chance 10)"
kill_board
wait "$sender"
whole "$log"
# l and u may have been halves of a pair: the phase is what the log says it is.
case $(load_field phase B1 "$log") in
hold) open_board hold ;;
come_up) open_board come-up ;;
*) bad "canner 1 is in $(load_field phase B1 "$log")" ;;
esac
press q
wait_for "Leave the board?"
press y
ends main 0
finish
