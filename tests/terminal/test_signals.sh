#!/bin/sh
# However the board ends, the terminal is as it was and the log is whole.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

# A shell in the window, so that jobs, modes and the screen before can be seen.
open_shell() {
	window=main
	rm -f "$own"/*.stty
	need_server
	tm new-session -d -s main -x 80 -y 24 "PS1='ready> ' ENV= exec sh -i" || exit 1
	tm set-option -t main -q status off
	wait_for "ready>"
	type_text "stty -g >'$own/before.stty'; echo was\$((40 + 2))here"
	press Enter
	wait_for "was42here"
}

start_board() {
	type_text "'$STILLROOM' -f '$log'; echo left with \$?"
	press Enter
	wait_for "1 Big kettle" "? keys"
	is "screen" "$(state '#{alternate_on}')" 1
	is "cursor" "$(state '#{cursor_flag}')" 0
}

state() {
	tm display-message -p -t main "$1"
}

restored() {
	wait_for "was42here" # what was there before the board is back
	is "screen" "$(state '#{alternate_on}')" 0
	is "cursor" "$(state '#{cursor_flag}')" 1
	is "keypad" "$(state '#{keypad_flag}#{keypad_cursor_flag}')" 00
	lacks "Big kettle"
	type_text "stty -g >'$own/after.stty'; echo written"
	press Enter
	wait_like "^written"
	is "modes" "$(cat "$own/after.stty")" "$(cat "$own/before.stty")"
	whole "$log"
}

# Is the process gone, or left as a zombie of somebody?
# shellcheck disable=SC2317 # run by until_true
is_gone() {
	case $(ps -o stat= -p "$1" 2>/dev/null) in
	'' | Z*) return 0 ;;
	esac
	return 1
}

real_log

for signal in TERM HUP INT QUIT; do
	at="SIG$signal"
	open_shell
	start_board
	kill -"$signal" "$(program_in main)"
	wait_for "left with 0"
	restored
	close_window main
done

at="a crash"
export ASAN_OPTIONS="${ASAN_OPTIONS:-}:handle_segv=0" # a sanitizer would take the signal
open_shell
start_board
kill -SEGV "$(program_in main)"
wait_like "left with 139"
restored
close_window main

at="Ctrl-C asks"
open_shell
start_board
press C-c
wait_for "Leave the board?" "No load is open."
press n
wait_for "Space start a load"
press q
wait_for "Leave the board?"
press Escape
wait_for "Space start a load"

at="Ctrl-Z and back"
press C-z
wait_like "ready> *$"
is "screen" "$(state '#{alternate_on}')" 0
is "cursor" "$(state '#{cursor_flag}')" 1
lacks "Big kettle"
tm resize-window -t main -x 100 -y 30
type_text "fg"
press Enter
wait_for "Space start a load" "boils 203.5 F" # the window has grown meanwhile
is "screen" "$(state '#{alternate_on}')" 1
is "last line" "$(sed -n 30p "$screen" | grep -c keys)" 1
tm resize-window -t main -x 80 -y 24
wait_gone "boils 203.5 F"

at="killed while stopped"
press C-z
wait_like "ready> *$"
pid=$(program_in main)
kill -TERM "$pid"
kill -CONT "$pid"
if until_true is_gone "$pid"; then good; else bad "still there"; fi
type_text "stty -g >'$own/after.stty'; echo written"
press Enter
wait_like "^written"
is "modes" "$(cat "$own/after.stty")" "$(cat "$own/before.stty")"
close_window main

at="leaving by q and y"
open_shell
start_board
press q
wait_for "Leave the board?"
press y
wait_for "left with 0"
restored
close_window main

for end in "tmux window" "HUP ignored"; do
	at="the terminal closes: $end"
	case $end in
	HUP*) open_window main 80 24 "trap '' HUP; '$STILLROOM' -f '$log'" ;;
	*) open_window main 80 24 "'$STILLROOM' -f '$log'" ;;
	esac
	wait_for "Space start a load"
	pid=$(program_in main)
	tm kill-session -t main
	if until_true is_gone "$pid"; then good; else
		bad "process $pid is still there: $(ps -o stat=,time= -p "$pid")"
		kill -9 "$pid"
	fi
	whole "$log"
done

at="at rest it sleeps"
open_window main 80 24 "'$STILLROOM' -f '$log'"
wait_for "Space start a load"
pid=$(program_in main)
# Hundredths of a second of its own work, and how often it went to sleep.
# shellcheck disable=SC2317 # run by rests
work() {
	awk '{ print $14 + $15 }' "/proc/$pid/stat"
}
# shellcheck disable=SC2317 # run by rests
sleeps() {
	awk '/^voluntary_ctxt_switches/ { print $2 }' "/proc/$pid/status"
}
# Two looks at the log and two frames in 2 s, not a loop.  What else runs here can only
# add to it, or spread it over more seconds: so one such stretch is enough, and none is
# found of a program that is always at work.
# shellcheck disable=SC2317 # run by until_true
rests() {
	worked=$(work)
	slept=$(sleeps)
	since=$(date +%s)
	sleep 2
	worked=$(($(work) - worked))
	slept=$(($(sleeps) - slept))
	passed_s=$(($(date +%s) - since + 1))
	[ "$worked" -le 20 ] && [ "$slept" -le $((10 * passed_s)) ]
}
if [ -r "/proc/$pid/status" ]; then
	if until_true rests; then good; else
		bad "$worked hundredths of a second and $slept sleeps in about $passed_s s"
	fi
fi
finish
