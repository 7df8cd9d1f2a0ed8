#!/bin/sh
# The day's plan on the practice clock: a draft, its pages, what one more of
# something would save, going by it, and what the board says from then on; from
# the forecast into the plan; at 80 x 24 and 40 x 12.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"
KITCHEN=$REPO/demo/quince-hollow-day.kitchen

# Nothing needs to pass: a slow clock, so that "now" stays now.
practise 80 24 2

at="a draft"
press p
wait_for "A draft: it would end about" "g accepts it." "Busiest: the" "No plan ends before" "hands" "1 Big kett"
shows "J run" "H hold" "x unload" " %"
press Right
wait_for "hands"
press n
wait_for "planned    12 lb grapes" "planned    grape jelly, 8 jars" "apple butter"
press n
wait_for "The times it plans with." "5 burners, fill at 2" "helper MK" "helper RW, from 09:00" "break 12:30 to 13:00" \
	"boiling water  come-up" "as is usual"
press e
wait_for "somebody who helps" "a break for a meal"
press Enter
wait_for "Who helps?"
type_text ZZ
press Enter
wait_for "From when on?"
press Enter
wait_for "Noted: ZZ helps." "helper ZZ"
press u
wait_for "Undone:"
wait_gone "helper ZZ"
press m
wait_for "Half of the helpers eat, then the others." "break 12:30 to 13:00, in turns"
press u
wait_for "break 12:30 to 13:00, together"

at="one more of something"
press n n o
wait_like "one more .*: saves"

at="a row in, a row out"
press b
wait_for "Which recipe?"
type_text "grape juice"
press Enter
wait_for "Which size?" "pints"
type_text pints
press Enter
wait_for "How many times the recipe in one pot?" "times, at most 8"
press Enter
wait_for "How many such batches"
press Enter
wait_for "When will its juice be here?"
press Enter
wait_for "Not before when?"
press Enter
wait_for "Noted: planned grape juice in pints." "grape juice, "
press u
wait_for "Undone:"
wait_gone "grape juice, "
press Home
press r
wait_for "Which fruit?"
type_text grapes
press Enter
wait_for "How much goes into one basket?"
type_text "2 gal"
press Enter
wait_for "2 gal"
press Escape
wait_gone "How much goes into one basket?"

at="going by it"
press g
wait_for "The day follows this plan." "the plan said" "on time. 0 of" "MK    now" "JO    now"
shows "4     now" "6 "
press Space
wait_gone "the plan said"
wait_like "[0-9]:[0-9][0-9], ends about [0-9]"
shows "free; now: Fill Tall juicer and heat: 12 lb grapes"

at="the questions come with their answers"
go 4
step
wait_for "Fruit           grapes_"
press Enter
wait_for "Weight          12 lb_"
press Enter
wait_for "Noted: grapes, 12 lb; its water clock runs."
press p
wait_for "the plan said"
press n n
wait_for "going on   12 lb grapes"
press Escape
go 4
press u
wait_for "Undone:"
press p n n
wait_for "planned    12 lb grapes"
press Escape

at="a pot as planned"
go 7
step
wait_for "As planned" "; Left for another."
press Escape

at="a narrow window"
tm resize-window -t "$window" -x 40 -y 12
wait_for "4,650 ft"
press p
wait_for "the plan" "JO    "
press n
wait_for "hands"
press Escape
tm resize-window -t "$window" -x 80 -y 24
wait_for ", ends about "

at="from the forecast into the plan"
press g
wait_for "On the shelf"
press f
wait_for "Which fruit"
type_text grapes
press Enter
wait_for "How much of it"
type_text "12 lb"
press Enter
wait_for "12 lb of grapes"
press p
wait_for "Fruit arrives at"
press Enter
wait_for "In the plan."
press u
wait_for "Undone:"

at="forgetting it"
press z
wait_for "Drop the whole plan? yes:"
type_text no
press Enter
wait_for "The plan stays."
finish
