#!/bin/sh
# README.md is one page: what it is for, a picture, two commands, five keys, the cautions in
# short with the way to all of them, and where to read on; at most 650 words.
set -u
cd "$REPO" || exit 1
MOST_WORDS=650
good=0
bad=0

# check WHAT COMMAND...
check() {
	what=$1
	shift
	if "$@" >/dev/null; then
		good=$((good + 1))
	else
		bad=$((bad + 1))
		echo "failed: README.md: $what"
	fi
}

words=$(wc -w <README.md)
check "$words words, $MOST_WORDS at most" [ "$words" -le "$MOST_WORDS" ]
check "the first paragraph says what it is for" sh -c 'sed -n 3p README.md | grep -q "^A timer board and a log for"'
check "the busy board is shown" grep -q '!\[[^]]*\](docs/pictures/board.svg)' README.md
check "make demo" grep -q '^make demo ' README.md
check "make check" grep -q '^make check ' README.md
keys=$(awk '/^## Five keys$/ { inside = 1; next } /^## / { inside = 0 } inside && /^\| / && !/^\| key / { n++ } END { print n + 0 }' README.md)
check "$keys keys, not five" [ "$keys" -eq 5 ]
for page in tutorial using safety keys commands configuration warnings log README; do
	check "no link to docs/$page.md" grep -q "](docs/$page.md)" README.md
done
check "Quince Hollow is said to be invented" grep -q 'invented' README.md
# The cautions are whole on their page, each under its own head.
for caution in 'cannot see your canner' 'Never taste' 'get emergency help at once' 'within two hours' \
	'authority' 'Outside the United States' '30 minutes without splashing' 'pressure canned' 'vacuum'; do
	check "docs/safety.md has no \"$caution\"" grep -q "$caution" docs/safety.md
done
# Every page is on the list of pages.
for page in docs/*.md docs/*/*.md; do
	[ "$page" = docs/README.md ] || check "docs/README.md does not name $page" grep -qF "](${page#docs/})" docs/README.md
done
echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
