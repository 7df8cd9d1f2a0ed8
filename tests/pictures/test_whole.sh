#!/bin/sh
# No stop and no caution is cut at the edge of a window: in no picture does a row end with "…"
# whose last role is one of these.  Rows of a list are none: what they are about stands whole
# elsewhere.
set -u
cd "$REPO" || exit 1

cut=$(
	LC_ALL=C find tests/pictures -name '*.txt' ! -path '*/trace/*' ! -path '*/fates/*' ! -path '*/shortage/*' \
		! -path '*/supplies/*' \
		-exec awk '
		FNR == 1 { roles = 0; split("", row) }
		/^--------$/ { roles = 1; next }
		!roles { row[FNR] = $0; next }
		/^ *[0-9]+: .*(stop|STOP|caution)$/ {
			line = $1 + 0
			if (row[line] ~ /…$/) print FILENAME ": " row[line]
		}' {} +
)
seen=$(find tests/pictures -name '*.txt' -exec grep -lE '(stop|STOP|caution)$' {} + | wc -l)

if [ -n "$cut" ]; then
	echo "failed: a stop or a caution is cut:"
	echo "$cut"
	echo "0 passed, 1 failed"
	exit 1
fi
if [ "$seen" -lt 50 ]; then
	echo "failed: the pictures have no stops and cautions any more, or their roles read otherwise"
	echo "0 passed, 1 failed"
	exit 1
fi
echo "$seen passed, 0 failed"
