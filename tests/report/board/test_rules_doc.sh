#!/bin/sh
# docs/warnings.md is what the program says of its rules, to the letter.
set -eu

fresh=$(mktemp)
trap 'rm -f "$fresh"' EXIT
"$STILLROOM" warnings --rules >"$fresh"
if ! cmp "$fresh" "$REPO/docs/warnings.md"; then
	echo "docs/warnings.md is old: run \"make docs\" and commit it" >&2
	exit 1
fi
# Every rule of the table has its line there, with a severity and a source.
rules=$(grep -c '^	\(STOP\|CAUTION\|NOTE\)(' "$REPO/src/engine/rules/rule_table.c")
# shellcheck disable=SC2016 # a pattern, not a command
lines=$(grep -c '^| `[a-z-]*` | \(stop\|caution\|note\) | [^|]* | [^|]* | [^|]* | [^|]* | [^|][^|]* |$' "$fresh")
if [ "$rules" -ne "$lines" ]; then
	echo "$rules rules in the table, $lines lines in the list" >&2
	exit 1
fi
echo "1 passed, 0 failed"
