#!/bin/sh
# The command line of the built program: words in, exit status and one line out.
# Needs STILLROOM (the program) and REPO. Prints what fails, then a count.
set -u

: "${STILLROOM:?STILLROOM must name the program}" "${REPO:?REPO must name the root of the tree}"
own=$(mktemp -d "${TMPDIR:-/tmp}/stillroom-line.XXXXXX") || exit 1
trap 'rm -rf "$own"' EXIT
TMPDIR=$own HOME=$own/home XDG_DATA_HOME=
export TMPDIR HOME XDG_DATA_HOME
mkdir "$HOME" "$own/json"
documents=0
passed=0
failed=0
out=$own/out
err=$own/err

bad() {
	failed=$((failed + 1))
	echo "failed: $*"
	sed 's/^/    out: /' "$out"
	sed 's/^/    err: /' "$err"
}

# gives STATUS ARGUMENT...: runs the program; the status must be this one.
gives() {
	wanted=$1
	shift
	asked="stillroom $*"
	"$STILLROOM" "$@" >"$out" 2>"$err" </dev/null
	got=$?
	if [ "$got" -eq "$wanted" ]; then passed=$((passed + 1)); else bad "$asked: status $got, not $wanted"; fi
}

# holds FILE TEXT: a line of it contains the text.
holds() {
	if grep -qF -- "$2" "$1"; then passed=$((passed + 1)); else bad "$asked: no \"$2\""; fi
}

# one_line FILE
one_line() {
	if [ "$(wc -l <"$1")" -eq 1 ]; then passed=$((passed + 1)); else bad "$asked: not one line"; fi
}

silent() {
	if [ ! -s "$1" ]; then passed=$((passed + 1)); else bad "$asked: should be silent"; fi
}

# misuse TEXT ARGUMENT...: status 2, nothing on stdout, one line with TEXT and a hint.
misuse() {
	text=$1
	shift
	gives 2 "$@"
	silent "$out"
	one_line "$err"
	holds "$err" "$text"
	holds "$err" "--help"
}

# refused TEXT ARGUMENT...: status 3 and the reason, as text and as JSON.
refused() {
	text=$1
	shift
	gives 3 "$@"
	one_line "$out"
	holds "$out" "$text"
	silent "$err"
	gives 3 "$@" --json
	one_line "$out"
	holds "$out" '{"version": 1, "refused": {"rule": '
	holds "$out" '"sentence": "'
	holds "$out" "$text"
	is_json
}

# Kept, and all looked at together in the end: python is slow to start.
is_json() {
	documents=$((documents + 1))
	cp "$out" "$own/json/$documents"
}

are_json() {
	if ! python=$(sh "$REPO/.ci/python" json); then
		[ "$failed" -eq 0 ] || return
		echo "no python3 is installed to read the JSON with"
		exit 77
	fi
	if "$python" -c 'import json, sys
for name in sys.argv[1:]:
    json.load(open(name, encoding="utf-8"))' "$own"/json/* 2>"$err"; then
		passed=$((passed + documents))
	else
		bad "not JSON"
	fi
}

# keys KEY...: exactly these, in this order, one tab deep.
keys() {
	found=$(sed -n 's/^	"\([a-z_]*\)": .*/\1/p' "$out" | tr '\n' ' ')
	if [ "$found" = "$* " ]; then passed=$((passed + 1)); else bad "$asked: keys are $found"; fi
}

jam() {
	status=$1
	shift
	gives "$status" process --food "Jam-or-Jelly with added PECTIN" --pack "hot unsterile jar" \
		--jar half-pint --method "Boiling Water" "$@"
}

# --- help and version -----------------------------------------------------------

gives 0 --version
one_line "$out"
holds "$out" "stillroom "
gives 0 --help
holds "$out" "--no-color"
if grep -q "colour" "$out"; then bad "$asked: the other spelling"; else passed=$((passed + 1)); fi
gives 0 --no-colour --version # understood, not told
silent "$err"
"$STILLROOM" --help | awk '/^Commands:$/ { inside = 1; next } /^$/ { inside = 0 } inside { print $1 }' >"$own/words"
if [ "$(wc -l <"$own/words")" -ge 21 ]; then passed=$((passed + 1)); else bad "$asked: not all commands"; fi
while read -r word; do
	gives 0 "$word" --help
	silent "$err"
	holds "$out" "Usage: stillroom $word"
	holds "$out" "--help"
	misuse "--bogus" "$word" --bogus
	misuse "$word takes no --" "$word" --ascii --measured 1F
done <"$own/words"
gives 0 -h

# --- misuse -----------------------------------------------------------------------

misuse 'no command "nope"' nope
misuse 'did you mean "forecast"' frecast
misuse 'for foods "stillroom foods"' botulism
misuse "--bogus" --bogus
misuse "-x" -x
misuse '"extra"' loads extra
misuse "takes no --food" loads --food peaches
misuse "takes no --json" --json
misuse "needs a value" --file
misuse "takes no value" boil --json=yes
misuse "needs a KITCHEN_FILE" setup
misuse "needs --food" process
misuse "needs --method" process --food a --pack b --jar c
misuse "boiling_water, steam, dial_gauge or weighted_gauge" \
	process --food a --pack b --jar c --method oven --elevation 1ft
misuse "boiling_water, steam, dial_gauge or weighted_gauge" foods --method oven
misuse "elevation" boil --elevation high
misuse "elevation" boil --elevation 4650
misuse "elevation" process --food a --pack b --jar c --method steam --elevation 4650
misuse "station pressure" boil --barometer "30.1 in"
misuse "temperature" boil --measured 203
misuse "gauge pressure" process --food asparagus --pack hot --jar pint --method dial_gauge \
	--elevation 1ft --pressure high
misuse "no pressure to choose" process --food "jam or jelly with added pectin" \
	--pack hot_unsterile_jar --jar half_pint --method steam --elevation 1ft --pressure 11
misuse "speed" rehearse --kitchen /dev/null --speed 0

# Control characters of a word do not reach the terminal.
gives 2 "$(printf 'a\033[2Jb')"
if grep -q "$(printf '\033')" "$err"; then bad "escape character on stderr"; else passed=$((passed + 1)); fi

# --- boil ---------------------------------------------------------------------------

gives 0 boil --elevation 4650ft --json
keys version elevation_m pressure_kpa boiling_point_c boiling_point_f jelly_stage_f basis
holds "$out" '"elevation_m": 1417.3,'
is_json
# IAPWS R7-97(2012), Table 36: saturation temperature 372.755919 K at 0.1 MPa
gives 0 boil --barometer "100 kPa" --json
holds "$out" '"elevation_m": null,'
holds "$out" '"boiling_point_c": 99.6,'
holds "$out" '"basis": "barometer"'
gives 0 boil --measured 203.1F --elevation 4650ft --json
holds "$out" '"boiling_point_f": 203.1,'
holds "$out" '"jelly_stage_f": 211.1,'
holds "$out" '"basis": "measured"'
gives 0 boil -e "1,417 m"
holds "$out" "jelly stage"
refused "elevation" boil
refused "elevation" boil --elevation unknown
misuse "" boil --measured 20C

# --- process ----------------------------------------------------------------------------

jam 0 --elevation 4650ft --json
keys version food pack jar jar_in_table method elevation_m minutes pressure_psi headspace_in source \
	confirmed options warnings cautions
# schema/process_fruit_tomato_jam.csv: common practice, no source: 15 min from 1,001 to 6,000 ft
holds "$out" '"food": "jam or jelly with added pectin",'
holds "$out" '"pack": "hot_unsterile_jar",'
holds "$out" '"minutes": 15,'
holds "$out" '"pressure_psi": null,'
holds "$out" '"headspace_in": 0.25,'
holds "$out" '"confirmed": "practice",'
holds "$out" '"options": [],'
is_json
jam 0 --elevation 4650ft
holds "$out" "15 minutes (common practice, no source)"
gives 0 process --food asparagus --pack hot --jar pint --method dial_gauge --elevation 2000ft
holds "$out" "caution    vent 10 minutes"
# USDA AIB 539, Guide 4, Asparagus
holds "$out" "30 minutes at 11 psi"
holds "$out" "USDA AIB 539 (rev. 2015), Guide 4, table Asparagus (dial-gauge), page 4-5"
holds "$out" "extension office"
gives 0 process --food asparagus --pack hot --jar half_pint --method dial_gauge -e 2001ft --json
holds "$out" '"jar": "half_pint",'
holds "$out" '"jar_in_table": "pint",'
holds "$out" '"pressure_psi": 12,'
refused "elevation" process --food asparagus --pack hot --jar pint --method dial_gauge
refused "elevation" process --food asparagus --pack hot --jar pint --method dial_gauge -e unknown
refused "low-acid" process --food asparagus --pack hot --jar pint --method boiling_water -e 0ft
refused "low-acid" process --food asparagus --pack hot --jar pint --method steam -e 0ft
holds "$out" '{"rule": "low-acid", '
refused "half-gallon" process --food asparagus --pack hot --jar half_gallon --method dial_gauge -e 0ft
refused "8,000 ft" process --food asparagus --pack hot --jar pint --method dial_gauge -e 8001ft
holds "$out" '{"rule": "above-the-tables", '
refused "moonfruit" process --food moonfruit --pack hot --jar pint --method dial_gauge -e 0ft
refused "13 psi" process --food asparagus --pack hot --jar pint --method dial_gauge -e 0ft --pressure 13

# By its everyday name: USDA AIB 539, Guide 7, page 7-8, jelly with added pectin, 10 min at 4,650 ft.
gives 0 process --food "Grape jelly" --pack hot_sterile_jar --jar half_pint --method boiling_water -e 4650ft
holds "$out" 'food       jam or jelly with added pectin'
holds "$out" 'process    10 minutes'
holds "$out" 'note       grape jelly goes by the tables for jam or jelly with added pectin'
holds "$out" 'note       One batch at a time as written, never doubled'

# Above 8,000 ft: the longer of two tables (peaches, raw quarts: AIB 539 45 min, timetable of
# Utah State University Extension 50), or the open band of the guide with a note.
gives 0 process --food peaches --pack raw --jar quart --method boiling_water -e 8001ft
holds "$out" 'process    50 minutes'
holds "$out" 'source     Utah State University Extension'
if grep -q '^note\|^or ' "$out"; then bad "the shorter time is offered, or a note"; else passed=$((passed + 1)); fi
gives 0 process --food pineapple --pack hot --jar quart --method boiling_water -e 8001ft
holds "$out" 'note       above 8,000 ft another table asks for more time for other foods'
refused "above 10,000 ft" process --food pineapple --pack hot --jar quart --method boiling_water -e 10001ft
refused "above 10,000 ft" process --food asparagus --pack hot --jar pint --method weighted_gauge -e 29000ft

# --elevation again: one answer for each, in the order given.
# USDA AIB 539, Guide 4, Asparagus: 11 psi to 2,000 ft, 12 to 4,000, 13 to 6,000, 14 to 8,000
asparagus() {
	status=$1
	shift
	gives "$status" process --food asparagus --pack hot --jar pint --method dial_gauge "$@"
}

# in_order TEXT PATTERN: what the pattern finds, line by line, is the text.
in_order() {
	found=$(grep -o -- "$2" "$out" | tr '\n' ' ')
	if [ "$found" = "$1 " ]; then passed=$((passed + 1)); else bad "$asked: not \"$1\" but \"$found\""; fi
}

asparagus 0 -e 2001ft --elevation 0ft --elevation=8000ft
silent "$err"
in_order "12 psi 11 psi 14 psi" '[0-9]* psi'
asparagus 0 -e 2001ft --elevation 0ft --elevation=8000ft --json
silent "$err"
in_order '_psi": 12 _psi": 11 _psi": 14' '_psi": [0-9]*'
in_order '"answers": [ 	]' '"answers": \[\|^	\]'
is_json
asparagus 0 -e 0ft --json
in_order '{ }' '^[{}]'
asparagus 3 -e 0ft -e 8001ft -e 2001ft
silent "$err"
in_order "11 psi refused: 12 psi" 'refused:\|[0-9]* psi'
asparagus 3 -e 0ft -e 8001ft -e unknown -e 2001ft --json
silent "$err"
in_order '_psi": 11 {"refused" {"refused" _psi": 12' '{"refused"\|_psi": [0-9]*'
is_json
misuse "be read: 4650" process --food asparagus --pack hot --jar pint --method dial_gauge \
	-e 0ft -e 9000ft -e 4650
misuse "no pressure to choose" process --food "jam or jelly with added pectin" \
	--pack hot_unsterile_jar --jar half_pint --method steam -e 0ft -e 1ft --pressure 11
set --
while [ $# -lt 64 ]; do set -- "$@" -e 0ft; done
asparagus 0 "$@"
misuse "32 times" process --food asparagus --pack hot --jar pint --method dial_gauge "$@" -e 0ft

# Options may stand before the command, be shortened, and end with "--".
gives 0 --json boil --elev 0ft
holds "$out" '"elevation_m": 0,'
gives 0 boil -e 0ft --

# --- foods ---------------------------------------------------------------------------------

gives 0 foods --json
is_json
holds "$out" '{"food": "asparagus", "method": "dial_gauge", "pack": "hot", "jars": ["pint", "quart"], "acidity": "low_acid"}'
gives 0 foods --method steam
holds "$out" "--- steam"
if grep -q '^asparagus' "$out"; then bad "steam offers low-acid food"; else passed=$((passed + 1)); fi
gives 0 foods --method steam --json
if grep -q '"low_acid"' "$out"; then bad "steam offers low-acid food"; else passed=$((passed + 1)); fi

# --- logs --------------------------------------------------------------------------------------

cat >"$own/good.kitchen" <<'KITCHEN'
# An invented kitchen.
kitchen   "Quince \"Hollow\""
invented  yes
elevation 4650 ft
canner    1 boiling_water "Big kettle" pint=9
lids      "Box A" 60 2026-03-14
KITCHEN
cp "$own/good.kitchen" "$own/wrong.kitchen"
echo 'canner 2 oven "Stove" pint=3' >>"$own/wrong.kitchen"

gives 1 loads
holds "$err" ".local/share/stillroom/log.db"
gives 1 setup "$own/wrong.kitchen" -f "$own/log.db"
holds "$err" "wrong.kitchen:7: "
gives 1 setup "$own/none.kitchen" -f "$own/log.db"
set -- "$own"/log*
if [ ! -e "$1" ]; then passed=$((passed + 1)); else bad "a failed setup leaves files"; fi
gives 0 setup "$own/good.kitchen" -f "$own/log.db"
set -- "$own"/log*
if [ $# -eq 1 ]; then passed=$((passed + 1)); else bad "setup leaves more than the log"; fi
gives 3 setup "$own/good.kitchen" -f "$own/log.db"
holds "$out" "already exists"
echo "a letter" >"$own/letter.txt"
gives 3 setup "$own/good.kitchen" --file="$own/letter.txt"
gives 1 loads -f "$own/letter.txt"
holds "$err" "letter.txt"
gives 0 setup "$own/good.kitchen"
gives 0 loads
holds "$out" "No load is open, and none was started today."

for word in loads jars warnings; do
	gives 0 -f "$own/log.db" "$word" --json
	keys version now practice_speed invented "$word"
	holds "$out" '"invented": true,'
	holds "$out" "\"$word\": ["
	is_json
	gives 0 "$word" -f "$own/log.db"
	gives 1 "$word" --json -f "$own/none.db"
	silent "$out"
	one_line "$err"
done
gives 0 loads -f "$own/log.db" --all
gives 0 jars -f "$own/log.db" --since 2026-09-14
misuse "date" loads -f "$own/log.db" --since 14.9.2026
misuse "not both" loads -f "$own/log.db" --since 2026-09-14 --all

# A log that is only looked at stays as it is, byte for byte.
before=$(cksum <"$own/log.db")
gives 0 warnings -f "$own/log.db"
if [ "$(cksum <"$own/log.db")" = "$before" ]; then passed=$((passed + 1)); else bad "a report changed the log"; fi

# Without a terminal there is no board, but the practice log is made and kept.
misuse "terminal" -f "$own/log.db"
gives 2 rehearse -f "$own/log.db" --scratch "$own/scratch.db" --speed 30
holds "$out" "scratch.db"
gives 0 warnings -f "$own/scratch.db" --json
holds "$out" '"practice_speed": 30,'
gives 2 rehearse --scratch "$own/scratch.db"
gives 3 rehearse --scratch "$own/scratch.db" --speed 5
gives 3 rehearse --scratch "$own/log.db"
holds "$out" "real log"
gives 2 rehearse --kitchen "$own/good.kitchen"
holds "$out" "$own/stillroom-practice-"
gives 1 rehearse --kitchen "$own/wrong.kitchen" --scratch "$own/scratch-2.db"
if [ -e "$own/scratch-2.db" ]; then bad "a failed rehearsal leaves a log"; else passed=$((passed + 1)); fi

misuse "add --yes" restore -f "$own/log.db"
gives 3 restore -f "$own/log.db" --yes
holds "$out" "is not damaged"
gives 0 backup "$own/carried.db" -f "$own/log.db"
holds "$out" "Written and checked: $own/carried.db"
gives 3 backup "$own/carried.db" -f "$own/log.db"
misuse "does not know" backup one two -f "$own/log.db"
gives 0 backup -f "$own/log.db"
gives 2 restore -f "$own/log.db"
holds "$out" "lacks nothing"
rm -r "$own/log.db.backups"
mkdir "$own/copy.db.backups"
cp "$own/log.db" "$own/copy.db.backups/2026-09-13.db"
echo "not a log any more" >"$own/copy.db"
gives 1 loads -f "$own/copy.db"
gives 0 restore -f "$own/copy.db" --yes
holds "$out" "2026-09-13.db"
gives 0 loads -f "$own/copy.db"

# --- refusals go where answers go, whatever the command ---------------------------------------------

# refuses TEXT ARGUMENT...: in text; the last line of the answer is the refusal.
refuses() {
	text=$1
	shift
	gives 3 "$@"
	silent "$err"
	tail -n 1 "$out" >"$own/last"
	mv "$own/last" "$out"
	holds "$out" "refused: "
	holds "$out" "$text"
}

refuses "already exists" setup "$own/good.kitchen" -f "$own/log.db"
refuses "already exists" backup "$own/carried.db" -f "$own/log.db"
refuses "is not damaged" restore -f "$own/log.db" --yes
refuses "real log" rehearse --scratch "$own/log.db"
refuses "label" labels -f "$own/log.db" --all
gives 0 export json --out "$own/all.json" -f "$own/log.db"
refuses "already exists" export json --out "$own/all.json" -f "$own/log.db"
refused "B7" recall --lot 2026-09-14-B7 -f "$own/log.db"
refused "plan" plan -f "$own/log.db"
refused "not made from" forecast --fruit apples --weight 60lb --product "grape jelly" -f "$own/log.db"
refused "not made from" shortage --fruit apples --weight 60lb --product "grape jelly" -f "$own/log.db"

# Every document says its version first.
for words in "warnings --rules" loads jars warnings supplies pantry recall seasons; do
	# shellcheck disable=SC2086 # words of a command
	gives 0 $words --json -f "$own/log.db"
	sed -n 2p "$out" >"$own/second"
	mv "$own/second" "$out"
	holds "$out" '	"version": 1,'
done

# --- an answer that does not arrive is no answer ---------------------------------------------------

if [ -c /dev/full ]; then
	for words in "loads -f $own/log.db" "foods" "boil -e 0ft --json" "--help"; do
		asked="stillroom $words >/dev/full"
		# shellcheck disable=SC2086 # words of a command
		"$STILLROOM" $words >/dev/full 2>"$err"
		got=$?
		: >"$out"
		if [ "$got" -eq 1 ]; then passed=$((passed + 1)); else bad "$asked: status $got"; fi
		one_line "$err"
	done
fi
asked="stillroom boil with stdout closed"
"$STILLROOM" boil -e 0ft >&- 2>"$err"
got=$?
if [ "$got" -eq 1 ]; then passed=$((passed + 1)); else bad "$asked: status $got"; fi

# --- homes -----------------------------------------------------------------------------------------

asked="stillroom loads without a home"
env -u HOME -u XDG_DATA_HOME "$STILLROOM" loads >"$out" 2>"$err"
got=$?
if [ "$got" -eq 1 ]; then passed=$((passed + 1)); else bad "$asked: status $got"; fi
holds "$err" "-f"
XDG_DATA_HOME=$own/xdg
export XDG_DATA_HOME
gives 1 loads
holds "$err" "xdg/stillroom/log.db"
XDG_DATA_HOME=relative
gives 0 loads

are_json
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
