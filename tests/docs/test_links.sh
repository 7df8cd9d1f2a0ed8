#!/bin/sh
# Every link of the documents leads to a file, and to a head in it, here and where
# `make install` puts them; nothing is asked of a network.
set -u
fresh=$(mktemp -d) || exit 1
trap 'rm -rf "$fresh"' EXIT
links=$REPO/tests/docs/links.awk
good=0
bad=0

tell() {
	bad=$((bad + 1))
	echo "failed: $*"
}

# dead FOLDER: its dead links to $fresh/dead, how many there are in all to $count.
dead() {
	cd "$1" || exit 1
	find . -type f ! -path './build*' ! -path './.git/*' | sed 's|^\./||' | sort >"$fresh/all"
	# shellcheck disable=SC2046 # no blank in a name of the documents
	set -- $(grep '\.md$' "$fresh/all")
	awk -f "$links" pass=0 "$fresh/all" pass=1 "$@" pass=2 "$@" >"$fresh/told"
	count=$(sed -n 's/^\([0-9]*\) links$/\1/p' "$fresh/told")
	grep -v ' links$' "$fresh/told" >"$fresh/dead"
}

# all_lead FOLDER LEAST: at least so many links, none of them dead.
all_lead() {
	dead "$1"
	if [ -s "$fresh/dead" ]; then
		tell "dead links in $1:"
		cat "$fresh/dead"
	else
		good=$((good + 1))
	fi
	if [ "$count" -ge "$2" ]; then good=$((good + 1)); else tell "only $count links in $1"; fi
}

all_lead "$REPO" 40

# What is installed leads to what is installed, and all of it goes away again.
cd "$REPO" || exit 1
installed=$fresh/installed
mk() {
	"${MAKE:-make}" -s "$@" BUILD="$(dirname "$STILLROOM")" DESTDIR="$installed" PREFIX=/usr >"$fresh/said" 2>&1
}
if mk install; then
	all_lead "$installed/usr/share/doc/stillroom" 40
	cd "$REPO" || exit 1
	if mk uninstall && [ -z "$(find "$installed" ! -type d)" ] && [ ! -d "$installed/usr/share/doc/stillroom" ]; then
		good=$((good + 1))
	else
		tell "uninstall leaves something:"
		cat "$fresh/said"
		find "$installed"
	fi
else
	tell "make install:"
	cat "$fresh/said"
fi

# A dead link is found: of a file, of a head, of one that leads out.
mkdir -p "$fresh/bad/sub"
cat >"$fresh/bad/one.md" <<'END'
# A head, and more
[here](#a-head-and-more) [there](sub/two.md#the-second) [gone](sub/three.md) [no head](sub/two.md#third)
[out](../../one.md) `[not a link](nowhere.md)` [again](#twice-1)
## Twice
## Twice
```
[not one](nowhere.md)
# no head
```
[in code](#no-head)
END
printf '# The second\n[back](../one.md#twice)\n' >"$fresh/bad/sub/two.md"
dead "$fresh/bad"
cat >"$fresh/wanted" <<'END'
one.md:2: no such file: sub/three.md
one.md:2: no such head: sub/two.md#third
one.md:3: leads out of here: ../../one.md
one.md:10: no such head: #no-head
END
if cmp "$fresh/wanted" "$fresh/dead"; then good=$((good + 1)); else tell "other dead links: $(cat "$fresh/dead")"; fi
if [ "$count" -eq 8 ]; then good=$((good + 1)); else tell "$count links were seen, not 8"; fi
echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
