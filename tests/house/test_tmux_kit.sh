#!/bin/sh
# A terminal test leaves no tmux behind, neither server nor client, even when the server
# learns in one go that the test wants no more answers and that it is to end.
set -u
own=$(mktemp -d "${TMPDIR:-/tmp}/kit.XXXXXX") || exit 1
trap 'rm -rf "$own"' EXIT
good=0
bad=0

# A server that is stopped meanwhile finds all of it waiting, and has something to tell
# first: that the command of the window has changed.
cat >"$own/test.sh" <<'END'
set -u
. "$REPO/tests/terminal/tmux_kit.sh"
open_window main 80 24 "echo hello; sleep 0.1"
wait_for hello
pid=$(tm display-message -p '#{pid}')
{ echo "$pid"; tm list-clients -F '#{client_pid}'; } >"$1"
if [ "$2" = stopped ]; then
	kill -STOP "$pid"
	{ sleep 0.6; kill -CONT "$pid"; } &
fi
finish
END

is_running() {
	case $(ps -o stat= -p "$1" 2>/dev/null) in
	'' | Z*) return 1 ;;
	esac
}

# gone PID: soon, if ever.  The limit only ends the wait.
gone() {
	deadline=$(($(date +%s) + 30))
	while is_running "$1"; do
		[ "$(date +%s)" -le "$deadline" ] || return 1
		sleep 0.05
	done
}

for way in running stopped; do
	sh "$own/test.sh" "$own/pids" "$way" >"$own/said" 2>&1
	status=$?
	if [ "$status" -eq 77 ]; then
		cat "$own/said"
		exit 77
	fi
	processes=$(sort -u "$own/pids")
	if [ "$status" -eq 0 ] && [ "$(echo "$processes" | wc -l)" -eq 2 ]; then
		good=$((good + 1))
	else
		bad=$((bad + 1))
		echo "$way: the test ended with $status: $processes"
		cat "$own/said"
	fi
	for process in $processes; do
		if gone "$process"; then
			good=$((good + 1))
		else
			bad=$((bad + 1))
			echo "$way: left behind: $(ps -o pid=,args= -p "$process")"
			kill -9 "$process"
		fi
	done
done
echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
