#!/bin/sh
# tests/floors.sh finds each offence it promises to find, and nothing in clean code.
set -u
tree=$(mktemp -d) || exit 1
trap 'rm -rf "$tree"' EXIT
good=0
bad=0

fresh() {
	rm -rf "${tree:?}/t"
	mkdir -p "$tree/t"
	cd "$tree/t" || exit 1
	mkdir -p src/engine src/log src/kitchen src/report src/screen tests
	cat >src/engine/hold.c <<-'END'
		/* The hold time (minutes) is looked up; malloc(3) has no place here. */
		#include <stddef.h>
		#include "engine/hold.h"
		const char *words(void) { return "time() and strcpy() in a string"; } // rand()
		int run_time(int downtime(int)) { return downtime(1); }
	END
	echo '#include <sqlite3.h>' >src/log/log.c
	printf '#include <curses.h>\n#include "kitchen/kitchen.h"\n' >src/screen/board.c
	echo '#include "log/file/file.h"' >src/kitchen/kitchen.h
}

# offend "what it is" file "line of it": one more offence, in a file of its own.
offend() {
	mkdir -p "$(dirname "$2")"
	printf '%s\n' "$3" >>"$2"
	echo "$2|$1" >>offences
}

fresh
if sh "$REPO/tests/floors.sh" .; then
	good=1
else
	echo "a clean tree was refused"
	bad=1
fi
mkdir "$tree/found"

offend 'engine includes the log' src/engine/include_1.c '#include "log/file/file.h"'
offend 'log includes the kitchen' src/log/include_2.h '#include "kitchen/kitchen.h"'
offend 'kitchen includes the screen' src/kitchen/include_3.c '#include "screen/board.h"'
offend 'report includes the screen' src/report/include_4.c '#include "screen/board.h"'
offend 'screen includes the report' src/screen/include_5.c '# include "report/csv.h"'
offend 'screen includes the log directly' src/screen/include_6.c '#include "log/file/file.h"'
offend 'report includes the log directly' src/report/include_7.c '#include "log/file/file.h"'
offend 'an include without its floor' src/kitchen/include_8.c '#include "clock.h"'
offend 'SQLite in the kitchen' src/kitchen/include_9.c '#include <sqlite3.h>'
offend 'curses in a report' src/report/include_10.c '#include <ncursesw/curses.h>'
offend 'curses in main.c' src/main.c '#include <ncurses.h>'
for call in 'time(NULL)' 'clock_gettime(0, &t)' 'fopen (p, "r")' 'malloc(4)' 'realloc(p, 4)' \
	'rand()' 'getenv("HOME")' 'gettimeofday(&t, 0)'; do
	offend "engine calls $call" "src/engine/call_${call%%[ (]*}.c" "int x(void) { return $call; }"
done
for call in strcpy strcat sprintf vsprintf gets strtok localtime gmtime atoi atol system popen; do
	offend "$call" "src/kitchen/call_$call.c" "	y = $call(a, b);"
done
offend 'a food known by its name' src/kitchen/name_1.c '	return strncasecmp(name, "tomat", 5) == 0;'
offend 'a recipe known by its name' src/engine/name_2.c '	return holds(name, "jelly");'
offend 'a list of names' src/report/name_3.c 'static const char *const names[] = { "salsa" };'
offend 'a machine path' tests/a.c '/* see /'"work/shared/notes */"
offend 'a stray top-level entry' notes.txt 'notes'

mv offences "$tree/found/list"
if sh "$REPO/tests/floors.sh" . >"$tree/found/said" 2>&1; then
	echo "a tree full of offences passed"
	bad=$((bad + 1))
fi
while IFS='|' read -r file what; do
	if grep -q "^$file\(:\|  \)" "$tree/found/said"; then
		good=$((good + 1))
	else
		echo "not found: $what"
		bad=$((bad + 1))
	fi
done <"$tree/found/list"

echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
