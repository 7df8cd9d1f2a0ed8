#!/bin/sh
# docs/moving.md, done: a log is carried to another computer, and backups are listed,
# chosen and put back.
set -u
# shellcheck source=tests/report/out/out_kit.sh
. "$(dirname "$0")/../out/out_kit.sh"

stick=$own/stick
mkdir -p "$stick" "$own/old" "$own/new"

# computer NAME: the home of one of the two.
computer() {
	HOME=$own/$1
	XDG_DATA_HOME=$HOME/.local/share
	XDG_CONFIG_HOME=$HOME/.config
	export HOME XDG_DATA_HOME XDG_CONFIG_HOME
	log=$XDG_DATA_HOME/stillroom/log.db
}

# what_is_in: the whole log as one document, but for when it was asked.
what_is_in() {
	"$STILLROOM" export json 2>"$own/err" | grep -v '"now"\|"exported' >"$1"
}

mode() {
	find "$1" -prune -perm 0600 | wc -l | tr -d ' '
}

computer old
mkdir -p "$(dirname "$log")"
gives 0 setup "$REPO/demo/quince-hollow.kitchen"
# Years of it, some of them with jars still in the pantry.
"$SUPPORT/make_seasons" "$own/big.db" 2021 2 50 >"$own/out" 2>&1 || bad "no seasons"
cp "$own/big.db" "$log"
what_is_in "$own/before"

# --- backup ---------------------------------------------------------------------------
gives 0 backup "$stick"
says "Written and checked: $stick/log.db"
gives 3 backup "$stick"
says "already exists"
gives 0 backup "$stick" --yes
gives 0 backup "$stick/named.db"
gives 3 backup /dev/null --yes
gives 1 backup "$own/no/such/folder/log.db"
if [ "$(mode "$stick/log.db")" = 1 ]; then good; else bad "the copy is not for its owner alone"; fi
gives 0 backup
says "$log.backups"
set -- "$log.backups"/*.db
if [ $# -eq 1 ]; then good; else bad "$# backups"; fi

# --- the other computer ----------------------------------------------------------------
computer new
gives 1 loads --all
mkdir -p ~/.local/share/stillroom
cp "$stick/log.db" ~/.local/share/stillroom/log.db
gives 0 loads --all
what_is_in "$own/after"
same "$own/before" "$own/after"
if [ -s "$own/before" ]; then good; else bad "nothing was compared"; fi
gives 0 pantry

# --- damaged there ------------------------------------------------------------------------
gives 0 backup
gives 2 restore
says "lacks nothing"
says "add --yes"
gives 3 restore --yes
says "is not damaged"
dd if=/dev/zero of="$log" bs=1 seek=40960 count=8192 conv=notrunc 2>/dev/null
gives 1 loads
says "is damaged"
says "stillroom restore"
grep -q "not an error\|damaged.*damaged" "$own/err" && bad "the message repeats itself"
gives 0 restore --yes
says "Put back: "
if [ -f "$log.damaged-1" ]; then good; else bad "what was there is not kept"; fi
what_is_in "$own/after"
same "$own/before" "$own/after"

# --- one from the stick, over a log that is whole: only when it is named ---------------------
gives 2 restore "$stick/named.db"
gives 0 restore "$stick/named.db" --yes
gives 1 restore "$stick/none.db" --yes
what_is_in "$own/after"
same "$own/before" "$own/after"

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
