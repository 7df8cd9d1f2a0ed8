#!/bin/sh
# A paste is text where a line is typed, and nothing anywhere else.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

# paste TEXT: as a person's terminal does it, marked where the program asked for that.
paste() {
	printf '%b' "$1" >"$own/clip" # line ends as \\n
	tm load-buffer "$own/clip"
	tm paste-buffer -p -t "$window"
}

real_log
at="outside a line"
open_window main 80 24 "'$STILLROOM' -f '$log'"
wait_for "1 Big kettle"
loads() {
	"$STILLROOM" loads --all --json -f "$log" | grep -v '"now"'
}
before=$(loads)
paste 'Rinse 3 pots.\nThen load 7 quarts in 1, boil lost: 2, q y\n'
wait_for "Pasted text does nothing here: none of it was used."
shows "1 Big kettle      free" "Space start a load"
paste '1.5 gal'
wait_for "Pasted text does nothing here: none of it was used."
is "the loads" "$(loads)" "$before"

at="in a line"
press h
wait_for "The house. Space"
press Space
wait_for "What is the kitchen called?"
paste 'Upper\nLower'
wait_for "only one line of text can be pasted"
paste 'Upper Quince Hollow'
wait_for "Name Upper Quince Hollow_"
press Enter
wait_for "Noted: Upper Quince Hollow"
press Escape
wait_for "Upper Quince Hollow"

at="in the letters of a name"
press 1
wait_chosen 1
press Space
wait_for "What goes in?"
paste 'crushed tom'
wait_for "crushed tom_"
press Escape
wait_for "1 Big kettle"
press q
wait_for "Leave the board?"
press y
ends main 0
whole "$log"
finish
