#!/bin/sh
# A whole day on a practice clock that is put forward, at 80 x 24: two juicers, two pots, three
# canners and the rack, twelve clocks at once.  Fruit to juice to pot to jars to
# canner, with what goes wrong on the way and every kind of act taken back.
# What is said of products, minutes and yields is that of the tables for 4,650 ft.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"
KITCHEN=$REPO/demo/quince-hollow-day.kitchen

# reply TEXT: to the question that is open.
reply() {
	wait_for "Enter keeps it"
	type_text "$1"
	press Enter
}

# undone TEXT: u takes it back and says what it was.
undone() {
	press u
	wait_for "Undone: $1"
}

# shows_clocks REGEX...: lines like that are on the screen now.
shows_clocks() {
	look
	for line in "$@"; do
		if grep -q -- "^.$line" "$screen"; then good; else bad "no line like \"$line\""; fi
	done
}

# fill COUNT JARS BOX KEY...: fill so many, with lids of that box.
fill() {
	wait_for "Filled into which jars?"
	if [ "$2" = pints ]; then press Down; fi
	step
	wait_for "How many?"
	type_text "$1"
	wait_for "$1 $2"
	step
	wait_for "Lids from which box?" "$3"
	if [ $# -gt 3 ]; then press "$4"; fi
	step
	wait_for "Bottled acid in the POT?" "bottled lemon juice, in the pot: it is in"
	step
	wait_for "Space writes them down."
	step
	wait_for "$1 jars filled."
}

# pass MINUTES: of the day, with the board closed meanwhile.
pass() {
	press q
	wait_for "Leave the board?"
	press y
	ends main 0
	close_window main
	"$SUPPORT/pass_time" "$practice" "$1" || bad "the time does not pass"
	open_window main 80 24 "'$STILLROOM' rehearse --scratch '$practice'"
	wait_for "PRACTICE"
}

# Slow enough that two minutes, in which a clock may be taken back, are half a minute;
# a step counts 1.5 s after the one before.
practise 80 24 4
settling=0.4

at="the empty board"
wait_for "7 Deep pot" "4 Tall juicer" "Choose a station with its digit"

at="peaches in both kettles"
for kettle in 1 2; do
	card "$kettle" peaches
	answer "How is it packed?"
	answer "Which jars?"
	answer "How many jars?"
	answer "Which lid box?"
	answer "Ready."
	wait_for "Space heat is on"
	do_step come-up
	do_step hold
done

at="juice runs"
go 4
wait_for "Space start a run"
step
reply grapes
reply "20 lb"
wait_for "its water clock runs." "20 lb grapes"
undone "Tall juicer: run started, 20 lb grapes"
wait_like "^[^ ]4 Tall juicer  *free"
press r
wait_like "^[^ ]4.Tall juicer  *heat"
press i
reply EN
wait_for "Noted: EN has Tall juicer."
wait_like "^[^ ]4.Tall juicer .* 20 lb grapes  *EN$"
do_step run
go 5
step
reply apples
reply "15 lb"
wait_for "15 lb apples"
do_step run

at="juice brought in"
press j
wait_for "No juice in stock."
press n
wait_for "Of which fruit?"
reply grape
wait_for "How much?"
reply "3 gal"
wait_for "Hot, chilled or frozen?"
press Enter
wait_like "3 gal  *grape, chilled, 0 h old"
press f
wait_like "3 gal  *grape, frozen"
undone "grape juice: now frozen"
wait_like "3 gal  *grape, chilled"
press Escape

at="regular pectin twice"
go 6
wait_for "Space start a batch"
step
wait_for "What are you cooking?"
type_text grapejelly
wait_for "grapejelly_"
press Enter
wait_for "Which jars and pack?"
step
wait_for "Which size?"
step
wait_for "How many batches in this pot?"
type_text 2
wait_for "regular pectin is made one batch a pot" "Make 2 separate batches."
step
shows "How many batches in this pot?" # no reason makes the pot larger: it does not go on
press Escape

at="a shortage"
step
wait_for "What are you cooking?"
type_text blackberryjelly
wait_for "blackberryjelly_"
press Enter
answer "Which jars and pack?"
answer "Which size?"
wait_for "How many batches in this pot?" "SHORT: none here" "Do not stretch it."
step
wait_for "Space starts the batch"
step
wait_for "Not enough blackberry juice: 3-1/2 cups needed, none here. Do not stretch it." "j and n write down juice that is here."
press Escape
wait_for "Space start a batch"

at="four times low sugar in the deep pot"
go 7
step
wait_for "What are you cooking?"
type_text lowsugar
wait_for "lowsugar_"
step # several names have that: a blank chooses none of them
shows "What are you cooking?"
press Enter
answer "Which size?"
wait_for "How many batches in this pot?"
type_text 4
# A gallon of juice, eight cups of sugar, and lemon juice as the invented sheet says.
wait_for "1 gal grape juice (3 gal here)" "3/4 cup bottled lemon juice" "8 cups sugar (40 lb here)"
shows "About 22 half-pints (21 to 23); 60 here" "7 Deep pot > grape jelly, low sugar > half-pints"
step
wait_for "Space starts the batch" "> 4 batches"
step
wait_for "Batch started; what it needs is off the shelf."
press Escape
wait_chosen 7
undone "Deep pot: batch started, 4 x grape jelly, low sugar"
wait_like "^[^ ]7 Deep pot  *free"
press r
wait_for "Redone: Deep pot: batch started"
press c
press @
wait_for "Source: house recipe, no source; pectin"
press Escape
wait_for "to boil" "[ ] 1 gal grape juice, at the start"

at="the station card"
press t
wait_gone "[ ] 1 gal"
press t
wait_like "] 3/4 cup  bottled lemon"
undone "grape jelly, low sugar: line 2 done"
shows "[ ] 3/4 cup bottled lemon juice"
press Down
press e
wait_for "Actually used: 8 cups"
press C-u
reply "7 1/2 cups"
wait_for "Corrected, on the shelf too." "7 1/2 cups sugar"
undone "Corrected: grape jelly, low sugar had"
wait_for "8 cups sugar"
press Escape
wait_chosen 7

at="boil and boil-hold of the deep pot"
pass 40
go 7
do_step "the sugar goes in"
do_step "back to the boil"
do_step boil-hold
pass 2
wait_for "SPOILS NOW" "OFF the heat NOW, skim"
go 7
press a
wait_for "Heard: 7 Deep pot, quiet until"
do_step "off the heat"
do_step "fill the jars"
step_to "Filled into which jars?" # others ring
wait_for "Are the jars hot? w says so."
press w
wait_for "Jars are hot."
fill 8 half-pints "Box A, spring (44 left)"
undone "Deep pot: 8 half-pints of grape jelly, low sugar filled"
wait_for "0 jars so far"
fill 8 half-pints "Box A, spring (44 left)"
fill 9 pints "Box B, summer (48 left)" Down
wait_for "17 jars so far"
sleep 1.6 # a press this soon after the filling began does not count
press d
wait_for "The pot is empty: rinse it."
wait_for "17 filled jars wait for a canner"

# By how long it took to come here, the pan may be dry already: then it is asked about, and said otherwise.
# shellcheck disable=SC2317 # run by until_true
asked_or_noted() {
	sees "press a again" || sees "Noted: $1"
}

water_noted() {
	until_true asked_or_noted "$1"
	if sees "press a again"; then press a; fi
	wait_like "Noted: $1, \(water checked and topped up\|its pan has cooled and is filled\)\."
}

at="water of a juicer that is not chosen is asked about"
wait_like "4!Tall juicer .* WATER +"
press a
# By how long it took to come here, the pan is dry already.
wait_like "4 Tall juicer: \(was its water checked and topped up? Press a again if so\|heat OFF, let the dry pan cool, fill it. Done: press a again\)\."
go 4
press a
water_noted "4 Tall juicer"
undone "Tall juicer: water"
press a
water_noted "4 Tall juicer"
go 5
wait_like "5!Old juicer .* WATER +"
press a
water_noted "5 Old juicer"

at="first juice"
go 4
press x
wait_for "some juice is drawn off now: measure it"
step
reply "2 qt"
wait_for "Noted: the juice is in stock"
undone "Tall juicer: 2 qt"
press r
wait_for "Redone: Tall juicer: 2 qt"

at="kettles emptied"
for kettle in 1 2; do
	go "$kettle"
	do_step rest
done
pass 6
for kettle in 1 2; do
	go "$kettle"
	do_step unload
	sleep "$settling"
	step_to "The station is free."
done

at="the loader"
go 1
wait_for "Space load the waiting jars"
step_to "Filled jars that wait"
wait_for "Where they go"
step
wait_for "Load started."
go 2
step_to "Filled jars that wait"
wait_for "Where they go"
step
wait_for "Load started."
undone "Low kettle: load started"
press r
wait_for "Redone: Low kettle: load started, 15 min: 7 pints grape jelly"

at="beans packed without a pot"
go 3
step_to "None of it goes into this canner."
press n
wait_for "What goes in?"
type_text greenbeans
wait_for "greenbeans_"
press Enter
answer "How is it packed?" Down
answer "Which jars?"
answer "How many jars?"
answer "Which lid box?"
answer "Ready."
wait_for "7 quarts green beans"
do_step come-up
do_step vent

at="regular pectin once"
go 6
step_to "What are you cooking?"
type_text grapejelly
wait_for "grapejelly_"
press Enter
answer "Which jars and pack?"
answer "Which size?"
# What is left after the drawing and the other batch: 3 gal + 2 qt - 1 gal; 40 lb
# less 8 cups of 200 g; 60 jars less 8.
wait_for "5 cups grape juice (2 gal 2 qt here)" "7 cups sugar (36 lb 8 oz here)" "52 here"
step
wait_for "Space starts the batch"
step
# Both kettles have just been loaded.
wait_for "No canner is free in time: the jars would wait too long. Start anyway?"
step
wait_for "Batch started"
press Escape
wait_chosen 6
do_step "the sugar goes in"
do_step "back to the boil"
go 1
do_step come-up
do_step hold
go 2
do_step come-up
go 6
do_step boil-hold

at="twelve clocks at once"
pass 2
wait_for "SPOILS NOW"
shows_clocks "1.Big kettle  *hold  *+\{0,1\}[0-9:]*" \
	"2.Low kettle  *come-up  *for  *[0-9:]*" \
	"3.Weight canner  *vent  *+\{0,1\}[0-9:]*" \
	"4.Tall juicer  *run  *+\{0,1\}[0-9:]*\( min\)\{0,1\} \(WATER +\|water \)[0-9:]*\( min\)\{0,1\} \(20 lb\|Water pan\|Heat OFF\)" \
	"5.Old juicer  *run  *+\{0,1\}[0-9:]*\( min\)\{0,1\} \(WATER +\|water \)[0-9:]*\( min\)\{0,1\} \(15 lb\|Water pan\|Heat OFF\)" \
	"6!Wide pot  *boil-hold  *+[0-9:]* OFF the heat NOW" \
	"7 Deep pot  *rinse  *for  *[0-9:]*\( min\)\{0,1\} 4 x grape jelly, low sugar" \
	"0 [-0-9]*-B1  *cooling, seals [a-z]* [0-9:]*  9 pints peaches" \
	"0 [-0-9]*-B2  *cooling, seals [a-z]* [0-9:]*  7 pints peaches" \
	"  1 filled jar waits for a canner, [0-9:]*"
for digit in 1 2 3 4 5 6 7; do go "$digit"; done
press 0
wait_like "^[^ ]0 [-0-9]*-B1"
press a
wait_for "Heard: 6 Wide pot, quiet until"

at="whose acts they were"
go 4
press s
wait_for "What was done, oldest first"
shows "EN: Tall juicer: steady boil: start the run" "EN: Tall juicer: 2 qt of grapes juice measured"
press Escape

at="the log afterwards"
press q
wait_for "Leave the board?"
press y
ends main 0
whole "$practice"
loads=$own/loads
"$STILLROOM" loads --all --json -f "$practice" >"$loads"
is "loads" "$(grep -c '"lot"' "$loads")" 5
is "loads of the jelly" "$(grep -c '"product": "grape jelly, low sugar"' "$loads")" 2
is "its jars" "$(load_field jars B3 "$practice" | tr '\n' ' ')" "9 7 "
is "its minutes" "$(load_field minutes B3 "$practice" | tr '\n' ' ')" "15 15 "
is "its phases" "$(load_field phase B3 "$practice" | tr '\n' ' ')" "hold come_up "
is "places of the peaches" "$(load_field place B1 "$practice") $(load_field place B2 "$practice")" "rack rack"
is "verdict of the peaches" "$(load_field verdict B1 "$practice")" valid
is "phase of the beans" "$(load_field phase B4 "$practice")" vent
jars=$own/jars
"$STILLROOM" jars --all --json -f "$practice" | grep '"place"' >"$jars"
is "jars in canners and on the rack" "$(grep -c '"load": [0-9]' "$jars")" 39
is "jars of the jelly there" "$(grep '"load": [0-9]' "$jars" | grep -c -- '-B3"')" 16
is "its half-pints" "$(grep -- '-B3"' "$jars" | grep -c '"half_pint".*"lid_box": "Box A, spring"')" 8
is "its pints in a canner" "$(grep '"load": [0-9]' "$jars" | grep -- '-B3"' | grep -c '"pint".*"lid_box": "Box B, summer"')" 8
finish
