#!/bin/sh
# A day of canning on the practice clock at 80 x 24: three canners at once, a
# boil lost, alarms, the seal check, and what the log says afterwards.  The
# figures on the screen are those of the tables for 4,650 ft.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

practise 80 24 300

at="the empty board"
wait_for "1 Big kettle" "2 Low kettle" "3 Weight canner" "4,650 ft" "203.5F" "0 jars"
shows "Choose a station with its digit" "Space start a load" "? keys"

at="grape jelly in canner 1"
card 1 grapejelly
# A short cut exists for jars boiled first; pressing on must not take it.
answer "How is it packed?"
answer "Which jars?"
wait_for "How many jars?" "this canner takes 9"
# Common practice, no source: 15 min at this height where jars were not boiled.
shows "15 min, headspace 1/4 in" "These minutes are in no published table." "outrank this program"
step
wait_for "Which lid box?" "Box A, spring  (60 left)"
step
# What the recipe or the pectin's sheet asks for: said, or said that it is none.
wait_for "Is its acid in?" "none: neither the recipe nor the pectin's sheet asks for any"
step
wait_for "Ready. Space starts; the clock waits." "15 min, headspace 1/4 in"
shows "Space START the load"
step
wait_for "9 half-pints grape jelly" "9 jars" "Space heat is on" "15 min, headspace 1/4 in; unpublished"

at="a wrong key taken back"
step
wait_for "come-up" "Wait for a full rolling boil" "Space full rolling boil: start the hold"
wait_for "Noted. Big kettle: come-up begins. (u undoes)"
press u
wait_for "Undone" "Space heat is on"
wait_for "loaded" "r redo"
step
wait_for "Wait for a full rolling boil"

at="no hold before the key"
# Well over a hold's length of kitchen time: still no clock runs down.
is "phase" "$(load_field phase B1 "$practice")" come_up
is "seconds left" "$(load_field seconds_left B1 "$practice")" null

at="peaches in canner 2"
card 2 peaches
answer "How is it packed?"
answer "Which jars?"
wait_for "How many jars?" "30 min, headspace 1/2 in"
press @
wait_for "Guide 2, table Peaches"
press Escape
wait_for "How many jars?"
type_text 6
wait_for "this canner takes 7"
step
answer "Which lid box?" Down
wait_for "6 pints"
step
wait_for "6 pints peaches" "15 jars"
step
wait_for "Space full rolling boil"

at="green beans in canner 3"
card 3 greenbeans
answer "How is it packed?" Down
answer "Which jars?"
wait_for "How many jars?" "25 min at 15 psi, headspace 1 in"
shows "> 7 quarts" "this canner takes 7" "pressure canner only, vented 10 minutes"
step
wait_for "Which lid box?"
step
wait_for "Ready. Space starts; the clock waits."
step
wait_for "7 quarts green beans" "22 jars" "Space heat is on, weight off"
step
wait_like "Wait for .*strong"

at="three clocks at once"
wait_for "Space steady steam: start the vent"
step_to "Venting: a steady funnel of steam for 10 full minutes"
wait_for "Space (not yet)"
at="the vent's alarm"
wait_for "COME NOW" "OVER BY" "Vent is over: put the weight on or close the petcock"
shows "a alarm heard" "Space weight on"
press a
wait_gone "COME NOW"
shows "Vent is over: put the weight on"
step
wait_like "Wait.* the weight jiggles"
lacks "r redo" # that was another canner
wait_like "pressurise  *for  *[1-9][0-9]*:"
step
wait_for "Keep the weight rocking"
press 1
wait_chosen 1
step
wait_for "Keep a complete boil"
press 2
wait_chosen 2
step
wait_for "2 Low kettle      hold"
shows "1 Big kettle      hold" "3 Weight canner   hold"

at="a boil lost"
press l
wait_for "2 Low kettle      come-up" "boil lost: back to the boil, full time again"
is "seconds left" "$(load_field seconds_left B2 "$practice")" null
wait_like "2 Low kettle  *come-up  *for  *\([2-9]\|[1-9][0-9]\):[0-9]"
step
wait_for "2 Low kettle      hold"
left=$(load_field seconds_left B2 "$practice")
# The full 30 min again, but for what has passed since the key.
if [ "$left" -gt 1200 ]; then good; else bad "$left s left of the second hold"; fi
press s
wait_for "What was done, oldest first"
shows "load started, 6 pints peaches, 30 min" "boil lost: back to the boil, full time again"
is "hold starts in the story" "$(grep -c 'today.*full rolling boil: start the hold' "$screen")" 2
wait_like "left\|OVER BY" # the most urgent clock is not hidden by it
press Escape
wait_for "2 Low kettle"

at="the jelly's hold is over"
press 1
wait_chosen 1
wait_for "COME NOW" "Heat OFF, lid off: the 5 min rest begins" "Space heat off, lid off"
step
wait_for "Rest: heat off, lid off, jars stay in the water"
wait_for "Lift the jars out, straight up" "OVER BY" "Space rest is over"
step
wait_for "Lift jars straight up, 1 in apart" "Space jars are out: canner is free"
step
wait_for "1 Big kettle      free" "cooling, seals"

at="the beans: pressure falls by itself"
press 3
wait_chosen 3
wait_for "Heat OFF: let the pressure fall by itself" "Space heat off"
step
wait_like "Hands off.*weight .*on"
wait_for "Space pressure is zero, weight is off"
step
# Zero pressure within 10 min is unlikely, so that is asked about.
wait_for "Press Space again if so."
step
wait_like "Weight .*off: wait 10 min"
wait_for "Open the lid AWAY from you"
step
wait_for "Space jars are out: canner is free"
step_to "3 Weight canner   free" # the low kettle rings

at="the peaches' second hold"
press 2
wait_chosen 2
wait_for "hold start 2" "Space heat off, lid off"
step
wait_for "Lift the jars out"
step
wait_for "Space jars are out: canner is free"
step
wait_for "2 Low kettle      free"

at="seals looked at too soon"
press 0
wait_for "Leave untouched for 12 to 24 h"
step
wait_for "left of the cooling. End it now anyway?" "Press Space again if so."
step
wait_for "Bands off. Press the center" "Jar 1: unchecked, no liquid lost"

at="the seal check"
press Right Right n
wait_for "UNSEALED" "Jar 3: unsealed, no liquid lost, NEEDS A FATE (f)"
press f
wait_for "This jar goes to:" "fridge" "freezer" "reprocess" "NEW lid"
press 1
wait_for "Jar 3: unsealed, no liquid lost, in the fridge, eat by"
press Right d
wait_for "Jar 4: doubtful, no liquid lost, NEEDS A FATE (f)"
press f
wait_for "This jar goes to:"
press 3
wait_for "to be processed again by"
press Right i
wait_for "Jar 5: unchecked, slight loss"
press i i
wait_for "Jar 5: unchecked, OVER HALF lost"
press f
wait_for "Over half the liquid is gone: unseal, fridge, eat in 2-3 days, or discard"
press 4
wait_for "Before the trash:" "Unsure how the jar was processed or acidified"
press Escape
wait_for "Jar 5: unchecked, OVER HALF lost, to be thrown out now"
at="shelving with jars unchecked"
step
wait_for "6 of 9 jars are not checked yet."
press e
wait_for "All checked: by which?"
press p t y Space
wait_for "All others are sealed. Space shelves the load."
shows "sealed" "reprocess" "discard"
press u
wait_for "Undone"
step
wait_for "6 of 9 jars are not checked yet."
press e
wait_for "All checked: by which?"
press p t y Space
wait_for "All others are sealed."
step
wait_for "Shelved. Wash the jars, label them"
shows "2 jars set aside"

at="the log afterwards"
is "phase of the jelly" "$(load_field place B1 "$practice")" shelf
is "verdict of the jelly" "$(load_field verdict B1 "$practice")" valid
is "minutes of the jelly" "$(load_field minutes B1 "$practice")" 15
is "hold starts of the jelly" "$(load_field hold_starts B1 "$practice")" 1
is "hold starts of the peaches" "$(load_field hold_starts B2 "$practice")" 2
is "verdict of the peaches" "$(load_field verdict B2 "$practice")" valid
is "pressure of the beans" "$(load_field pressure_psi B3 "$practice")" 15
is "phase of the beans" "$(load_field phase B3 "$practice")" cooling
jars=$own/jars
"$STILLROOM" jars --all --json -f "$practice" | grep -- '-B1"' >"$jars"
is "jars of the jelly" "$(wc -l <"$jars" | tr -d ' ')" 9
is "sealed jars" "$(grep -c '"state": "sealed"' "$jars")" 6
is "jars with a lid of box A" "$(grep -c '"lid_box": "Box A, spring"' "$jars")" 9
# Nobody looked at the lid of a jar whose fate was decided before.
holds "$jars" \
	'"place": 3, "size": "half_pint", "state": "unsealed", "siphoning": "none", "fate": "fridge"' \
	'"place": 4, "size": "half_pint", "state": "doubtful", "siphoning": "none", "fate": "reprocess"' \
	'"place": 5, "size": "half_pint", "state": "unchecked", "siphoning": "over_half", "fate": "discard"'

at="leaving"
press q
wait_for "Leave the board?" "Loads are open. Their clocks keep running in the log"
press y
ends main 0
finish
