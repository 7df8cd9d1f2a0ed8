#!/bin/sh
# Floors and rooms as the object files have them: which file uses what of which other.
#
# A room is a folder of a floor, src/FLOOR/ROOM/.  A floor uses those below it alone; inside
# a floor the rooms stand in one order, and a room uses those to its right alone, so that
# there is no circle.  Of the log, screen and reports use the words of its row types and no
# function.  Includes are looked at by tests/floors.sh.
set -u
tree=$(mktemp -d) || exit 1
trap 'rm -rf "$tree"' EXIT
lists=$tree/lists
mkdir "$lists" "$tree/clean"
passed=0
failed=0

# The house:
#   floor NAME FLOORS...      it, and those it may use
#   words NAME ROOM           of that one it may use what is called ..._name
#   rooms NAME A > B > ...    the order of its rooms
#   stands A B SYMBOL         a use that is against it all and stands still: A uses SYMBOL of B.
#                             The list only gets shorter: what stands no more must go.
house() {
	cat <<-'END'
		floor base
		floor engine base
		floor log engine base
		floor kitchen log engine base
		floor report kitchen engine base
		floor screen kitchen engine base
		words report log/rows
		words screen log/rows
		rooms engine drying > gate > rules > schedule > food > recipe > stats > process > label > physics
		rooms log file > history > tables > journal > query > disk > rows
		rooms kitchen step > warning > house > recipe > history > exchange > pantry > file > pot > dryer > canner > plan > stock > act > board
		rooms report command > exchange > pantry > plan > house > history > board > process > out > cli
		rooms screen app > board > history > pot > dryer > canner > pantry > stock > plan > house > ui > term
	END
}

# uses OBJECTS: what each object of the sources on standard input defines and what it uses of
# others, as nm says it.  One that was not built is said in its place.
uses() {
	sed 's,\.c$,.o,' | (
		cd "$1" || exit 1
		while read -r object; do
			if [ -f "$object" ]; then
				echo "$object" >&3
			else
				echo "$object: - missing"
			fi
		done 3>"$lists/objects"
		xargs nm -A -P -g <"$lists/objects"
	)
}

# check SOURCES OBJECTS: each offence against the house on standard input, a line each.
check() {
	cat >"$lists/house"
	(cd "$1" && find . -mindepth 2 -name '*.c' ! -path './bake/*') | sed 's,^\./,,' | uses "$2" | awk '
		# "screen/ui" of "screen/ui/desk.o", "base" of "base/text.o"
		function room_of(object) { sub(/\/[^\/]*$/, "", object); return object }
		function floor_of(room) { sub(/\/.*/, "", room); return room }
		function say(words) { if (!said[words]++) print words }

		# Is it in the order?
		function known(room,    floor) {
			floor = floor_of(room)
			if (!(floor in is_floor))
				say("src/" floor " is no floor")
			else if (room != floor && !(room in place))
				say("src/" room " is not in the order of its floor")
		}

		function is_fine(from, to, symbol,    a, b) {
			a = floor_of(from)
			b = floor_of(to)
			if (from == to)
				return 1
			if (a == b)
				return from in place && to in place && place[from] < place[to]
			return (a, b) in below || ((a, to) in words && symbol ~ /_name$/)
		}

		FNR == NR && $1 == "floor" {
			is_floor[$2] = 1
			for (i = 3; i <= NF; i++)
				below[$2, $i] = 1
		}
		FNR == NR && $1 == "words" { words[$2, $3] = 1 }
		FNR == NR && $1 == "rooms" {
			for (i = 3; i <= NF; i += 2)
				place[$2 "/" $i] = i
		}
		FNR == NR && $1 == "stands" { stands[$2 " uses " $4 " of " $3] = 1 }
		FNR == NR { next }

		{ sub(/:$/, "", $1); known(room_of($1)) }
		$3 == "missing" { say($1 " was not built"); next }
		$3 == "U" { user[++count] = $1; used[count] = $2; next }
		{ home[$2] = $1 }

		END {
			if (count == 0)
				say("nm tells of no use at all")
			for (i = 1; i <= count; i++) {
				if (!(used[i] in home))
					continue
				from = room_of(user[i])
				to = room_of(home[used[i]])
				if (is_fine(from, to, used[i]))
					continue
				use = from " uses " used[i] " of " to
				stood[use] = 1
				if (!(use in stands))
					say(use "   <- " user[i] " of " home[used[i]])
			}
			for (use in stands)
				if (!(use in stood))
					say(use ": it does no more; take it off the list")
		}' "$lists/house" -
}

# --- a house of the test's own: each offence is found ---------------------------------------

# file FLOOR/ROOM/NAME.c: what it holds stands on standard input.  Compiled.
file() {
	mkdir -p "$tree/src/${1%/*}" "$tree/objects/${1%/*}"
	cat >"$tree/src/$1"
	# shellcheck disable=SC2086 # CC is a command with its options
	${CC:-cc} -c -o "$tree/objects/${1%.c}.o" "$tree/src/$1" || exit 1
}

small_house() {
	cat <<-'END'
		floor base
		floor log base
		floor kitchen log base
		floor report kitchen base
		floor screen kitchen base
		words screen log/rows
		rooms log file > rows
		rooms kitchen pot > board
		rooms report out
		rooms screen app > pot > ui
	END
}

build_house() {
	echo 'int text_length(void) { return 1; }' | file base/text.c
	echo 'int log_open(void) { return 2; }' | file log/file/open.c
	echo 'int pot_name(void) { return 3; }' | file log/rows/words.c
	echo 'int strip; int log_open(void); int look(void) { return log_open(); }' | file kitchen/board/look.c
	echo 'int look(void); int fill(void) { return look(); }' | file kitchen/pot/fill.c
	echo 'int fill(void); int text_length(void); int put(void) { return fill() + text_length(); }' | file report/out/put.c
	echo 'int say(void) { return 4; }' | file screen/ui/say.c
	echo 'int say(void); extern int strip; int pot_name(void); int view(void) { return say() + strip + pot_name(); }' \
		| file screen/pot/view.c
	echo 'int view(void); int run(void) { return view(); }' | file screen/app/run.c
	cp -R "$tree/src" "$tree/objects" "$tree/clean"
}

fresh() {
	rm -rf "$tree/src" "$tree/objects"
	cp -R "$tree/clean/src" "$tree/clean/objects" "$tree"
}

# finds "what" "the offence" ["line for the house"]: that alone; "" for none.
finds() {
	found=$({ small_house; echo "${3:-}"; } | check "$tree/src" "$tree/objects")
	if [ "$found" = "$2" ]; then
		passed=$((passed + 1))
	else
		failed=$((failed + 1))
		printf '%s:\n  wanted: %s\n  found:  %s\n' "$1" "$2" "$found"
	fi
	fresh
}

if ! command -v nm >/dev/null 2>&1; then
	echo "nm is not here"
	exit 77
fi

build_house
finds 'a house in order' ''
echo 'int view(void); int say(void) { return view(); }' | file screen/ui/say.c
finds 'a room uses one to its left' 'screen/ui uses view of screen/pot   <- screen/ui/say.o of screen/pot/view.o'
echo 'extern int run_count; int say(void) { return run_count; }' | file screen/ui/say.c
echo 'int run_count = 1; int run(void) { return 1; }' | file screen/app/run.c
finds 'a table of a room to its left' \
	'screen/ui uses run_count of screen/app   <- screen/ui/say.o of screen/app/run.o'
echo 'int run(void); int (*const table[])(void) = { run }; int say(void) { return table[0](); }' | file screen/ui/say.c
finds 'a function in a table' 'screen/ui uses run of screen/app   <- screen/ui/say.o of screen/app/run.o'
echo 'int look(void); int log_open(void) { return look(); }' | file log/file/open.c
finds 'a floor uses one above it' 'log/file uses look of kitchen/board   <- log/file/open.o of kitchen/board/look.o'
echo 'int put(void); int say(void) { return put(); }' | file screen/ui/say.c
finds 'the screen uses a report' 'screen/ui uses put of report/out   <- screen/ui/say.o of report/out/put.o'
echo 'int log_open(void); int say(void) { return log_open(); }' | file screen/ui/say.c
finds 'the screen uses the log' 'screen/ui uses log_open of log/file   <- screen/ui/say.o of log/file/open.o'
echo 'int pot_name(void); int put(void) { return pot_name(); }' | file report/out/put.c
finds 'words of the log where they are not allowed' \
	'report/out uses pot_name of log/rows   <- report/out/put.o of log/rows/words.o'
echo 'int file_name(void) { return 2; }' | file log/file/name.c
echo 'int file_name(void); int say(void) { return file_name(); }' | file screen/ui/say.c
finds 'a word of the log that is none of its rows' \
	'screen/ui uses file_name of log/file   <- screen/ui/say.o of log/file/name.o'
echo 'int pantry(void) { return 1; }' | file screen/pantry/pantry.c
finds 'a room without a place' 'src/screen/pantry is not in the order of its floor'
echo 'int sound(void) { return 1; }' | file bell/ring/sound.c
finds 'a floor without a place' 'src/bell is no floor'
rm "$tree/objects/screen/app/run.o"
finds 'a file that was not built' 'screen/app/run.o was not built'
echo 'int old(void) { return 1; }' | file screen/app/old.c
echo 'int old(void); int say(void) { return old(); }' | file screen/ui/say.c
rm "$tree/src/screen/app/old.c"
finds 'an object whose source is gone counts for nothing' ''
echo 'int view(void); int say(void) { return view(); }' | file screen/ui/say.c
finds 'what is listed as standing' '' 'stands screen/ui screen/pot view'
finds 'what is listed and stands no more' 'screen/ui uses view of screen/pot: it does no more; take it off the list' \
	'stands screen/ui screen/pot view'

# --- this house ------------------------------------------------------------------------------

found=$(house | check "$REPO/src" "${OBJECTS_DIR:?the folder of the objects, as the Makefile says it}" | sort)
if [ -z "$found" ]; then
	passed=$((passed + 1))
else
	failed=$((failed + 1))
	echo "against the order of floors and rooms (at the top of this test):"
	echo "$found"
fi

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
