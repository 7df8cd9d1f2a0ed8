#!/bin/sh
# A source is a publication: no site stands in what the program says, in its tables,
# documents, comments or tests.
#
# Needed, because others read them so: the names of JSON Schema's dialect and of the
# SVG namespace.
#
#   STILLROOM=program REPO=folder sh tests/house/test_no_site.sh
set -u
tree=$(mktemp -d) || exit 1
trap 'rm -rf "$tree"' EXIT
allowed='json-schema\.org|www\.w3\.org|://example\.invalid|file://|://[$%]'
ends='com|org|net|gov|edu|io|info|us|uk|ca|de|eu|tv|me|app|dev|blog|shop|site'
host="(^|[^A-Za-z0-9.-])([A-Za-z0-9-]+\\.)+($ends)([^A-Za-z0-9(_.-]|\\.?\$|\\.[^A-Za-z0-9])"
good=0
bad=0

# sites FILE...: what in them looks like a host or an address, what is allowed aside.
sites() {
	grep -aoE "$host|[a-z]+://[^ ]*" /dev/null "$@" | grep -avE "$allowed"
}

# clean "what it is" FILE...: nothing in them.
clean() {
	what=$1
	shift
	if sites "$@" >"$tree/found"; then
		bad=$((bad + 1))
		echo "failed: a site in $what:"
		sort -u "$tree/found"
	else
		good=$((good + 1))
	fi
}

# caught TEXT: this one is a site.
caught() {
	printf '%s\n' "$1" >"$tree/text"
	if sites "$tree/text" >"$tree/found"; then
		good=$((good + 1))
	else
		bad=$((bad + 1))
		echo "failed: not seen as a site: $1"
	fi
}

dot=.
caught "read at garden${dot}com"
caught "(www${dot}my-jams${dot}co${dot}uk copy)"
caught "a page of jars${dot}edu."
caught "see https:${dot:+//}somewhere/else"
echo "canner.c, boil.com_up, e.g. 5 psi, log.info(x), USDA. us" >"$tree/plain"
clean "plain words" "$tree/plain"

tr -cs '[:print:]' '\n' <"$STILLROOM" >"$tree/program"
if grep -q "extension office" "$tree/program"; then
	clean "the program" "$tree/program"
else
	bad=$((bad + 1))
	echo "failed: $STILLROOM has none of its own words"
fi
cd "$REPO" || exit 1
for where in README.md DEVELOPERS.md docs schema demo src tests; do
	find "$where" -type f >"$tree/files"
	if [ -s "$tree/files" ]; then
		# shellcheck disable=SC2046 # no blank in a name of the repository
		clean "$where" $(cat "$tree/files")
	else
		bad=$((bad + 1))
		echo "failed: nothing in $where"
	fi
done

echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
