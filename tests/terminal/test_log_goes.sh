#!/bin/sh
# The log is taken away under an open board: no key is taken for recorded any more, and
# what stands is written to a new file. A log that was copied in use says so.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

start_load() {
	card 1 peaches
	answer "How is it packed?"
	answer "Which jars?"
	wait_for "How many jars?"
	step
	answer "Which lid box?"
	answer "Ready."
	wait_for "Space heat is on"
}

loads_in() {
	"$STILLROOM" loads --all --json -f "$1" 2>/dev/null | grep -c '"lot"'
}

real_log
at="removed"
open_window main 80 24 "'$STILLROOM' -f '$log'"
wait_for "Space start a load"
start_load
cp "$log" "$own/copy.db" # without its -wal
rm "$log"
step
wait_for "Press W to save what is intact to a new file." "Nothing more is recorded: the log was removed"
wait_for "Space heat is on" # the step was not taken
press W
wait_for "Save what is intact to (a new file):" "stillroom-saved.db"
press Enter
wait_for "Written and checked." "stillroom -f"
is "loads in the saved log" "$(loads_in "$own/stillroom-saved.db")" 1
press W
wait_for "Save what is intact to"
press Enter
wait_for "already exists"
press q
wait_for "Leave the board?"
press y
ends main 0
is "loads in the newest backup" "$(for copy in "$log".backups/*.db; do loads_in "$copy"; done | tail -1)" 1
close_window main

at="the saved log goes on"
mkdir "$own/elsewhere"
mv "$own/stillroom-saved.db" "$own/elsewhere/log.db"
open_window main 80 24 "'$STILLROOM' -f '$own/elsewhere/log.db'"
wait_for "Space heat is on"
lacks "was removed"
close_window main

at="replaced by a copy"
open_window main 80 24 "'$STILLROOM' -f '$own/elsewhere/log.db'"
wait_for "Space heat is on"
cp "$own/elsewhere/log.db" "$own/other.db"
mv "$own/other.db" "$own/elsewhere/log.db"
step
wait_for "Press W" "the log was replaced by another file"
close_window main

at="copied in use"
open_window main 80 24 "'$STILLROOM' -f '$own/copy.db'"
wait_for "A board had this log open when it was copied" "stillroom backup"
close_window main
"$STILLROOM" setup "$KITCHEN" -f "$own/clean.db" >/dev/null
"$STILLROOM" loads -f "$own/clean.db" >/dev/null 2>"$own/said"
is "said of a log that was ended cleanly" "$(cat "$own/said")" ""
finish
