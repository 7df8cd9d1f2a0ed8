#!/bin/sh
# Sentences that a person reads do without the words of tests/data/words_not_used.txt:
# the strings of src/, the texts of schema/, the documents and the examples of a kitchen.
#
#   REPO=folder sh tests/docs/test_words.sh
set -u
own=$(mktemp -d) || exit 1
trap 'rm -rf "$own"' EXIT
list=$REPO/tests/data/words_not_used.txt
good=0
bad=0

pass() {
	good=$((good + 1))
}

fail() {
	bad=$((bad + 1))
	echo "failed: $*"
}

# "anew | again" -> one expression for all of the list, word by word.
sed -e '/^#/d' -e 's/ *|.*//' -e 's/[.]/\\./g' "$list" >"$own/words"
words=$(tr '\n' '|' <"$own/words" | sed 's/|$//')
unwanted="(^|[^[:alnum:]-])($words)(\$|[^[:alnum:]-])"

# strings FILE.c...: each string of C, its pieces joined, without the comments.
strings() {
	awk '
	function flush() {
		if (said != "")
			print FILENAME ":" at ": " said
		said = ""
	}
	FNR == 1 { flush(); comment = 0 }
	{
		rest = $0
		while (rest != "") {
			if (comment) {
				end = index(rest, "*/")
				if (end == 0)
					break
				rest = substr(rest, end + 2)
				comment = 0
			} else if (match(rest, /^[ \t]+/)) {
				rest = substr(rest, RLENGTH + 1)
			} else if (substr(rest, 1, 2) == "/*") {
				comment = 1
				rest = substr(rest, 3)
			} else if (match(rest, /^"([^"\\]|\\.)*"/)) {
				if (said == "")
					at = FNR
				said = said substr(rest, 2, RLENGTH - 2)
				rest = substr(rest, RLENGTH + 1)
			} else {
				flush()
				if (match(rest, /^\047([^\047\\]|\\.)+\047/) || match(rest, /^[^"\047\/ \t]+/))
					rest = substr(rest, RLENGTH + 1)
				else
					rest = substr(rest, 2)
			}
		}
	}
	END { flush() }' "$@" | sed 's/\\n/ /g'
}

# paragraphs FILE.md...: each on one line, so that a line end hides nothing.
paragraphs() {
	awk '
	function flush() {
		if (said != "")
			print FILENAME ":" at ": " said
		said = ""
	}
	FNR == 1 || NF == 0 { flush() }
	NF > 0 {
		if (said == "")
			at = FNR
		gsub(/^[ \t]+/, "")
		said = said (said == "" ? "" : " ") $0
	}
	END { flush() }' "$@"
}

# without_them "what it is" FILE: none of the words in it.
without_them() {
	if grep -oiE ".{0,60}$unwanted.{0,60}" "$2" >"$own/found"; then
		fail "a word of $list in $1:"
		cat "$own/found"
	else
		pass
	fi
}

# caught "what it is" FILE: it is not let pass.
caught() {
	if grep -qiE "$unwanted" "$2"; then pass; else fail "not seen: $1"; fi
}

# Each word of the list is seen, alone and in a sentence, with a capital or without.
while read -r word; do
	echo "$word" >"$own/text"
	caught "$word" "$own/text"
	echo "Jars, $word." | tr '[:lower:]' '[:upper:]' >"$own/text"
	caught "$word in capitals" "$own/text"
done <"$own/words"

# A string in two pieces is one; a comment is none; an id keeps its words.
cat >"$own/pieces.c" <<'C'
static const char *const said = "It is worked out "
                                "ane" /* a comment */ "w.";
C
strings "$own/pieces.c" >"$own/text"
caught "a string in pieces" "$own/text"
cat >"$own/plain.c" <<'C'
/* anew: "so many", all the same */
static const char id[] = "judged-anew-blocks", quote = '"', other[] = "two \"jars\"";
C
strings "$own/plain.c" >"$own/text"
without_them "comments and ids" "$own/text"
printf 'No more than so\nmany jars.\n' >"$own/page.md"
paragraphs "$own/page.md" >"$own/text"
caught "words on two lines" "$own/text"

cd "$REPO" || exit 1
find src -name '*.[ch]' | sort >"$own/files"
# shellcheck disable=SC2046 # no blank in a name of the repository
strings $(cat "$own/files") >"$own/strings"
if [ "$(wc -l <"$own/strings")" -gt 5000 ]; then pass; else fail "hardly a string in src"; fi
without_them "the program" "$own/strings"
cat schema/*.csv >"$own/tables"
without_them "schema" "$own/tables"
paragraphs README.md DEVELOPERS.md docs/*.md docs/decisions/*.md >"$own/pages"
without_them "the documents" "$own/pages"
cat demo/*.kitchen >"$own/examples"
without_them "the examples" "$own/examples"
echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
