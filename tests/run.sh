#!/bin/sh
# Run test programs and scripts side by side; print only what fails, then one
# summary line "N passed, N failed".  Called by `make check`.
#
#   LOGS=folder [JOBS=n] [TEST_SECONDS=n] [WRAP=command] [SKIPS_FAIL=1] sh tests/run.sh TEST...
#
# A TEST that ends in .sh is run by sh, anything else is a program (under WRAP,
# if given).  Each has a home, configuration and TMPDIR of its own, no color or
# locale of the person who runs it, UTC, and TEST_SECONDS to end by itself.
# The times given, Check's as well, only end what hangs: they are long, so that a
# busy machine fails nothing.  What a test says goes to LOGS/<name>.log.
#
# Exit status 77 means that a test could not run here.  It is named and counted as
# skipped; with SKIPS_FAIL=1 as failed.
#
# Counting: a log whose last words are Check's ("100%: Checks: 12, Failures: 0,
# Errors: 0") or "N passed, N failed" counts as that many tests, any other as one.
set -u

LOGS=${LOGS:?LOGS must name a folder}
JOBS=${JOBS:-$((2 * $(nproc 2>/dev/null || getconf _NPROCESSORS_ONLN 2>/dev/null || echo 1)))}
TEST_SECONDS=${TEST_SECONDS:-900}
SKIPS_FAIL=${SKIPS_FAIL:-}
CK_TIMEOUT_MULTIPLIER=${CK_TIMEOUT_MULTIPLIER:-15}

# --- one test: tests/run.sh --one TEST ----------------------------------------

# tests/kitchen/test_day.sh and build/tests/kitchen/test_day -> kitchen-test_day
log_name() {
	name=${1%.sh}
	name=${name##*tests/}
	echo "$name" | tr / -
}

run_one() {
	log=$LOGS/$(log_name "$1")
	own=$(mktemp -d "$WHERE/still.XXXXXX") || exit 1
	# shellcheck disable=SC2086 # WRAP is a command with its options
	case $1 in
	*.sh) set -- sh "$1" ;;
	/*) set -- ${WRAP:-} "$1" ;;
	*) set -- ${WRAP:-} "./$1" ;;
	esac
	unset NO_COLOR TMUX LANG LANGUAGE COLUMNS LINES MAKEFLAGS MFLAGS MAKELEVEL
	env HOME="$own" XDG_DATA_HOME="$own/data" XDG_CONFIG_HOME="$own/config" \
		XDG_STATE_HOME="$own/state" XDG_CACHE_HOME="$own/cache" XDG_RUNTIME_DIR="$own" \
		TMPDIR="$own" TMUX_TMPDIR="$own" LC_ALL=C.UTF-8 TZ=UTC \
		timeout -k 5 "$TEST_SECONDS" "$@" >"$log.log" 2>&1 </dev/null
	status=$?
	if [ "$status" -eq 124 ]; then
		echo "(ended by the runner after $TEST_SECONDS s)" >>"$log.log"
	fi
	echo "$status" >"$log.status"
	chmod -R u+rwx "$own" 2>/dev/null
	rm -rf "$own"
}

if [ "${1:-}" = --one ]; then
	run_one "$2"
	exit 0
fi

# --- all of them ---------------------------------------------------------------

if [ $# -eq 0 ]; then
	echo "run.sh: there is no test to run"
	exit 1
fi
# Every act waits for the disk; memory does not make it wait.  Where somebody names a
# folder, or memory has little room or runs no scripts, that folder or /tmp.
WHERE=${TMPDIR:-/tmp}
ROOM_KB=1048576
if [ -z "${TMPDIR:-}" ] && tried=$(mktemp /dev/shm/still.XXXXXX 2>/dev/null); then
	echo 'exit 0' >"$tried"
	chmod u+x "$tried"
	room=$(df -kP /dev/shm | awk 'NR == 2 { print $4 }')
	if "$tried" 2>/dev/null && [ "${room:-0}" -ge "$ROOM_KB" ]; then WHERE=/dev/shm; fi
	rm -f "$tried"
fi

mkdir -p "$LOGS" || exit 1
rm -f "$LOGS"/*.log "$LOGS"/*.status

export WHERE LOGS JOBS TEST_SECONDS CK_TIMEOUT_MULTIPLIER
# Scripts mostly wait and programs compute: mixed, they leave no core without work.
mixed() {
	printf '%s\n' "$@" | awk '
		/\.sh$/ { script[++scripts] = $0; next }
		{ program[++programs] = $0 }
		END {
			while (i < scripts || j < programs)
				if (j >= programs || i * programs <= j * scripts && i < scripts) print script[++i]
				else print program[++j]
		}'
}

mixed "$@" | xargs -n 1 -P "$JOBS" sh "$0" --one

passed=0
failed=0
skipped=0

# Sets `good` and `bad` to what the log says was counted, or to nothing.
count_in() {
	good=''
	bad=''
	counts=$(sed -n \
		-e 's/^[0-9]*%: Checks: \([0-9]*\), Failures: \([0-9]*\), Errors: \([0-9]*\)$/check \1 \2 \3/p' \
		-e 's/^\([0-9]*\) passed, \([0-9]*\) failed.*$/plain \1 \2/p' "$1" | awk '
		$1 == "check" { good += $2 - $3 - $4; bad += $3 + $4; any = 1 }
		$1 == "plain" { good += $2; bad += $3; any = 1 }
		END { if (any) print good, bad }')
	[ -n "$counts" ] || return
	good=${counts% *}
	bad=${counts#* }
}

for test in "$@"; do
	name=$(log_name "$test")
	log=$LOGS/$name.log
	status=$(cat "$LOGS/$name.status" 2>/dev/null || echo 'never ended')
	count_in "$log"
	case $status in
	0)
		passed=$((passed + ${good:-1}))
		failed=$((failed + ${bad:-0}))
		;;
	77)
		if [ -n "$SKIPS_FAIL" ]; then
			failed=$((failed + 1))
			echo "--- failed: $test could not run: $(tail -n 1 "$log")"
		else
			skipped=$((skipped + 1))
			echo "skipped: $test: $(tail -n 1 "$log")"
		fi
		;;
	*)
		passed=$((passed + ${good:-0}))
		[ "${bad:-0}" -gt 0 ] || bad=1
		failed=$((failed + bad))
		echo "--- failed: $test (status $status), $log:"
		tail -n 60 "$log" 2>/dev/null | sed 's/^/    /'
		;;
	esac
done

if [ "$skipped" -gt 0 ]; then
	echo "$passed passed, $failed failed, $skipped skipped"
else
	echo "$passed passed, $failed failed"
fi
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
