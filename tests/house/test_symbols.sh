#!/bin/sh
# What is public in src/ is used by another file of src/: a function or table that only
# its own file needs is static, and one that nobody needs goes.  Asked of the objects of
# the program that was built beside $STILLROOM; those of the baking programs count as users.
set -u

build=$(dirname "${STILLROOM:?the program}")
cd "${REPO:-.}" || exit 1
command -v nm >/dev/null 2>&1 || {
	echo "there is no nm here"
	exit 77
}
work=$(mktemp -d "${TMPDIR:-/tmp}/symbols.XXXXXX") || exit 1
trap 'rm -rf "$work"' EXIT

# Public for tests alone, and why: its header says so, too.
cat >"$work/allowed" <<'END'
kitchen_setup_line one line of a kitchen file, by which tests set a kitchen up
main the program begins there
air_pressure_kpa no number outside its range
saturation_pressure_kpa compared with the verification values of IAPWS
clock_boot_of_record the kernel names the boot itself where there are tests
saturation_temperature_c compared with the verification values of IAPWS
dissolved_sugar_ul compared with published densities
batch_volume_ul what goes into the jars beside the pot
weigh compared with worked examples of books
odds_by_chance compared with exact odds, and at the edge of what is clear
glyph_columns widths of characters, one by one
digits_row the drawing of a tall digit, without a terminal
config_key the page of docs/ that lists them
config_path where the file is looked for, by environment
config_read_text a file's text, cut anywhere
terminal_utf8 what the terminal was taken for
terminal_color what the terminal was taken for
wake_timeout_between arithmetic at the edges of a millisecond
wake_step_between arithmetic of a stepped clock
alarm_command_running how many commands have not ended
entry_form_of the pictures, which name what is entered
upkeep_runs whether the keeper is at work
upkeep_pid the keeper, to be killed
layout_without_strict what an older SQLite is given
log_open_laid_out migrations that are not yet there
log_undo an undo without the kitchen's look at the rows
column_get rows looked at by their descriptor
statement_expand a statement as it is prepared
log_season_begins pages from the middle, timed
log_work_get one row of the history
END

objects() {
	find "$1" -name '*.c' ! -path 'src/bake/*' | sed "s|^\\(.*\\)\\.c\$|$build/\\1.o|" | sort
}
objects src >"$work/objects"
while read -r object; do
	[ -f "$object" ] || {
		echo "$object was not built"
		exit 1
	}
done <"$work/objects"
find "$build/generated" "$build/bake-objects/src" -name '*.o' >"$work/others"

# Lines "object: symbol type ..."; names of the compiler's own begin with __.
xargs nm -A -P -g <"$work/objects" >"$work/of_src" || exit 1
xargs nm -A -P -g <"$work/others" >"$work/of_others" || exit 1
cat "$work/of_src" "$work/of_others" | awk '$3 == "U" || $3 == "w" { print $2 }' | sort -u >"$work/used"
awk '$3 ~ /^[A-TV-Z]$/ && $2 !~ /^__/ { print $2, $1 }' "$work/of_src" | sort >"$work/defined"

good=0
bad=0
fail() {
	bad=$((bad + 1))
	echo "FAILED: $*"
}

count=$(wc -l <"$work/defined")
if [ "$count" -lt 500 ]; then
	fail "nm names only $count public symbols: was it understood?"
fi
awk 'FILENAME == ARGV[1] { used[$1]; next } !($1 in used)' "$work/used" "$work/defined" >"$work/unused"
while read -r symbol object; do
	if grep -q "^$symbol " "$work/allowed"; then
		good=$((good + 1))
	else
		object=${object#"$build/"}
		fail "$symbol of ${object%.o:}.c is public, and no other file of src/ uses it: make it static, or delete it"
	fi
done <"$work/unused"
while read -r symbol _; do
	grep -q "^$symbol " "$work/unused" || fail "$symbol needs no allowance any more: take it off the list"
done <"$work/allowed"

echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
