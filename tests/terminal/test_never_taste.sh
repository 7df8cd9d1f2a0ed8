#!/bin/sh
# Why nobody tastes: one key from any view, and every step readable in the smallest window.
# Disposal: USDA AIB 539, rev. 2015, Guide 1, p. 1-26 to 1-27.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

real_log

at="from the board and back"
open_window main 80 24 "'$STILLROOM' -f '$log'"
wait_for "4,650 ft" "? keys"
press !
wait_for "Never taste to find out." "Double vision, drooping eyelids, slurred speech" "emergency help NOW"
shows "lid on; boil" "30 min; cool; throw out jar, lid and food." "Space more"
press Space
wait_for "3. Unsure how the jar was processed or acidified" "Space read"
press Up
wait_for "2. Mold on jam or jelly" "3. Unsure"
press Escape
wait_for "Choose a station"

at="from the shelf, and not while a line is typed"
press g
wait_for "On the shelf"
press !
wait_for "Never taste to find out."
press Escape
wait_for "On the shelf"
press c
wait_for "Enter keeps it"
press !
wait_for "!_"
press Escape
close_window main

at="page by page in the smallest window"
open_window main 40 12 "'$STILLROOM' -f '$log'"
wait_for "4,650 ft" "? keys"
press !
wait_for "Never taste to find out." "emergency help NOW."
for words in "That is botulism." "3. Unsealed, open or leaking" "4. Then: 1 part household bleach" "3. Unsure how the jar"; do
	shows "Space more"
	press Space
	wait_for "$words"
done
shows "Space read"
press Space
wait_for "No clock runs."
close_window main
finish
