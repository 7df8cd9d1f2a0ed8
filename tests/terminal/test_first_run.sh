#!/bin/sh
# The first evening: no log yet.  The first steps are gone through, and a load can start.
# Names that are typed or pasted are text, whatever is in them.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

log=$own/data/stillroom/log.db

# change TEXT: the elevation, whose line is under the cursor.
change() {
	step
	wait_for "How high is the kitchen?"
	type_text "$1"
	press Enter
}

# reply TEXT NEXT: to the question that is open; then NEXT is asked or said.
reply() {
	type_text "$1"
	press Enter
	wait_for "$2"
}

# The program's frame is where it should be: nothing on the screen moved it.
intact() {
	wait_for "The house. Space"
	is "last line" "$(sed -n 24p "$screen" | grep -c '^ Space change.*? keys$')" 1
	is "third line" "$(sed -n 3p "$screen" | sed "s|[0-9][0-9]*|N|g")" " The house. Space changes a line."
	is "lines that are too long" "$(grep -cE '^.{81}' "$screen")" 0
	is "control characters" "$(LC_ALL=C grep -c "$(printf '[\001-\010\013-\037]')" "$screen")" 0
}

at="the first steps open"
open_window main 80 24 "'$STILLROOM'"
wait_for "Welcome. First steps: 0 of 8 done." "Never taste" "open Elevation" "open First load"
shows "elevation?" "0 jars" "1 warning" "stop: Set the elevation: Space on its line." "or a thermometer in boiling water"
wait_like "^ [^ ] open Elevation" # it is under the cursor

at="a canner before the elevation"
press Down Down
wait_like "^ [^ ] open Stations"
step
wait_for "What is it?" "boiling-water canner" "pot"
step
wait_for "What do you call it?"
shows "Canner_"
press C-u
reply "" "Give it a short name"
reply Kettle "How many pints does it take?"
reply many "Jars it takes: a whole number from 1 to 99, or nothing."
press C-u
reply 7 "How many quarts does it take?"
press Enter
wait_for "Noted: Kettle" "What else is there?" "no more, that is all"
press Escape
wait_for "done Stations Kettle"
press Escape
wait_for "1 Kettle" "Space start a load"
step
wait_for "The elevation is not known, so no process can be given. Set it first." "First steps: 1 of 8 done."
is "loads" "$("$STILLROOM" loads --all --json | grep -c '"lot"')" 0
wait_like "^ [^ ] open Elevation"

at="a number typed first"
step
wait_for "How high is the kitchen?" "type what it reads: 206F"
reply "a hill" "write the elevation as a number and its unit, such as 4,650 ft or 1417 m; this cannot be read: a hill" # to its end
shows "Enter keeps it" # still being typed
press C-u
type_text 3200
wait_for "3200_ ft (975 m)"
press Enter
wait_for "Noted: 3,200 ft (975 m). (u undoes)" "First steps: 2 of 8 done."
lacks "1 warning"
wait_like "^ [^ ] open Name"
step
wait_for "What is the kitchen called?"
reply "3,200 ft" "3,200 ft looks like an elevation. Is it the kitchen's name?"
step
wait_for "What is the kitchen called?"
reply "Quince Hollow" "First steps: 3 of 8 done."
wait_like "^ [^ ] open Helpers"

at="left and come back to"
press Escape
wait_for "1 Kettle" "Space start a load"
press h
wait_for "The house. Space" "f first steps"
press f
wait_for "First steps: 3 of 8 done."
wait_like "^ [^ ] open Helpers"
press h
wait_for "The house. Space" 'station 1    Kettle, boiling-water canner, 7 pints'

at="what the first steps left out of a station"
press Down Down Down Down Down Down Down
step
wait_for "What is it?"
reply boil "What do you call it?"
reply Kettle "Which figure chooses it"
step
wait_for "it heats itself (electric)"
press Down
step
wait_for "How many watts?"
reply 12 "Watts: a whole number from 100 to 20000, or nothing."
press C-u
reply 1500 "How many half-pints does it take?"
press Enter
wait_for "How many pints does it take?"
press Enter
wait_for "How many quarts does it take?"
press Enter
wait_for "Are there other sizes it takes?"
step
wait_for "Is it still used?"
step
wait_for 'station 1    Kettle, boiling-water canner, 7 pints, 1500 W, heats itself'
press Escape
wait_for "1 Kettle"
press h
wait_for "The house. Space"

at="the elevation as a line of the house"
press Down
change 4650
wait_for "4,650 ft (1,417 m)" "203.5F" "Noted: 4,650 ft"

at="a pot and a juicer"
press Down Down Down Down Down Down Down
step
wait_for "What is it?"
reply pot "What do you call it?"
reply "Wide pot" "Where does its heat come from?"
step
wait_for "How much does it hold"
reply "8 cats" "Enter keeps it"
lacks 'station 2'
press C-u
reply "8 qt" 'station 2    Wide pot, pot, 2 gal'
press Down
step
wait_for "What is it?"
reply juicer "What do you call it?"
reply "Tall juicer" "Where does its heat come from?"
step
wait_for "How often is its water looked at?"
reply "" "No run starts without it: type minutes, 1 to 600."
reply soon "Minutes between looks at the water: a whole number from 1 to 600."
press C-u
reply 15 "The times of this house"
reply 64 "How long until its first juice"
reply "" "remind you of filled jars"
press Enter
wait_for "too old to can"
press Enter
wait_for "Noted: the times of the house." "station 3    Tall juicer" "run 64"
press u
wait_for "Undone"
press u
wait_gone "station 3"

at="a lid box"
press Down
step
wait_for "What stands on the box?" "such as Box A"
reply Box "How many lids were in it?"
reply 24 "When was it bought?"
press Enter
wait_for 'lids         Box: 24, 24 left'

at="a day that is none"
press Down
step
wait_for "What stands on the box?"
reply Other "How many lids were in it?"
press Enter
wait_for "When was it bought?"
reply "70 80" "A day is year, month and day"
press Escape
wait_gone "Enter keeps it"
lacks Other

at="the load starts"
press Escape
wait_for "Space start a load"
card 1 peaches
answer "How is it packed?"
answer "Which jars?"
wait_for "How many jars?" "30 min"
step
answer "Which lid box?"
answer "Ready."
wait_for "7 pints peaches" "7 jars" "Space heat is on"

at="the elevation while a load is in a canner"
press h
wait_for "The house. Space"
press Down
change 900
wait_for "900 ft (274 m)"
wait_for "Noted; Kettle now holds"
change "4650ft"
wait_for "4,650 ft (1,417 m)"

at="hostile names"
press Up Up Up
for name in "O'Brien \"Q\" \\ ; \$(id) \`id\` %s%n ../../x" "Küche 漢字 Ωμέγα" "'; DROP TABLE load; --" \
	"$(printf 'a\314\201e\314\210 zero\342\200\213width \360\237\215\207 \342\200\256right to left')"; do
	step
	wait_for "What is the kitchen called?"
	press C-u
	type_text "$name"
	press Enter
	wait_for "Noted:"
	lacks "Quince Hollow"
	intact
	press u
	wait_for "Undone"
	wait_for "kitchen      Quince Hollow"
done
at="a pasted page"
step
wait_for "What is the kitchen called?"
long=$(awk 'BEGIN { for (i = 0; i < 40; i++) printf "a very long name " }')
type_text "$long"
wait_for "What is the kitchen called?"
is "lines that are too long" "$(grep -cE '^.{81}' "$screen")" 0
press Enter
wait_for "That name is too long"
press Escape
wait_gone "Enter keeps it"
lacks "too long"
intact
at="bytes that are no characters"
press Up
step
wait_for "What is the kitchen called?"
tm send-keys -t main -H ff c3 28 e2 82 07 0e 1a 00 41
press Enter
wait_gone "Enter keeps it"
intact
press Escape
wait_for "7 pints peaches"
whole "$log"
"$STILLROOM" loads >"$screen"
holds "$screen" "7 pints peaches"
press q
wait_for "Leave the board?"
press y
ends main 0
finish
