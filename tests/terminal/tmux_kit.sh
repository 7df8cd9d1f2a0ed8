# Sourced by the terminal tests: the real program in a tmux of its own, keys in,
# screen out.  Needs STILLROOM (the program) and REPO (for the demonstration
# kitchen).  Each test has its own server, its own folder ($own), one for logs ($logs) and a limit on
# every wait, long enough for a busy machine; nothing here sleeps for luck.  End a test with `finish`.
# shellcheck shell=sh

: "${STILLROOM:?STILLROOM must name the program}"
REPO=${REPO:-$(pwd)}
KITCHEN=$REPO/demo/quince-hollow.kitchen
WAIT_SECONDS=${WAIT_SECONDS:-90}

if ! command -v tmux >/dev/null 2>&1; then
	echo "tmux is not installed"
	exit 77
fi

own=$(mktemp -d "${TMPDIR:-/tmp}/board.XXXXXX") || exit 1
logs=$own
# Every act waits for the disk; memory does not make it wait.
if [ -w /dev/shm ] && [ -x /dev/shm ]; then logs=$(mktemp -d /dev/shm/board.XXXXXX) || exit 1; fi
server=board$$
screen=$own/screen
passed=0
failed=0
at=start
last_key=
bell=!
# Seven in the morning here, whenever it is run: no midnight on a fast clock.
hour=$(date -u +%H)
TZ=KIT$((${hour#0} - 7))
TMUX_TMPDIR=$own XDG_CONFIG_HOME=$own/config XDG_DATA_HOME=$own/data HOME=$own
export TZ TMUX_TMPDIR XDG_CONFIG_HOME XDG_DATA_HOME HOME STILLROOM
unset TMUX NO_COLOR

tm() {
	tmux -L "$server" -f /dev/null "$@"
}

# --- one client for keys and looks -----------------------------------------------

# A process for each key and each look would be most of the time a test takes.
# Instead one tmux client is told what to do, a line each, and answers between
# %begin and %end.  Where tmux is too old for that, `client` stays empty and each
# is a process after all.
client=
newline='
'

start_client() {
	tm new-session -d -s client 'exec sleep 1000' || exit 1
	mkfifo "$own/ask" "$own/answer" || exit 1
	tm -C attach-session -f no-output,ignore-size -t client <"$own/ask" >"$own/answer" 2>/dev/null &
	exec 8>"$own/ask" 9<"$own/answer"
	if read_answer; then client=yes; fi
}

# A server whose last window is closed ends, and a new window may find it at that.  With
# the client's session it lives as long as the test.
need_server() {
	if [ ! -p "$own/ask" ]; then start_client; fi
}

# Lines of an answer to $picture; false when there will be none.
read_answer() {
	picture=
	inside=
	while IFS= read -r line <&9; do
		case $inside$line in
		%begin*) inside=yes ;;
		yes%end*) return 0 ;;
		yes%error*) return 1 ;;
		yes*) picture=$picture$line$newline ;;
		esac
	done
	return 1
}

# tell WORDS: one command to tmux, as its configuration would have it.
tell() {
	echo "$1" >&8
	read_answer
}

# A server that is told to end waits until its clients have had its last words, for ever
# when nobody reads them.  So the client's answers are read to their end, which comes when
# both have let go of them.
clean_up() {
	reader=
	if [ -p "$own/answer" ]; then
		cat <&9 8>&- >/dev/null 2>&1 &
		reader=$!
	fi
	tm kill-server >/dev/null 2>&1
	exec 8>&- 9<&-
	[ -z "$reader" ] || wait "$reader"
	rm -rf "$own" "$logs"
}
trap clean_up EXIT
trap 'exit 1' HUP INT TERM

# --- windows -------------------------------------------------------------------

# open_window NAME COLUMNS ROWS COMMAND: a session of that size.  The command's
# exit status goes to $own/NAME.status; the window then stays for a look.
open_window() {
	last_key= # a program that begins has read none
	window=$1
	need_server
	rm -f "$own/$1.status"
	tm new-session -d -s "$1" -x "$2" -y "$3" \
		"$4; echo \$? >'$own/$1.status'; exec sleep 1000" || exit 1
	tm set-option -t "$1" -q status off
	tm resize-window -t "$1" -x "$2" -y "$3"
}

close_window() {
	tm kill-session -t "$1" 2>/dev/null
}

# practise COLUMNS ROWS SPEED: the demonstration kitchen on a fast clock.
practise() {
	if [ "$3" -ge 100 ]; then fast=yes; fi
	practice=$logs/practice.db
	open_window main "$1" "$2" \
		"'$STILLROOM' rehearse --speed $3 --scratch '$practice' --kitchen '$KITCHEN'"
	wait_for "PRACTICE"
}

real_log() {
	log=$logs/log.db
	"$STILLROOM" setup "$KITCHEN" -f "$log" >/dev/null || exit 1
}

# The process that runs in the window, below the shell tmux started.
program_in() {
	pid=$(tm display-message -p -t "$1" '#{pane_pid}')
	ps -o pid=,ppid= -A | awk -v parent="$pid" '$2 == parent { print $1; exit }'
}

# --- keys ----------------------------------------------------------------------

# The board takes the same key twice within 0.7 s for a held one, and figures or letters close
# behind one another for words; it goes by the time at which it comes to read them.
# A key that does nothing between them parts them.
press() {
	for key in "$@"; do
		case $last_key/$key in
		*/Up | */Down | */Left | */Right | */BSpace) ;;
		"$key/$key" | [0-9]/[0-9] | [A-Za-z]/[A-Za-z] | Space/[A-Za-z]) send_key F12 ;;
		esac
		send_key "$key"
		last_key=$key
	done
}

send_key() {
	if [ -n "$client" ]; then tell "send-keys -t $window '$1'"; else tm send-keys -t "$window" "$1"; fi
}

# Text as it is, in one go.
type_text() {
	case $client$1 in
	*"'"* | [!y]* | *"$newline"*) tm send-keys -t "$window" -l -- "$1" ;;
	*) tell "send-keys -t $window -l -- '$1'" ;;
	esac
	last_key=
}

# --- looking -------------------------------------------------------------------

look() {
	if [ -n "$client" ]; then
		tell "capture-pane -p -t $window"
	else
		picture=$(tm capture-pane -p -t "$window" 2>/dev/null)
	fi
	printf '%s\n' "$picture" >"$screen"
}

# The screen as one line with single blanks, for sentences that wrap.
flatten() {
	set -f
	# shellcheck disable=SC2086 # to be split into words
	set -- $picture
	set +f
	flat=$*
}

sees() {
	look
	case $picture in
	*"$1"*) return 0 ;;
	esac
	flatten
	case $flat in
	*"$1"*) return 0 ;;
	esac
	return 1
}

good() {
	passed=$((passed + 1))
}

bad() {
	failed=$((failed + 1))
	echo "failed: $at: $*"
	sed 's/^/    | /' "$screen"
}

# until_true COMMAND...: tries it again and again; false when the time is over.
until_true() {
	tries=0
	until "$@"; do
		[ "$tries" -gt 0 ] || deadline=$(($(date +%s) + WAIT_SECONDS))
		tries=$((tries + 1))
		if [ $((tries % 8)) -eq 0 ]; then
			[ "$(date +%s)" -le "$deadline" ] || return 1
		fi
		if [ "$tries" -le 5 ]; then sleep 0.01; else sleep 0.04; fi
	done
}

# wait_for TEXT...: all of them come up, in any order.  A test that has lost its
# way ends here, since nothing after it would mean anything.
wait_for() {
	for text in "$@"; do
		if until_true sees "$text"; then
			good
		else
			bad "\"$text\" did not appear"
			finish
		fi
	done
}

# wait_like REGEX: a line like that comes up.
wait_like() {
	if until_true sees_like "$1"; then good; else
		bad "nothing like \"$1\" appeared"
		finish
	fi
}

sees_like() {
	look
	grep -q -- "$1" "$screen"
}

sees_not() {
	! sees "$1"
}

wait_gone() {
	if until_true sees_not "$1"; then good; else
		bad "\"$1\" did not go away"
		finish
	fi
}

# shows TEXT...: they are on the screen now.
shows() {
	for text in "$@"; do
		if sees "$text"; then good; else bad "no \"$text\""; fi
	done
}

lacks() {
	for text in "$@"; do
		if sees "$text"; then bad "should not show \"$text\""; else good; fi
	done
}

# is WHAT GOT WANTED
is() {
	if [ "$2" = "$3" ]; then good; else bad "$1 is \"$2\", not \"$3\""; fi
}

# holds FILE TEXT...
holds() {
	file=$1
	shift
	for text in "$@"; do
		if grep -qF -- "$text" "$file"; then good; else
			bad "no \"$text\" in:"
			sed 's/^/    > /' "$file"
		fi
	done
}

has_ended() {
	[ -s "$own/$1.status" ]
}

# ends NAME STATUS: the program in the window has left with that status.
ends() {
	if until_true has_ended "$1"; then
		is "exit status" "$(cat "$own/$1.status")" "$2"
	else
		bad "the program in $1 does not end"
	fi
}

# --- the log -------------------------------------------------------------------

# load_field FIELD LOT LOG: from `loads --json`, which has one load a line.
load_field() {
	"$STILLROOM" loads --all --json -f "$3" | sed -n "/\"lot\": \"[^\"]*-$2\"/s/.*\"$1\": \"\\{0,1\\}\\([^,\"]*\\).*/\\1/p"
}

is_whole() {
	"$STILLROOM" loads --all --json -f "$1" >/dev/null 2>"$own/whole" && [ ! -s "$own/whole" ]
}

# A board whose window was closed may be at leaving its log.
whole() {
	until_true is_whole "$1"
	is "the log" "$? $(cat "$own/whole")" "0 "
}

# --- doing ----------------------------------------------------------------------

# The step key, Space and Enter in turn: neither is then a held key.
# A step this soon after the last one (PRESS_AGAIN_MS, 1.5 s of the kitchen's clock) does not
# count, and on a fast clock a fast machine shows the new phase sooner than that.  On a slow one
# do_step waits.
fast=
step() {
	[ -z "$fast" ] || sleep 0.02
	if [ "$last_key" = Space ]; then press Enter; else press Space; fi
}

# answer QUESTION KEY...: when the load card asks it, press these and choose.
answer() {
	wait_for "$1"
	shift
	press "$@"
	step
}

# card DIGIT LETTERS: open the load card of a canner and choose the product.
card() {
	press "$1"
	wait_chosen "$1"
	step
	wait_for "What goes in?"
	type_text "$2"
	wait_for "$2_"
	press Enter # a Space may be one of the name
}

# The station's line carries the mark of the selection; a bell follows the digit
# while it rings.
wait_chosen() {
	if until_true is_chosen "$1"; then good; else
		bad "station $1 is not selected"
		finish
	fi
}

# go DIGIT: choose that station.
go() {
	press "$1"
	wait_chosen "$1"
}

# shellcheck disable=SC2317 # run by until_true
begun() {
	sees "$1 begins." || sees ": $1. (u undoes)"
}

# shellcheck disable=SC2317 # run by until_true
begun_or_asked() {
	begun "$1" || case $flat in *"Space again if so."*) ;; *) false ;; esac
}

# What is asked now, its last words; nothing where nothing is.
question() {
	printf '%s\n' "$flat" | sed -n 's/.*\(.\{40\}\)Space again if so\..*/\1/p'
}

# shellcheck disable=SC2317 # run by until_true
asked_otherwise() {
	look
	flatten
	[ "$(question)" != "$asked" ]
}

# How long a phase must have stood before a step counts: on a slow practice clock, a
# while.  Longer does no harm.
settling=

# do_step PHASE: the next step of the chosen station, with which that phase begins: "come-up",
# "off the heat".
# Whoever is quick is asked whether it was seen; it was; then perhaps whether all is in.  A
# question lapses after some seconds, and whoever answers later than that is asked anew.
do_step() {
	[ -z "$settling" ] || sleep "$settling"
	step
	for _ in 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16; do
		until_true begun_or_asked "$1"
		if begun "$1"; then break; fi
		asked=$(question)
		step
		until_true asked_otherwise
		if [ -z "$(question)" ] && ! begun "$1"; then step; fi # it lapsed
	done
	until_true begun "$1"
	begun "$1" || wait_for "$1 begins." # which says what was seen instead
}

# shellcheck disable=SC2317 # run by until_true
shown_or_asked() {
	sees "$1" || case $flat in *"Space again if so."*) ;; *) false ;; esac
}

# step_to TEXT: the step, pressed again where it is asked about, as it is while another
# station rings; then that text comes.
step_to() {
	for _ in 1 2 3 4 5 6 7 8; do
		step
		until_true shown_or_asked "$1"
		if sees "$1"; then break; fi
		step
		until_true sees_not "Space again if so."
		if sees "$1"; then break; fi
	done
	wait_for "$1"
}

is_chosen() {
	look
	grep -q "^[^ 0-9]$1[ $bell]" "$screen"
}

finish() {
	if [ "$failed" -gt 0 ]; then echo "last place: $at"; fi
	echo "$passed passed, $failed failed"
	[ "$failed" -eq 0 ]
	exit $?
}
