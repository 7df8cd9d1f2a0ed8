#!/bin/sh
# The dependency finder on machines that lack things: a PATH of stand-ins.
# shellcheck disable=SC2016 # the bodies of stand-ins are for their own shells
set -u
own=$(mktemp -d) || exit 1
trap 'rm -rf "$own"' EXIT
good=0
bad=0

# A machine with the everyday tools only.
fresh() {
	rm -rf "${own:?}/bin" "$own/system" "$own/asked"
	mkdir -p "$own/bin" "$own/system"
	for tool in sh cat sed sort tr grep head mktemp rm env mkdir chmod; do
		ln -s "$(command -v "$tool")" "$own/bin/$tool"
	done
	stand_in id 'echo 0'
}

stand_in() { # stand_in NAME "body"
	printf '#!/bin/sh\n%s\n' "$2" >"$own/bin/$1"
	chmod +x "$own/bin/$1"
}

# What apt-get would bring: programs that answer well.
all_there() {
	for tool in cc make pkg-config tmux ps glpsol python3; do stand_in "$tool" 'exit 0'; done
	stand_in locale 'echo C.utf8'
}

# expect "case" STATUS "pattern in the output" PARTS...
expect() {
	what=$1 status=$2 pattern=$3
	shift 3
	PATH="$own/bin:$own/system" OWN="$own" sh "$REPO/.ci/deps" "$@" >"$own/said" 2>&1 </dev/null
	got=$?
	if [ "$got" -eq "$status" ] && { [ -z "$pattern" ] || grep -qE -e "$pattern" "$own/said"; }; then
		good=$((good + 1))
	else
		bad=$((bad + 1))
		echo "$what: status $got, expected $status and /$pattern/"
		sed 's/^/    /' "$own/said"
	fi
}

fresh
expect 'no package manager known' 1 'please install' check
expect 'a word it does not know' 2 'is not one of' checks

for pair in 'dnf:dnf install .*ncurses-devel' 'pacman:pacman -S .*sqlite' \
	'apk:apk add .*musl-dev' 'brew:brew install .*ncurses'; do
	fresh
	stand_in "${pair%%:*}" 'exit 0'
	expect "names packages for ${pair%%:*}" 1 "${pair#*:}" check
done

fresh
stand_in id 'echo 1000'
stand_in apt-get 'exit 99'
expect 'not root, no sudo' 1 'as root, run: apt-get install .*libsqlite3-dev' check

# apt-get fails until its lists are fresh, then brings everything.
fresh
stand_in apt-get 'echo "$DEBIAN_FRONTEND $*" >>"$OWN/asked"
case $* in
*update*) echo fresh >"$OWN/lists" ;;
*) [ -f "$OWN/lists" ] || exit 100
	for tool in cc make pkg-config tmux ps glpsol python3; do printf "#!/bin/sh\n" >"$OWN/bin/$tool"; chmod +x "$OWN/bin/$tool"; done
	printf "#!/bin/sh\necho C.utf8\n" >"$OWN/bin/locale"; chmod +x "$OWN/bin/locale" ;;
esac'
expect 'installs, after an update' 0 'deps: installing .*check gcc glpk-utils .*libncurses-dev .*procps python3-icalendar python3-jsonschema tmux' check
if ! grep -q '^noninteractive .*--no-install-recommends check gcc' "$own/asked"; then
	echo "apt-get was not asked as expected:"
	cat "$own/asked"
	bad=$((bad + 1))
fi
rm -f "$own/asked"
expect 'a second time asks nobody' 0 '' check
[ -f "$own/asked" ] && bad=$((bad + 1)) && echo 'apt-get was called although nothing was missing'

# Each python3 has one of the modules; the packages give the system's both.
fresh
all_there
stand_in python3 '[ "$2" = "import icalendar" ]'
mv "$own/bin/python3" "$own/system/python3"
stand_in python3 '[ "$2" = "import jsonschema" ]'
stand_in apt-get 'echo "$*" >>"$OWN/asked"; printf "#!/bin/sh\n" >"$OWN/system/python3"'
expect 'two pythons, a module each' 0 'deps: installing python3-icalendar python3-jsonschema$' check
rm -f "$own/asked"
expect 'the second python has both' 0 '' check
[ -f "$own/asked" ] && bad=$((bad + 1)) && echo 'apt-get was called although one python has both'

fresh
all_there
stand_in apt-get 'echo no such package; exit 100'
rm "$own/bin/tmux"
expect 'apt-get fails: its words are shown' 1 'no such package' check

fresh
all_there
stand_in cc 'case $* in *probe*) echo undefined reference; exit 1 ;; esac'
expect 'sqlite3 without session functions' 1 'session functions' check

echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
