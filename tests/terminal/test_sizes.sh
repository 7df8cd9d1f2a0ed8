#!/bin/sh
# What must always be visible is visible: window sizes and changes of size, no
# color, plain ASCII, other terminals.  One log with a running hold serves all.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

raw=$own/raw
escape=$(printf '\033')
colors="$escape\\[\\([0-9]*;\\)*\\(3[0-8]\\|4[0-8]\\|9[0-7]\\|10[0-7]\\)\\(;[0-9]*\\)*m"

resize() {
	tm resize-window -t "$window" -x "$1" -y "$2"
	columns=$1
	rows=$2
}

# Facts in the first lines, keys in the last: the frame is drawn for this size.
# shellcheck disable=SC2317 # run by until_true
is_fitted() {
	look
	head -n 2 "$screen" | grep -q '4,650 ft' && sed -n "${rows}p" "$screen" | grep -q 'keys *$'
}

# No line was wrapped by the terminal and none is longer than the window.
not_wrapped() {
	tm capture-pane -p -t "$window" >"$screen"
	tm capture-pane -p -J -t "$window" >"$own/joined"
	is "lines with wrapped ones joined" "$(wc -l <"$own/joined")" "$(wc -l <"$screen")"
	is "lines that are too long" "$(grep -cE "^.{$((columns + 1))}" "$screen")" 0
}

# The most urgent clock, the facts, the warnings' count and the keys.
shows_all() {
	at="$1 at $columns x $rows"
	if until_true is_fitted; then good; else bad "the frame does not fit"; fi
	shows "4,650 ft" "203.5" "9 jars" "2 warnings" "Space" "? keys" "hold"
	if grep -q 'hold *[12][0-9] min' "$screen"; then good; else bad "no time left"; fi
	# the act in words, brief in the smallest window
	if grep -Eq 'Keep a complete boil|Full boil; top up' "$screen"; then good; else bad "no act"; fi
	not_wrapped
}

board() {
	columns=$1
	rows=$2
	shift 2
	open_window main "$columns" "$rows" "exec 3>&-; $*"
}

# Everything the program writes from now on, one whole frame at least.
record() {
	rm -f "$raw"
	tm pipe-pane -t "$window" "cat >'$raw'"
	resize 100 30
	until_true is_fitted
	resize 80 24
	until_true is_fitted
	tm pipe-pane -t "$window"
}

# counts what is in what was captured: bytes of a class, sequences of a kind
recorded() {
	LC_ALL=C grep -c -- "$1" "$raw"
}

real_log
# Jelly in jars not boiled first: a row with a note, so that there is a warning.
board 80 24 "'$STILLROOM' -f '$log'"
wait_for "1 Big kettle"
card 1 grapejelly
answer "How is it packed?"
answer "Which jars?"
wait_for "How many jars?"
step
answer "Which lid box?"
answer "Is its acid in?"
answer "Ready."
wait_like "loaded  *for  *\(0:0[2-9]\|0:[1-5]\|[1-9]\)"
step
wait_like "come-up  *for  *\(0:0[2-9]\|0:[1-5]\|[1-9]\)"
step
wait_for "so soon?"
step
wait_for "Keep a complete boil"
press 1
wait_gone "Noted:"

for size in "80 24" "120 40" "40 12" "200 60" "40 24" "80 12" "80 24"; do
	# shellcheck disable=SC2086 # two words
	resize $size
	shows_all "color"
done
at="too small"
resize 39 11
wait_for "The window is too small: make it at least 40 columns by 12 rows."
wait_like "^1 1[0-9] min hold Big kettle"
not_wrapped
resize 12 3
wait_like "^1 1[0-9] min"
resize 1 1
resize 40 12
shows_all "after one column by one row"
for key in "x exceptions" "s story" "w warnings" "h house" "? keys" "q leave"; do
	at="view $key at 40 x 12"
	press "${key% *}"
	wait_gone "Full boil; top"
	wait_like '1 Big kettle'
	wait_like 'hold 1[0-9] min left' # no view hides the clock
	not_wrapped
	press Escape
	wait_for "Full boil; top"
done
at="color"
record
if [ "$(recorded "$colors")" -gt 0 ]; then good; else bad "no color without NO_COLOR"; fi
close_window main

at="NO_COLOR"
board 80 24 "NO_COLOR=1 '$STILLROOM' -f '$log'"
shows_all "NO_COLOR"
record
is "colors under NO_COLOR" "$(recorded "$colors")" 0
close_window main

for how in "--ascii" "LC_ALL=C" "LANG=C"; do
	at=$how
	case $how in
	--*) board 80 24 "'$STILLROOM' $how -f '$log'" ;;
	LANG*) board 80 24 "unset LC_ALL; $how '$STILLROOM' -f '$log'" ;;
	*) board 80 24 "$how '$STILLROOM' -f '$log'" ;;
	esac
	shows_all "$how"
	is "lines with other characters" "$(LC_ALL=C grep -c '[^ -~]' "$screen")" 0
	record
	high=$(printf '[\200-\377]')
	is "bytes above ASCII" "$(recorded "$high")" 0
	is "drawing characters" "$(recorded "$(printf '\016')\\|$escape(0")" 0
	resize 40 12
	shows_all "$how"
	is "lines with other characters" "$(LC_ALL=C grep -c '[^ -~]' "$screen")" 0
	close_window main
done

for kind in linux screen vt100 xterm xterm-256color; do
	at="TERM=$kind"
	board 80 24 "TERM=$kind '$STILLROOM' -f '$log'"
	shows_all "TERM=$kind"
	press q
	wait_for "Leave the board?"
	sleep 0.5 # the key that parts two letters is not known to all of these
	last_key=
	press y
	ends main 0
	close_window main
done

for kind in dumb nosuchterminal ''; do
	at="TERM=$kind"
	board 80 24 "TERM=$kind '$STILLROOM' -f '$log'"
	if until_true has_ended main; then good; else bad "does not end"; fi
	case $(cat "$own/main.status") in
	1 | 2) good ;;
	*) bad "exit status $(cat "$own/main.status")" ;;
	esac
	shows "stillroom: "
	is "lines" "$(grep -c . "$screen" | awk '{ print $1 <= 3 }')" 1
	is "other characters" "$(LC_ALL=C grep -c '[^ -~]' "$screen")" 0
	close_window main
done
at="no terminal"
"$STILLROOM" -f "$log" </dev/null >"$screen" 2>&1
is "exit status" "$?" 2
holds "$screen" "The board needs a terminal"
finish
