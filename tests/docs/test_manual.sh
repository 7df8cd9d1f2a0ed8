#!/bin/sh
# The manual has each command with each of its options, each key of each view, each key of
# the configuration, each table of an export and each line of a kitchen file, and its pages
# name one another.  (That they are fresh: test_pages.sh.  That they are clean: make lint.)
#
#   STILLROOM=program REPO=folder sh tests/docs/test_manual.sh
set -u
own=$(mktemp -d) || exit 1
trap 'rm -rf "$own"' EXIT
good=0
bad=0
cd "$REPO" || exit 1

pass() { good=$((good + 1)); }
fail() {
	bad=$((bad + 1))
	echo "failed: $*"
}

# has PAGE LINE: the page has that line, whole.
has() {
	if grep -qxF -e "$2" "docs/man/$1"; then pass; else fail "$1 has no line: $2"; fi
}

# counted "what" LEAST FILE: enough lines were looked for.
counted() {
	if [ "$(wc -l <"$3")" -ge "$2" ]; then pass; else fail "hardly any $1"; fi
}

# Below the head of a command stand its options, as lines of a list.
sh tests/docs/command_list.sh >"$own/list" || exit 1
counted options 100 "$own/list"
tab=$(printf '\t')
while IFS="$tab" read -r what word letter name value _; do
	case $what in
	command) if [ "$word" = - ]; then has stillroom.1 ".Ss The board"; else has stillroom.1 ".Ss $word"; fi ;;
	option)
		case $word:$name in
		-:*) ;;
		*:help | *:version) continue ;;
		esac
		line=".It $([ "$letter" = - ] || echo "Fl $letter , ")Fl \\-$name$([ "$value" = - ] || echo " Ar $value")"
		head=".Ss $([ "$word" = - ] && echo "The board" || echo "$word")"
		awk -v head="$head" '/^\.S[sh] / { inside = $0 == head; next } inside' docs/man/stillroom.1 >"$own/part"
		if grep -qxF -e "$line" "$own/part"; then pass; else fail "stillroom.1, $word: $line"; fi
		;;
	esac
done <"$own/list"

# rows FILE: the first cell of each row of its tables, without its marks.
rows() {
	awk '/^\|/ { if (++row > 2) { gsub(/\\\|/, "\001"); split($0, cell, / *\| */); print cell[2] } next } { row = 0 }' "$1" \
		| tr '\001' '|' | tr -d '`' | sort -u
}

# all_of PAGE FILE LEAST: each first cell is the tag of a list.
all_of() {
	rows "$2" >"$own/cells"
	counted "rows of $2" "$3" "$own/cells"
	sed -n 's/^\.It "\(.*\)"$/\1/p' "docs/man/$1" | sed -e 's/\\f[BR]//g' -e 's/\\(dq/"/g' -e 's/\\-/-/g' -e 's/\\e/\\/g' \
		| sort -u >"$own/tags"
	comm -23 "$own/cells" "$own/tags" >"$own/missing"
	if [ -s "$own/missing" ]; then fail "$1 lacks of $2: $(cat "$own/missing")"; else pass; fi
}
all_of stillroom.1 docs/keys.md 60
all_of stillroom.1 docs/configuration.md 9
all_of stillroom-kitchen.5 docs/kitchen-file.md 15
sed -n 's/^## /.Ss /p' docs/keys.md >"$own/heads"
while IFS= read -r head; do has stillroom.1 "$head"; done <"$own/heads"
"$STILLROOM" export json --schema | sed -n 's/^		"\([a-z_]*\)": {$/.It "\\fB\1\\fR"/p' >"$own/tables"
counted tables 25 "$own/tables"
while IFS= read -r table; do has stillroom-log.5 "$table"; done <"$own/tables"

for page in stillroom.1 stillroom-log.5 stillroom-kitchen.5; do
	has "$page" ".Nm ${page%.*}"
	for other in stillroom:1 stillroom-log:5 stillroom-kitchen:5; do
		[ "$page" = "${other%:*}.${other#*:}" ] || grep -q "^\.Xr ${other%:*} ${other#*:}" "docs/man/$page" || fail "$page does not name $other"
	done
	# Nothing of Markdown is left, and no request that a word made by chance.
	if grep -nE '`|\]\(|\*\*|^\|' "docs/man/$page"; then fail "$page has marks of a page of docs/"; else pass; fi
	if grep -nE "^'|^\\.[^A-Z]" "docs/man/$page" | grep -v '^1:'; then fail "$page has a line that is no text"; else pass; fi
done
echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
