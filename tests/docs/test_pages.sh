#!/bin/sh
# The pages of docs/ that are made of tables are what the tables say now, to the letter.
# (docs/warnings.md: tests/report/board/test_rules_doc.sh.)
set -u
fresh=$(mktemp -d) || exit 1
trap 'rm -rf "$fresh"' EXIT
good=0
bad=0
cd "$REPO" || exit 1

# page NAME [FOLDER]: its fresh text is in $fresh/NAME.
page() {
	if [ -s "$fresh/$1" ] && cmp "$fresh/$1" "${2:-docs}/$1"; then
		good=$((good + 1))
	else
		bad=$((bad + 1))
		echo "failed: ${2:-docs}/$1 is old: run \"make docs\" and commit it"
	fi
}

# has NAME TEXT: the page has that line.
has() {
	if grep -qxF -- "$2" "$fresh/$1"; then
		good=$((good + 1))
	else
		bad=$((bad + 1))
		echo "failed: $1 has no line \"$2\""
	fi
}

for name in keys configuration commands; do
	"$SUPPORT/write_page" "$name" >"$fresh/$name.md"
	page "$name.md"
done

# The manual and what shells complete.
for name in stillroom.1 stillroom-log.5 stillroom-kitchen.5; do
	sh tests/docs/manual.sh "$name" >"$fresh/$name"
	page "$name" docs/man
done
for shell in bash zsh fish; do
	sh tests/docs/completion.sh "$shell" >"$fresh/stillroom.$shell"
	page "stillroom.$shell" docs/completion
done

# Each of the views has its section, and each command.
views=$(cat src/screen/*/*.c | grep -c '^const struct view [a-z_]* = {')
sections=$(grep -c '^## ' "$fresh/keys.md")
if [ "$views" -gt 30 ] && [ "$sections" -eq $((views + 1)) ]; then
	good=$((good + 1))
else
	bad=$((bad + 1))
	echo "failed: $views views, $sections sections in keys.md"
fi
has keys.md "## In every view"
has keys.md "## Seal check"
has commands.md "## stillroom process"
has commands.md "## stillroom restore"
if "$SUPPORT/write_page" nothing >"$fresh/none" 2>&1; then
	bad=$((bad + 1))
	echo "failed: write_page makes a page that there is not"
else
	good=$((good + 1))
fi

# Every example is understood: its command and its options are ones the program has.
awk '/^## Examples$/ { inside = 1 } inside && /^```$/ { if (++fence == 2) exit } inside && /^stillroom / { sub(/ +#.*/, ""); print }' \
	"$fresh/commands.md" >"$fresh/examples"
while IFS= read -r example; do
	eval "set -- $example"
	shift
	if "$STILLROOM" "$@" --help >"$fresh/said" 2>&1; then
		good=$((good + 1))
	else
		bad=$((bad + 1))
		echo "failed: $example"
		cat "$fresh/said"
	fi
done <"$fresh/examples"
if [ "$(wc -l <"$fresh/examples")" -lt 10 ]; then
	bad=$((bad + 1))
	echo "failed: no ten examples were found"
fi
echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
