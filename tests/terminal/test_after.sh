#!/bin/sh
# The morning after, on the real board: the seal round, jars processed again, the
# pantry and a recall, in the usual window, in the smallest and in plain ASCII; and as
# commands.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

answer_file=$own/answer.txt
log=$logs/log.db
"$SUPPORT/after_day" "$KITCHEN" "$log" >/dev/null || exit 1

# typed TEXT: into the line that is open, in the place of what is offered.
typed() {
	press C-u
	type_text "$1"
	press Enter
	last_key=
}

board() {
	open_window main "$1" "$2" "$3 '$STILLROOM' -f '$log' $4"
	wait_for "4,650 ft" "? keys"
}

# jars_are N STATE: of all jars in the log.
jars_are() {
	is "jars $2" "$("$STILLROOM" jars --all --json -f "$log" | grep -c "$2")" "$1"
}

at="the round begins with the oldest load"
board 80 24 "" ""
wait_for "e seal round"
press e
wait_for "Load 1 of 3:" "7 pints crushed tomatoes" "OVERDUE:" "since the process" "PgDn next load"
shows "p· t· y·"
press PageDown
wait_for "Load 2 of 3:" "9 half-pints berry syrup" "Bands off."
press PageDown
wait_for "Load 3 of 3:" "7 half-pints berry syrup"
press PPage
wait_for "Load 2 of 3:"
press PPage
wait_for "Load 1 of 3:"

at="who looks, and the three methods"
press w
wait_for "Who checks (initials):"
typed KM
wait_for "Noted by KM from now on."
press p t y
wait_for "Jar 1: sealed by KM" "p✓ t✓ y✓"
press Right P
wait_for "Jar 2: doubtful by KM" "p✗ t· y·" "NEEDS A FATE (f)"
press u
wait_for "Undone:" "Jar 2: unchecked"
press P
wait_for "Jar 2: doubtful by KM"
press e
wait_for "All checked: by which? Space: done" "[ ] p  pressed" "[ ] t  tapped" "[ ] y  at eye level"
press Space
wait_for "Nobody has checked: press, tap or look along the lid"
press p t
wait_for "[x] p  pressed" "[x] t  tapped" "[ ] y  at eye level"
press Space
wait_for "All others are sealed. 1 jar needs a fate (f)." "p✓ t✓ y·"
sleep 2 # the seal check began with the first look; a step that soon is a bounce
step
wait_for "1 jar still needs a fate"

at="a late tomato jar: only the bin, with its steps"
press f
wait_for "This jar goes to:" "Too late to process it again"
press 3
wait_for "Discard, do not taste."
press 4
wait_for "Before the trash:" "boil 30 min; cool; throw out jar" "Treat it as spoiled."
press Space
wait_for "Load 1 of 3:" "2 discard"
press Enter
wait_for "Shelved. Wash and label them. 2 loads to go." "Load 1 of 2:"

at="jars to be processed again"
press n f 3
wait_for "1 reprocess"
press Right d f 3
wait_for "2 reprocess"
press e
wait_for "All checked: by which?"
press p t y Space
wait_for "All others are sealed."
sleep 2 # as above
press Space
wait_for "1 load to go."
press e
wait_for "All checked: by which?"
press p t y Space
wait_for "All others are sealed. Space shelves"
sleep 1.6 # a press this soon after the check began does not count
press Space
wait_for "Round done. Shelved." "2 jars set aside, first: to be processed again by"
press f
wait_for "Jars set aside" "to be processed again by" "B2 jar 1, half-pint berry syrup:"
press Space
wait_for "2 of 2 jars again:" "Into which canner?" "Big kettle: 15 min, the full time again"
press Down
wait_for "Low kettle: 15 min, the full time again"
press Escape
wait_for "Jars set aside"
press Space
wait_for "Big kettle: 15 min, the full time again"
press Down Space
wait_for "NEW lids from which box?" "Box A, spring" "Low kettle: 15 min"
press Left
wait_for "Into which canner?"
press Down Space
wait_for "NEW lids from which box?"
press Down Space
wait_for "R1. Heat on, then Space." "2 half-pints berry syrup"
jars_are 2 '"size": "half_pint", "state": "unchecked"'
press u
wait_for "Undone: Low kettle: 2 jars of"
jars_are 0 '"size": "half_pint", "state": "unchecked"'
press r
wait_for "Redone: Low kettle"
press s
wait_for "What was done, oldest first" "heat off, lid off" "every jar is checked" "again as"
press Escape

at="the pantry"
press k
wait_for "Pantry, oldest first" "32 (9 OVER A YEAR) half-pints berry" "13 pints crushed tomatoes"
shows "0 of 6 used in 26 weeks: too few to"
press t
wait_for "How many used, of 32: 1_"
typed nine
wait_for "Write how many jars, as a number."
typed 40
wait_for "Only 32 half-pints of berry syrup are here."
typed 11
wait_for "Noted: 11 used. (u undoes)" "21 half-pints berry syrup" "11 used in 26 weeks: at that rate they last"
press u
wait_for "Undone: used: 11 half-pints berry syrup (9 of" "32 (9 OVER A YEAR)"
press g
wait_for "How many given away, of 32:"
typed 9
wait_for "23 half-pints berry syrup"
press Space
wait_for "23 half-pints berry syrup by lot, oldest first"
press Down t
wait_for "How many used, of 7:" "typing replaces it"
press 2 Enter # in the place of the 1
wait_for "21 half-pints berry syrup by lot"
press Escape Down s
wait_for "How many spoiled, of 13:"
press Enter
wait_for "Before the trash:" "30 min" "R others of the lot"
press Space
wait_for "12 (SPOILED) pints crushed tomatoes" "spoiled: do not eat the others, look at each (R)." "Never taste (!)."
press c
wait_for "Found on the shelf (log: 12):"
typed 10
wait_for "Counted: 10." "10 (SPOILED) pints crushed tomatoes"

at="from a lid box to every jar"
press Escape R
wait_for "spoiled: do not eat the others. Look at each; r recalls them all." "on the shelf"
press Escape
wait_for "No recall is on record." "b lid box"
press b
wait_for "Lid box: Box A, spring_"
typed "box z"
wait_for "There is no lid box \"box z\"."
typed "Box B"
wait_for "18 jars of lid box Box B, summer" "2 in a canner" "16 on the shelf"
press Escape
press b
wait_for "Lid box:"
press Enter
wait_for "jars of lid box Box A, spring" "given away" "processed again"

at="a recall, to its last jar"
press r
wait_for "Recall them, because:"
press Enter
wait_for "Say in a few words why."
typed "buckled lids"
wait_for "Recalled:" "to find. b thrown out" "TO FIND:" "stop: Find"
press c
wait_for "cleared:" "still to find"
press u
wait_for "Undone: Recall 1: 1 jar of"
press C
wait_for "cleared:"
press Escape
wait_for "Recalls, open ones first" "TO FIND: lid box Box A, spring; buckled lids"
press Escape k Down t
wait_for "How many used"
press Enter
wait_for "is recalled,"
press Escape Escape R Space
wait_for "TO FIND"
# Each key settles the jars of one lot in one place; the number left goes down.
left_to_find() {
	"$STILLROOM" recall --json -f "$log" | sed -n 's/.*"to_find": \([0-9]*\),/\1/p'
}
# shellcheck disable=SC2317 # run by until_true
went_down() {
	[ "$(left_to_find)" != "$left" ]
}
key=N
while left=$(left_to_find) && [ "${left:-0}" -gt 0 ]; do
	press "$key"
	until_true went_down || break
	if [ "$key" = N ]; then key=C; else key=N; fi
done
wait_for "NOT FOUND: the recall stays open. g: they are gone. (u undoes)"
press Escape
wait_for "NOT FOUND: lid box Box A, spring; buckled lids"
# Each key gives up those of one lot, on somebody's word.
not_found_left() {
	"$STILLROOM" recall --json -f "$log" | sed -n 's/.*"not_found": \([0-9]*\),/\1/p'
}
# shellcheck disable=SC2317 # run by until_true
fewer_left() {
	[ "$(not_found_left)" != "$left" ]
}
press Space
while left=$(not_found_left) && [ -n "$left" ]; do
	press G
	until_true fewer_left || break
done
wait_for "Noted: that was the last one. The recall is done."
press Escape
wait_for "done,"
close_window main

at="the smallest window, without color"
board 40 12 "NO_COLOR=1" ""
press k
wait_for "Pantry: jars, best by" "half-pints berry syrup" "Oldest"
press Space
wait_for "by lot"
press r
wait_for "jars of lot" "on the shelf"
press Escape Escape Escape R
wait_for "Recalls, open ones first"
press Space
wait_for "jars of lid box Box A"
press Escape Escape
wait_for "? keys"
press q
wait_for "Leave"
press y
ends main 0
close_window main

at="the round in the smallest window, in plain ASCII"
rm -rf "$log" "$log".backups "$log"-*
"$SUPPORT/after_day" "$KITCHEN" "$log" >/dev/null || exit 1
board 40 12 "" --ascii
press e
wait_for "Load 1 of 3:" "OVERDUE, " "p. t. y."
press p
wait_for "pv t. y."
press T
wait_for "pv tx y." "1 doubtful"
press f
wait_for "This jar goes to:" "-  fridge" "-  reprocess" "4  discard"
if LC_ALL=C grep -q '[^ -~]' "$screen"; then bad "not ASCII"; else good; fi
press Escape Escape
close_window main

at="what is in the fridge stays on its list until it is eaten"
board 40 12 "" --ascii
press e NPage
wait_for "Load 2 of 3:"
press P f
wait_for "This jar goes to:" "1  fridge"
press 1
wait_for "1 fridge"
press Right P f 2
wait_for "2 freezer"
press Escape f
wait_for "Jars set aside, soonest first" "Space in the freezer" "into the freezer by"
press Space
wait_for "Noted: in the freezer." "Space eaten" "syrup: in the fridge, eat by" "in the freezer since"
press Space
wait_for "Noted: eaten." "syrup: in the freezer since"
wait_gone "in the fridge, eat by"
press u
wait_for "Undone:" "in the fridge, eat by"
press f
wait_for "Noted: in the freezer." "Jars set aside, soonest first"
lacks "fridge, eat by"
press Escape
close_window main

at="a large window"
board 120 40 "" ""
press e
wait_for "Load 1 of 3:" "d doubtful"
press Escape p
close_window main

at="commands"
"$STILLROOM" pantry -f "$log" >"$answer_file"
is "status" "$?" 0
holds "$answer_file" "   18 half-pints   berry syrup" "    7 pints        crushed tomatoes" "(9 OVER A YEAR)"
"$STILLROOM" recall --lid-box "box b" -f "$log" >"$answer_file"
is "status" "$?" 0
holds "$answer_file" "16 jars of lid box Box B, summer" "9 on the shelf" "7 on the rack" "[ ] "
"$STILLROOM" recall --load 3 --json -f "$log" >"$answer_file"
holds "$answer_file" '"about": "load"' '"where": "shelf"'
"$STILLROOM" recall --product "Crushed Tomatoes" -f "$log" >"$answer_file"
holds "$answer_file" "14 jars of product Crushed Tomatoes" "cover with 1 in of water"
"$STILLROOM" recall -f "$log" >"$answer_file"
holds "$answer_file" "No recall is open."
"$STILLROOM" recall --lot none -f "$log" >"$answer_file" 2>&1
is "status" "$?" 3
"$STILLROOM" recall --lot none --day 2026-09-14 -f "$log" >"$answer_file" 2>&1
is "status" "$?" 2
whole "$log"
finish
