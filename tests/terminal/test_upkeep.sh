#!/bin/sh
# The log is checked beside the board: the board is there at once, damage stops it, and no
# process stays behind.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

if ! command -v python3 >/dev/null 2>&1; then
	echo "python3 is not installed"
	exit 77
fi

# An index page of the log with bytes of something else: whoever reads rows does not meet it.
spoil() {
	python3 - "$1" <<'PY'
import sqlite3, sys
path = sys.argv[1]
db = sqlite3.connect(path)
size = db.execute("PRAGMA page_size").fetchone()[0]
root = db.execute("SELECT rootpage FROM sqlite_master WHERE name = 'journal_of_station'").fetchone()[0]
db.close()
with open(path, "r+b") as file:
    file.seek(root * size - 8)
    last = file.read(8)
    file.seek(root * size - 8)
    file.write(bytes(byte ^ 0x11 for byte in last))
PY
}

# Processes that look after a log in our folder.
# shellcheck disable=SC2317 # run by no_keeper
keepers() {
	# shellcheck disable=SC2009 # pgrep is not everywhere
	ps -A -o args= | grep -c "[k]eep-log .*$logs"
}

# shellcheck disable=SC2317 # run by until_true
no_keeper() {
	[ "$(keepers)" -eq 0 ]
}

real_log
"$STILLROOM" backup -f "$log" >/dev/null || exit 1

at="a log that is whole"
open_window main 80 24 "'$STILLROOM' -f '$log'"
wait_for "1 Big kettle"
press j
wait_for "No juice in stock"
press Escape
wait_for "1 Big kettle"
if until_true no_keeper; then good; else bad "a check does not end"; fi
kill -9 "$(program_in main)"
ends main 137
if until_true no_keeper; then good; else bad "a process stays behind"; fi
close_window main

at="after an unclean end"
open_window main 80 24 "'$STILLROOM' -f '$log'"
wait_for "1 Big kettle"
lacks "damaged" "restore"
press q y
ends main 0
close_window main
if [ -e "$log-wal" ]; then bad "a -wal is left"; else good; fi

at="a log that is damaged"
spoil "$log"
before=$(cksum <"$log")
open_window main 120 40 "'$STILLROOM' -f '$log'"
wait_for "1 Big kettle" "Nothing more is recorded" "is damaged" "stillroom restore"
press i
wait_for "Who has it"
press C-u
type_text "MK"
press Enter
wait_for "is damaged" "Who has it (initials): MK"
press Escape
wait_gone "Who has it"
press q y
ends main 1
look
holds "$screen" "stillroom: " "is damaged"
shows "puts a backup in its place"
close_window main

at="the way out"
"$STILLROOM" restore --yes -f "$log" >"$own/out" 2>"$own/err"
is "restore" "$?" 0
is "what is kept" "$(cksum <"$log.damaged-1" | cut -d ' ' -f 3)" "$(echo "$before" | cut -d ' ' -f 3)"
open_window main 80 24 "'$STILLROOM' -f '$log'"
wait_for "1 Big kettle"
lacks "damaged"
press q y
ends main 0
close_window main

at="without a board"
true | { sleep 0.2; "$STILLROOM" keep-log check "$log" 0; } >"$own/out"
is "what it says" "$(wc -c <"$own/out" | tr -d ' ')" 0
"$STILLROOM" keep-log 2>"$own/err"
is "typed by a person" "$?" 2

finish
