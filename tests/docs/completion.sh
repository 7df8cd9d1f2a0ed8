#!/bin/sh
# What a shell offers behind "stillroom": the commands and their options, to standard output.
#
#   STILLROOM=program sh tests/docs/completion.sh bash|zsh|fish
set -eu
list=$(sh tests/docs/command_list.sh)
case ${1-} in
bash | zsh | fish) echo "$list" | awk -F '\t' -f tests/docs/completion_list.awk -f "tests/docs/completion_$1.awk" ;;
*)
	echo "usage: completion.sh bash|zsh|fish" >&2
	exit 2
	;;
esac
