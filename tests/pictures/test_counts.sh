#!/bin/sh
# A number and its noun agree (base/count.h): in no picture stands "1 jars", and no sentence of
# the sources puts a noun in the plural behind a count of its own.
set -u
cd "$REPO" || exit 1

# Words in -s that may stand behind a one: the verb of a station ("1 rings").
allowed='1 (rings|gets|holds|takes|is|was|has)$'
nouns='jars|half-pints|pints|quarts|lids|bands|packages|batches|runs|loads|pots|baths|canners|stations|helpers'
nouns="$nouns|trays|burners|boxes|lots|times|people|persons|things"

wrong_pictures() {
	LC_ALL=C find "$1" -name '*.txt' -exec grep -noE '(^|[^0-9A-Za-z.,/])1 [a-z]+s\b' {} + | grep -vE "$allowed"
}

# "1 to %d jars" is a range; a constant in capitals behind it is no count.
wrong_sources() {
	LC_ALL=C find "$1" -name '*.c' -exec grep -nE "%(d|zu|lld|u) ($nouns)\\b" {} + |
		grep -vE '(to|most|after|After|exactly) %[a-z]+ |_MAX'
}

tree=$(mktemp -d) || exit 1
trap 'rm -rf "$tree"' EXIT
passed=0
failed=0
# says WHAT WANTED FOUND
says() {
	if [ "$2" = "$3" ]; then
		passed=$((passed + 1))
	else
		failed=$((failed + 1))
		printf 'failed: %s\n%s\n' "$1" "$3"
	fi
}

printf ' 1 jars\n 21 jars, 1.1 quarts, 1/1 pints, B1 counts, 1 rings\n 3 h, 1 loads\n' >"$tree/a.txt"
printf 'f("%%d jars today", n);\nf("1 to %%d jars", JARS);\nf("%%d batches need", n);\n' >"$tree/a.c"
says "what is wrong in a picture is found" 2 "$(wrong_pictures "$tree" | wc -l | tr -d ' ')"
says "what is wrong in a source is found" 2 "$(wrong_sources "$tree" | wc -l | tr -d ' ')"
says "no picture has one of many" "" "$(wrong_pictures tests/pictures)"
says "no source counts by hand" "" "$(wrong_sources src)"

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
