#!/bin/sh
# The alarm by ear and by command: BEL is sent until somebody comes, the command
# of the configuration runs once an alarm, and words reach it whole and harmless.
set -u
# shellcheck source=tests/terminal/tmux_kit.sh
. "$(dirname "$0")/tmux_kit.sh"

heard=$own/heard
raw=$own/raw
mkdir -p "$own/config/stillroom" "$own/a folder"
command="$own/a folder/ring"
cat >"$command" <<'END'
#!/bin/sh
{
	echo "run with $# arguments: $1"
	env | grep '^STILLROOM_'
} >>"$HEARD"
END
chmod +x "$command"
HEARD=$heard
export HEARD
echo "alarm_command = \"$command\" \"two words; \$(touch $own/never)\"" >"$own/config/stillroom/config"

# A kitchen whose canner has a name that a shell would act on.
# shellcheck disable=SC2016 # the very characters
name='Pot $(touch never) `id`; x'
sed "s/Big kettle/$name/" "$KITCHEN" >"$own/kitchen"

runs() {
	grep -c '^run with' "$heard" 2>/dev/null
}

# shellcheck disable=SC2317 # run by until_true
ran() {
	[ "$(runs)" = "$1" ]
}

# heard TEXT...: the command has written that; it writes more than one line.
heard() {
	for words in "$@"; do
		until_true grep -qF -- "$words" "$heard"
	done
	holds "$heard" "$@"
}

bells() {
	tr -cd '\007' <"$raw" | wc -c | tr -d ' '
}

# shellcheck disable=SC2317 # run by until_true
rang() {
	[ "$(bells)" -ge "$1" ]
}

start_load() {
	card 1 grapejelly
	answer "How is it packed?"
	answer "Which jars?"
	wait_for "How many jars?"
	step
	answer "Which lid box?"
	answer "Is its acid in?"
	answer "Ready."
	wait_for "Space heat is on"
	step
	wait_for "Space full rolling boil"
}

practice=$own/practice.db
open_window main 80 24 \
	"'$STILLROOM' rehearse --speed 3600 --scratch '$practice' --kitchen '$own/kitchen'"
wait_for "PRACTICE"
start_load
at="no alarm yet"
tm pipe-pane -t main "cat >'$raw'"
: >"$raw"
wait_like "for  *[1-9]"
is "runs" "$(runs)" ""
step

at="the hold's alarm"
wait_for "COME NOW"
if until_true ran 1; then good; else bad "the command did not run"; fi
heard "run with 1 arguments: two words; \$(touch $own/never)" \
	"STILLROOM_STATION=$name" "STILLROOM_PRODUCT=grape jelly" "STILLROOM_ALARM=lift_jars" \
	"STILLROOM_ACT=Heat OFF, lid off: the 5 min rest begins"
at="it goes on until it is heard"
if until_true rang 3; then good; else bad "$(bells) bells"; fi
is "runs" "$(runs)" 1
press a
wait_gone "COME NOW"
shows "Heat OFF, lid off: the 5 min rest begins" # still to do
rung=$(bells)
sleep 3.2 # longer than the period of the rhythm
is "bells after it was heard" "$(bells)" "$rung"

at="the next alarm is another one"
step
wait_for "COME NOW" "Lift the jars out, straight up"
if until_true ran 2; then good; else bad "the command did not run again"; fi
heard "STILLROOM_ACT=Lift the jars out, straight up"
step
wait_for "Space jars are out"
step

at="the seals, half a day later"
press 0
wait_for "LOOK AT IT" "Bands off, check every seal"
if until_true ran 3; then good; else bad "the command did not run for the seals"; fi
heard "STILLROOM_ALARM=look_tomorrow" "STILLROOM_ACT=Bands off, check every seal"
press a
wait_gone "LOOK AT IT"
is "made by a shell" "$(ls -d never "$own/never" "$own/a folder/never" 2>/dev/null)" ""
tm kill-session -t main

at="a command that cannot be started"
echo "alarm_command = $own/nothing-here" >"$own/config/stillroom/config"
open_window main 80 24 "'$STILLROOM' rehearse --scratch '$practice'"
wait_for "PRACTICE"
start_load
wait_like "for  *[1-9]"
step
wait_for "COME NOW" "The alarm command $own/nothing-here cannot be started"
tm kill-session -t main

at="no bell"
echo "bell = no" >"$own/config/stillroom/config"
rm -f "$raw"
open_window main 80 24 "'$STILLROOM' rehearse --scratch '$practice'"
tm pipe-pane -t main "cat >'$raw'"
wait_for "COME NOW"
sleep 1
is "bells" "$(bells)" 0
tm kill-session -t main

at="a configuration that is wrong"
echo "colur = yes" >"$own/config/stillroom/config"
open_window main 80 24 "'$STILLROOM' rehearse --scratch '$practice'"
if until_true has_ended main; then good; else bad "it does not end"; fi
shows "stillroom: " "config" "colur"
finish
