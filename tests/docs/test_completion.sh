#!/bin/sh
# Behind "stillroom" bash, zsh and fish offer each command and, behind it, each of its options,
# and files where one is named.  bash is asked itself; the others, too, where they are there.
#
#   STILLROOM=program REPO=folder sh tests/docs/test_completion.sh
set -u
own=$(mktemp -d) || exit 1
trap 'rm -rf "$own"' EXIT
good=0
bad=0
cd "$REPO" || exit 1
command -v bash >/dev/null 2>&1 || {
	echo "there is no bash here"
	exit 77
}

# same "what": $own/said is $own/wanted, in any order.
same() {
	sort "$own/wanted" >"$own/a"
	sort "$own/said" >"$own/b"
	if [ -s "$own/a" ] && cmp -s "$own/a" "$own/b"; then
		good=$((good + 1))
	else
		bad=$((bad + 1))
		echo "failed: $1:"
		diff "$own/a" "$own/b"
	fi
}

# offered WORD...: what bash completes the last word to, a line each, as when Tab is pressed.
offered() {
	# shellcheck disable=SC2016 # for bash
	bash -c '. docs/completion/stillroom.bash
		[ "$(complete -p stillroom)" = "complete -F _stillroom stillroom" ] || exit 1
		COMP_WORDS=(stillroom "$@") COMP_CWORD=$#
		_stillroom
		printf "%s\n" "${COMPREPLY[@]}"' bash "$@" >"$own/said" 2>&1
}

sh tests/docs/command_list.sh >"$own/list" || exit 1
awk -F '\t' '$1 == "command" && $2 != "-" { print $2 }' "$own/list" >"$own/words"
if [ "$(wc -l <"$own/words")" -lt 20 ]; then
	bad=$((bad + 1))
	echo "failed: no twenty commands in the list"
fi

cp "$own/words" "$own/wanted"
offered ''
same "bash: the commands"
offered -f jars ''
same "bash: the commands behind an option and its value"
echo rehearse >"$own/wanted"
offered reh
same "bash: a command begun"
for word in - $(cat "$own/words"); do
	awk -F '\t' -v word="$word" '$1 == "option" && $2 == word { print "--" $4; if ($3 != "-") print "-" $3 }' \
		"$own/list" >"$own/wanted"
	if [ "$word" = - ]; then offered -; else offered "$word" -; fi
	same "bash: the options of $word"
done
cd "$own" || exit 1
ln -s "$REPO/docs" docs
touch kitchen.one kitchen.two
printf '%s\n' kitchen.one kitchen.two >"$own/wanted"
for before in 'setup' '-f' 'rehearse --kitchen' 'labels -o' 'backup' 'import csv'; do
	# shellcheck disable=SC2086 # words
	offered $before kitch
	same "bash: files behind $before"
done
echo csv >"$own/wanted"
offered import cs
same "bash: import csv"
cd "$REPO" || exit 1

# Each word and option has its line for the others, behind its own command.
while IFS='	' read -r what word letter name _; do
	case $what:$word in
	command:-) continue ;;
	command:*) zsh="'$word:" fish="-n __fish_use_subcommand -a $word -d " ;;
	option:-) zsh="--$name" fish="-n __fish_use_subcommand" ;;
	option:*) zsh="--$name" fish="-n '__fish_seen_subcommand_from $word'" ;;
	*) continue ;;
	esac
	[ "$what" = command ] || fish="$fish$([ "$letter" = - ] || echo " -s $letter") -l $name "
	if [ "$what" = option ] && [ "$word" != - ]; then
		awk -v head="		$word)" '$0 == head { inside = 1 } inside { print } / ;;$/ { inside = 0 }' \
			docs/completion/stillroom.zsh >"$own/part"
	else
		cp docs/completion/stillroom.zsh "$own/part"
	fi
	if grep -qF -e "$zsh" "$own/part"; then good=$((good + 1)); else bad=$((bad + 1)) && echo "failed: zsh: $word $name"; fi
	if grep -qF -e "$fish" docs/completion/stillroom.fish; then good=$((good + 1)); else bad=$((bad + 1)) && echo "failed: fish: $word $name"; fi
done <"$own/list"

for shell in bash zsh fish; do
	command -v "$shell" >/dev/null 2>&1 || continue
	if "$shell" -n "docs/completion/stillroom.$shell" >"$own/said" 2>&1; then
		good=$((good + 1))
	else
		bad=$((bad + 1))
		echo "failed: $shell does not read its file:"
		cat "$own/said"
	fi
done
echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
