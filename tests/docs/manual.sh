#!/bin/sh
# A page of the manual, in mdoc(7), to standard output: of what --help says, and of the pages
# of docs/, most of which are made of tables themselves.
#
#   STILLROOM=program SUPPORT=folder sh tests/docs/manual.sh stillroom.1|stillroom-log.5|stillroom-kitchen.5
set -eu

# Name, section and one line about it; the date is that of the version.
begin() {
	grep '^## ' docs/CHANGELOG.md | head -n 1 | tr -d '()' | awk -v name="$1" -v section="$2" '
	BEGIN { split("January February March April May June July August September October November December", months) }
	{
		split($3, day, "-")
		printf ".\\\" Made by make docs: tests/docs/manual.sh.\n"
		printf ".Dd %s %d, %s\n.Dt %s %s\n.Os\n", months[day[2] + 0], day[3], day[1], toupper(name), section
	}'
	printf '.Sh NAME\n.Nm %s\n.Nd %s\n' "$1" "$3"
}

# pages FILE...: their text as sections; sub_pages: below a section.
pages() {
	awk -f tests/docs/mdoc_text.awk -f tests/docs/mdoc.awk "$@"
}
sub_pages() {
	awk -f tests/docs/mdoc_text.awk -f tests/docs/mdoc.awk SUBHEADS=1 "$@"
}

# part HEAD FILE: what stands under that head of the second order.
part() {
	awk -v head="## $1" '/^## / { inside = $0 == head; next } inside' "$2"
}

# What the program says of itself, before a line is written.
help=$("$STILLROOM" --help)
list=$(sh tests/docs/command_list.sh)
tables=$("$SUPPORT/write_page" tables)

# The commands as a list, each with what is said about it and its options.
commands() {
	echo "$list" | awk -F '\t' -f tests/docs/mdoc_text.awk -f tests/docs/mdoc_commands.awk
}

case ${1-} in
stillroom.1)
	begin stillroom 1 "timer board and log for food-preserving days"
	cat <<'END'
.Sh SYNOPSIS
.Nm
.Op Ar option ...
.Nm
.Ar command
.Op Ar argument ...
.Op Ar option ...
.Sh DESCRIPTION
END
	sed -n '3,/^$/p' README.md | pages
	cat <<'END'
.Pp
Without a command
.Nm
opens the board on the usual log.
Each command answers
.Fl \-help
and
.Fl \-version .
.Sh COMMANDS
END
	sed -n '/^Products may say more/,/^$/p' docs/commands.md | sub_pages
	commands
	echo '.Sh KEYS'
	sub_pages docs/keys.md
	echo '.Sh CONFIGURATION'
	sub_pages docs/configuration.md
	cat <<'END'
.Sh FILES
.Bl -tag -width Ds
.It Pa ~/.local/share/stillroom/log.db
The usual log, in
.Ev XDG_DATA_HOME
if that is set; see
.Xr stillroom-log 5 .
.It Pa ~/.config/stillroom/config
The configuration, in
.Ev XDG_CONFIG_HOME
if that is set.
.El
.Sh EXIT STATUS
END
	echo "$help" | sed -n 's/^Exit status: //p' | pages
	echo '.Sh EXAMPLES'
	part Examples docs/commands.md | pages
	printf '.Sh SEE ALSO\n.Xr stillroom-kitchen 5 ,\n.Xr stillroom-log 5\n.Sh CAVEATS\n'
	part 'Before you rely on it' README.md | sed '/^\[All cautions/,$d' | pages
	;;
stillroom-log.5)
	begin stillroom-log 5 "the file in which stillroom keeps everything"
	echo '.Sh DESCRIPTION'
	pages docs/log.md docs/moving.md
	echo '.Sh TABLES'
	echo "$tables" | pages
	echo '.Sh COMPATIBILITY'
	sed -n '/^From here on:$/,/^## /p' docs/CHANGELOG.md | sed '$d' | pages
	printf '.Sh SEE ALSO\n.Xr stillroom 1 ,\n.Xr stillroom-kitchen 5\n'
	;;
stillroom-kitchen.5)
	begin stillroom-kitchen 5 "how a kitchen is written down for stillroom"
	echo '.Sh DESCRIPTION'
	pages docs/kitchen-file.md
	printf '.Sh SEE ALSO\n.Xr stillroom 1 ,\n.Xr stillroom-log 5\n'
	;;
*)
	echo "usage: manual.sh stillroom.1|stillroom-log.5|stillroom-kitchen.5" >&2
	exit 2
	;;
esac
