#!/bin/sh
# What every view shows, whole: the days of tests/pictures/ are gone through on a clock that
# stands still, and each window is compared with the text kept of it, the roles of its cells
# included.  Every view has a picture, its keys have one, each of the questions it asks one
# after the other, and each line that is typed.
set -u
fresh=$(mktemp -d) || exit 1
trap 'rm -rf "$fresh"' EXIT
good=0
bad=0
cd "$REPO" || exit 1

tell() {
	bad=$((bad + 1))
	echo "failed: $*"
}

# What no day of a kitchen in order comes to: a second published pair and a full log need
# tables and disks of their own (tests/terminal/test_log_goes.sh shows the latter).
not_drawn() {
	case $1 in
	"start pair") return 0 ;;
	# One question for each line of a recipe: the first ones are pictured.
	"entry recipe Line "*) return 0 ;;
	" Save what is intact to (a new file):" | " UNKNOWN, because (Esc: no):") return 0 ;;
	*) return 1 ;;
	esac
}

# holds FILES... : one of them is there.
holds() {
	if [ -f "$1" ]; then good=$((good + 1)); else tell "no picture is kept as $1"; fi
}

mkdir "$fresh/drawn"
if ! sh tests/pictures/draw.sh "$fresh/drawn"; then
	tell "a day of tests/pictures/ cannot be gone through any more: correct it"
fi
if diff -ruN -x '*.sh' -x '*.awk' -x '*.day' -x '*.kitchen' tests/pictures "$fresh/drawn"; then
	good=$((good + $(find "$fresh/drawn" -name '*.txt' | wc -l)))
else
	tell 'another picture than the one kept: look at what has changed; "make screens" keeps the new one'
fi

# Every view and its keys, in both windows; every question that a view asks by itself.
"$SUPPORT/draw_pictures" asked >"$fresh/asked"
while read -r view asks; do
	if not_drawn "$view $asks"; then continue; fi
	if [ -n "$asks" ]; then
		for size in 80x24 40x12; do
			if grep -qsx "asks: $asks" tests/pictures/"$view"/*."$size".txt; then
				good=$((good + 1))
			else
				tell "no picture of $view in $size asks: $asks"
			fi
		done
		continue
	fi
	for size in 80x24 40x12; do
		holds tests/pictures/"$view"/*."$size".txt
		case $view in help) ;; *) holds "tests/pictures/help/$view.$size.txt" ;; esac
	done
done <"$fresh/asked"
if [ "$(wc -l <"$fresh/asked")" -lt 60 ]; then tell "too few views are asked about"; fi

# Every line that is typed: its question, as it stands in the source, is in a picture.
cat tests/pictures/*/*.80x24.txt >"$fresh/all"
awk -f tests/pictures/questions.awk src/screen/*/*.c >"$fresh/questions"
while IFS= read -r question; do
	if not_drawn "$question"; then continue; fi
	if grep -qe "$question" "$fresh/all"; then good=$((good + 1)); else tell "no picture shows the question: $question"; fi
done <"$fresh/questions"
if [ "$(wc -l <"$fresh/questions")" -lt 30 ]; then tell "too few questions are found in src/screen"; fi
echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
