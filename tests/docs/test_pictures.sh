#!/bin/sh
# The pictures of docs/ are what the board shows now, to the byte; each is shown by a page
# and says in words what is to be seen.
set -u
fresh=$(mktemp -d) || exit 1
trap 'rm -rf "$fresh"' EXIT
good=0
bad=0
cd "$REPO" || exit 1

tell() {
	bad=$((bad + 1))
	echo "failed: $*"
}

if ! "$SUPPORT/draw_pictures" demo/quince-hollow-day.kitchen "$fresh" tests/data/tutorial_day.txt >"$fresh/said" 2>&1; then
	cat "$fresh/said"
	echo "the day of the tutorial cannot be gone through any more: correct tests/data/tutorial_day.txt and docs/tutorial.md"
	exit 1
fi
for drawn in "$fresh"/*.svg; do
	name=${drawn##*/}
	if cmp "$drawn" "docs/pictures/$name"; then
		good=$((good + 1))
	else
		tell "docs/pictures/$name is old: look at what has changed, run \"make pictures\" and commit it"
	fi
	for part in title desc; do
		if grep -q "^<$part id=\"[a-z]*\">[^<][^<]*</$part>\$" "$drawn"; then good=$((good + 1)); else tell "$name has no $part"; fi
	done
done
for kept in docs/pictures/*; do
	name=${kept##*/}
	if [ ! -f "$fresh/$name" ]; then tell "$kept is drawn by nothing"; fi
	# An empty alternative text is one that nobody hears.
	if grep -qE "!\[[^]]+\]\([a-z/]*pictures/$name\)" README.md docs/*.md; then
		good=$((good + 1))
	else
		tell "no page shows $kept with words for those who do not see it"
	fi
done

# A picture that is cut short, or has another letter, is found to be old.
first=$fresh/board.svg
sed 's/keys/kegs/' "$first" >"$fresh/other"
head -c 1000 "$first" >"$fresh/short"
for spoiled in other short; do
	if cmp -s "$first" "$fresh/$spoiled"; then tell "a spoiled picture counts as the same ($spoiled)"; else good=$((good + 1)); fi
done
echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
