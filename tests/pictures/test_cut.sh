#!/bin/sh
# No sentence is cut at the edge of a window.  "…" may end a cell, never what somebody reads
# there: each way in which it may stand is a line below, with its reason.  Whoever meets this test
# gives the line a brief wording (a table's `brief`, desk_fit), breaks it (desk_paragraph) or
# scrolls it (list_draw); a line here is the last way out.
set -u
cd "$REPO" || exit 1

cut=$(
	LC_ALL=C find tests/pictures -name '*.txt' -exec awk '
	function may(view, row) {
		# A row of a list that is not at the cursor: the cursor shows it whole (list_draw).
		if (marked && row ~ /^   / && view !~ /^(board|help)$/) return 1
		# An answer that was given, above the question that is asked: Up goes back to it.
		if (view == "entry" && row ~ /^   /) return 1
		# Of a number typed in a form the name of what it is: it stands whole in the list before.
		if (view == "entry" && row ~ /^ ▌ Quarter-pin…_/) return 1
		# What is in a station or load, beside its clock: the card, story and the wider window have it.
		if (view == "board" && row ~ /^.[0-9].*(with…|berry jam w|NOT VALID: |cups berry)/) return 1
		# What was done, in pages: Space goes on to the rest.
		if (view ~ /^(past|season|warnings)$/) return 1
		# The exceptions of a phase: each is whole under the cursor.
		if (view == "exceptions" && row ~ /^ [0-9]  /) return 1
		return 0
	}
	function done(   i) {
		for (i = 1; i <= rows; i++)
			if (row[i] ~ /…/ && !may(view, row[i])) print name ": " row[i]
	}
	FNR == 1 {
		if (name != "") done()
		name = FILENAME; rows = 0; marked = 0; roles = 0
		view = name; sub(/^tests\/pictures\//, "", view); sub(/\/.*/, "", view)
	}
	/^--------$/ { roles = 1 }
	!roles { row[++rows] = $0; if ($0 ~ /▌/) marked = 1 }
	END { done() }' {} +
)
seen=$(find tests/pictures -name '*.txt' | wc -l)

if [ -n "$cut" ]; then
	echo "failed: a sentence is cut:"
	echo "$cut"
	echo "0 passed, 1 failed"
	exit 1
fi
echo "$seen passed, 0 failed"
