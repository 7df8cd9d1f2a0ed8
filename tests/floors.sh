#!/bin/sh
# The rules of the house that grep can check; says each offence, ends with 1.
#
#   sh tests/floors.sh [root of the tree]
#
# 1. Includes point down only: screen, report -> kitchen -> log -> engine -> base; bake -> engine.
#    Screen and report know neither each other nor the log by a direct include.
#    What is used, not only included, and the rooms of a floor: tests/house/test_rooms.sh.
# 2. sqlite3.h only in src/log, curses only in src/screen.
# 3. The engine is pure: no clock, file, memory, chance or environment.
# 4. Functions that have a safer twin are not used.
# 5. No code reads what a food or a recipe is out of its name: food_named() and the
#    known ingredients are asked.
# 6. No path of somebody's machine; nothing foreign at the top level.
set -u
cd "${1:-${REPO:-$(dirname "$0")/..}}" || exit 1

offences=$(mktemp) || exit 1
code=$(mktemp) || exit 1
trap 'rm -f "$offences" "$code"' EXIT

# Files of the tree, one a line: what git knows of, or all where there is no git.
files() {
	if [ -e .git ] && git rev-parse --git-dir >/dev/null 2>&1; then
		git ls-files -co --exclude-standard
	else
		find . \( -path ./.git -o -path './build*' \) -prune -o -type f -print | sed 's,^\./,,'
	fi
}

# offence SENTENCE: takes "file:line:..." lines on standard input.
offence() {
	sed "s|\$|   <- $1|" >>"$offences"
}

# --- 1, 2: includes -------------------------------------------------------------

# Lines "file:number:#include ..." of one floor that match a pattern.
includes() {
	find "src/$1" -name '*.[ch]' -exec grep -nHE '^[[:space:]]*#[[:space:]]*include' {} + 2>/dev/null \
		| grep -E "$2"
}

# allow FLOOR OWN-AND-LOWER-FLOORS...: quoted includes must begin with one of these.
allow() {
	floor=$1
	shift
	[ -d "src/$floor" ] || return 0
	allowed=$(echo "$*" | tr ' ' '|')
	includes "$floor" '"' | grep -vE "include[[:space:]]*\"($allowed)/[^\"]*\"" \
		| grep -vE 'include[[:space:]]*"[^"/]*"' \
		| offence "src/$floor may only include from: $*"
	includes "$floor" 'include[[:space:]]*"[^"/]*"' \
		| offence "write the floor too: \\\"$floor/...\\\""
}

allow base base
allow engine base engine
allow log base engine log
allow kitchen base engine log kitchen
allow report base engine log/rows kitchen report
allow screen base engine log/rows kitchen screen
allow bake bake base engine

grep -rnE '#[[:space:]]*include[[:space:]]*[<"]([^>"]*/)?sqlite3[^>"]*\.h' src 2>/dev/null \
	| grep -v '^src/log/' | offence 'SQLite belongs to src/log alone'
grep -rnE '#[[:space:]]*include[[:space:]]*[<"]([^>"]*/)?(n?curses[a-z]*|term|panel|menu|form)\.h' src 2>/dev/null \
	| grep -v '^src/screen/' | offence 'curses belongs to src/screen alone'

# --- 3, 4: calls -----------------------------------------------------------------

# C without comments and the insides of strings, as "file:line:code", so that
# prose may say "the hold time (minutes)".
find src -name '*.[ch]' -exec awk '
	FNR == 1 { inside = 0 }
	{
		line = $0; out = ""; n = length(line); quote = ""
		for (i = 1; i <= n; i++) {
			c = substr(line, i, 1); two = substr(line, i, 2)
			if (inside) { if (two == "*/") { inside = 0; i++ } }
			else if (quote != "") { if (c == "\\") i++; else if (c == quote) { out = out c; quote = "" } }
			else if (two == "/*") { inside = 1; i++ }
			else if (two == "//") break
			else { if (c == "\"" || c == "\047") quote = c; out = out c }
		}
		print FILENAME ":" FNR ":" out
	}' {} + 2>/dev/null | sort >"$code"

# Calls of any of these functions, outside names that merely end alike.
calls() { grep -E ":.*(^|[^A-Za-z0-9_])($1)[[:space:]]*\\("; }

grep '^src/engine/' "$code" \
	| calls 'time|clock|clock_gettime|gettimeofday|fopen|open|malloc|calloc|realloc|free|rand|srand|random|getenv|printf|puts' \
	| offence 'src/engine is pure: no clock, file, memory, chance or environment'
calls 'strcpy|strncpy|stpcpy|strcat|strncat|sprintf|vsprintf|gets|strtok|localtime|gmtime|ctime|asctime|atoi|atol|atoll|atof|system|popen' <"$code" \
	| offence 'not used here: see "Habits" in DEVELOPERS.md for the function to take'

# --- 5: names ---------------------------------------------------------------------

find src -name '*.c' -exec grep -nHE '"(tomat|salsa)|(cmp|casestr|strstr|same_name|holds)[[:space:]]*\([^;]*"[^"]*(tomat|salsa|ketchup|pickl|jelly|peach|grape|pumpkin|beans|soup)' {} + 2>/dev/null \
	| offence 'a name read for its meaning: ask engine/food/food.h'

# --- 6: the tree ------------------------------------------------------------------

# The pattern is written so that it does not find itself.
files | tr '\n' '\0' | xargs -0 grep -nHIE '(^|[^A-Za-z0-9_.])/(wor[k]|far[m]|roo[t]|tmp/bas[h][^ ]*)/' 2>/dev/null \
	| offence 'a path of one machine'

files | sed 's,/.*,,' | sort -u \
	| grep -vxE 'README\.md|DEVELOPERS\.md|Makefile|LICENSE|src|tests|schema|demo|docs|\..*' \
	| offence 'does not belong at the top level'

if [ -s "$offences" ]; then
	cat "$offences"
	exit 1
fi
