#!/bin/sh
# The commands of the program and their options, as fields between tabs, from what --help
# says.  The word of the board is "-"; what is not there is "-".
#
#   STILLROOM=program sh tests/docs/command_list.sh
#
#   command  WORD  OPERANDS  NEEDED-OPTIONS  what it does
#   more     WORD  a line of what is said about it
#   option   WORD  LETTER  NAME  VALUE  what it does
set -eu

# about WORD: the help on standard input as such lines.
about() {
	awk -v word="$1" '
	function or_dash(text) { return text == "" ? "-" : text }
	/^Usage: / {
		operands = needed = ""
		for (i = word == "-" ? 3 : 4; i <= NF && $i != "[OPTION...]"; i++)
			if ($i ~ /^--/ || needed != "") needed = needed (needed == "" ? "" : " ") $i
			else operands = operands (operands == "" ? "" : " ") $i
		part = "help"
		next
	}
	part == "help" && /^ / { next }
	part == "help" {
		print "command\t" word "\t" or_dash(operands) "\t" or_dash(needed) "\t" $0
		part = "more"
		next
	}
	/^Commands:$/ { part = "commands"; next }
	/^Options:$/ { part = "options"; next }
	/^$/ { if (part != "more") part = "rest"; next }
	part == "more" { print "more\t" word "\t" $0 }
	part == "options" {
		letter = $1 ~ /^-[^-],$/ ? substr($1, 2, 1) : "-"
		at = letter == "-" ? 1 : 2
		name = substr($at, 3)
		rest = substr($0, index($0, "--" name) + length(name) + 2)
		value = "-"
		if (match(rest, /^ [^ ]+/)) {
			value = substr(rest, 2, RLENGTH - 1)
			rest = substr(rest, RLENGTH + 1)
		}
		sub(/^ +/, "", rest)
		print "option\t" word "\t" letter "\t" name "\t" value "\t" rest
	}'
}

"$STILLROOM" --help | about -
words=$("$STILLROOM" --help | awk '/^Commands:$/ { inside = 1; next } /^$/ { inside = 0 } inside { print $1 }')
[ -n "$words" ] || exit 1
for word in $words; do
	"$STILLROOM" "$word" --help | about "$word"
done
