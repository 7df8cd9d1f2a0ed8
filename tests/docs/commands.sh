#!/bin/sh
# docs/commands.md: what the program itself says of its commands, to standard output.
#
#   STILLROOM=program sh tests/docs/commands.sh
set -eu

cat <<'END'
# Commands

`stillroom` alone opens the board on your log. Everything else is a word behind it. (Made by
`make docs` from what `--help` says.)

Products may say more: `--product "3 x grape jelly in pints"`, and there may be several. Elevations
and weights carry their unit: `4650ft`, `1417m`, `60lb`, `27kg`. Foods, packs and jars are named as in
the tables (`grape juice`, `hot`, `half_pint`); methods are `boiling_water`, `steam`, `dial_gauge` and
`weighted_gauge`. Capitals, spaces and dashes do not matter. `--json` gives the same answer as JSON:
[json.md](json.md).

Exit status: 0 done, 1 something failed, 2 the command was not understood, 3 refused, with the reason
in one sentence.

## Examples

```
stillroom setup demo/quince-hollow.kitchen -f new.db       # a new log
stillroom boil --elevation 4650ft
stillroom process --food "grape juice" --pack hot --jar quart --method boiling_water --elevation 4650ft
stillroom season 2026
stillroom forecast --fruit grapes --weight 60lb --product "grape jelly"
stillroom forecast --fruit grapes --want 60 --jar pint --product "grape jelly"
stillroom shortage --fruit grapes --weight 60lb --product "grape jelly"
stillroom recall --lot 2026-09-14-B1                       # every jar of it, and where it is
stillroom labels --lot 2026-09-14-B1 --grid 3x10 --start 8 --out labels.html
stillroom export csv --out everything
stillroom import csv notebook.csv                          # says what it would do
stillroom rehearse --kitchen demo/quince-hollow-day.kitchen
```

## The program

```
END
"$STILLROOM" --help
echo '```'

# Between "Commands:" and the blank line behind them.
words=$("$STILLROOM" --help | awk '/^Commands:$/ { inside = 1; next } /^$/ { inside = 0 } inside { print $1 }')
[ -n "$words" ] || exit 1
for word in $words; do
	printf '\n## stillroom %s\n\n```\n' "$word"
	"$STILLROOM" "$word" --help
	echo '```'
done
