#!/bin/sh
# The Makefile as a packager uses it: what is set is honored, no network is asked, nothing that
# is built for another machine is run, and what is installed goes where it should.
#
#   REPO=folder STILLROOM=program sh tests/house/test_makefile.sh
set -u
own=$(mktemp -d) || exit 1
trap 'rm -rf "$own"' EXIT
good=0
bad=0
cd "$REPO" || exit 1

# plan WORD...: what make would do, in $own/plan.
plan() {
	"${MAKE:-make}" -n V=1 BUILD="$own/build" "$@" >"$own/plan" 2>&1
}

# says "what" PATTERN: a line of the plan has it.
says() {
	if grep -qE -e "$2" "$own/plan"; then
		good=$((good + 1))
	else
		bad=$((bad + 1))
		echo "failed: $1: no line has /$2/"
		head -n 5 "$own/plan"
	fi
}

# silent "what" PATTERN: no line of the plan has it.
silent() {
	if [ -s "$own/plan" ] && ! grep -qE -e "$2" "$own/plan"; then
		good=$((good + 1))
	else
		bad=$((bad + 1))
		echo "failed: $1:"
		grep -E -e "$2" "$own/plan" | head -n 5
	fi
}

# Each verb asks through deps_for, which is told to leave it.
plan check ONLY=tests/house/test_makefile
says 'make check looks for what it needs' '^sh \.ci/deps'
plan check ONLY=tests/house/test_makefile DEPS=no
silent 'make check DEPS=no looks for something' '^sh \.ci/deps'
grep -E '[[:blank:]@]sh \.ci/deps' Makefile >"$own/plan"
silent 'a verb of its own asks .ci/deps' '^	@sh \.ci/deps [^b]'

"${MAKE:-make}" help >"$own/plan" 2>&1
for word in DEPS=no PREFIX DESTDIR MANDIR INSTALL HOSTCC CPPFLAGS CFLAGS LDFLAGS; do
	says "make help" "$word"
done

plan all CC=target-cc HOSTCC=host-cc CPPFLAGS=-DMINE CFLAGS=-O1 LDFLAGS=-Lmine HOSTCFLAGS=-O3
says 'CC, CFLAGS and CPPFLAGS' '^target-cc .*-O1 .*-DMINE .*-c -o .*/src/base/csv\.o'
says 'LDFLAGS' '^target-cc .*-Lmine .*-o .*/stillroom '
says 'HOSTCC and HOSTCFLAGS' '^host-cc .*-O3 .*-c -o .*/bake-objects/src/bake/bake\.o'
says 'HOSTCC links bake' '^host-cc .*-o .*/build/bake '
silent 'HOSTCC gets flags of the target' '^host-cc .*(-DMINE|-Lmine)'
silent 'the program is run at the build' '^[^ ]*/build/stillroom( |$)'
silent 'the program is run at the build' 'write_page'
says 'no path of the building machine' "^target-cc .*-ffile-prefix-map=.?$(pwd -P).?=\\."
says 'time of 64 bits' '^target-cc .*-D_FILE_OFFSET_BITS=64 -D_TIME_BITS=64'

plan install INSTALL=mine DESTDIR=/stage PREFIX=/usr MANDIR=/manuals
says 'INSTALL, DESTDIR and PREFIX' "^mine -m 755 .*/stillroom' '/stage/usr/bin/stillroom'"
silent 'INSTALL' '^install '
says 'MANDIR' ' man/stillroom-log\.5:/manuals/man5/stillroom-log\.5 '

"${MAKE:-make}" -s install BUILD="$(dirname "$STILLROOM")" DESTDIR="$own/stage" PREFIX=/usr >"$own/plan" 2>&1
for file in bin/stillroom share/man/man1/stillroom.1 share/man/man5/stillroom-log.5 share/man/man5/stillroom-kitchen.5 \
	share/bash-completion/completions/stillroom share/zsh/site-functions/_stillroom \
	share/fish/vendor_completions.d/stillroom.fish share/applications/stillroom.desktop \
	share/doc/stillroom/README.md share/doc/stillroom/docs/CHANGELOG.md; do
	if [ -s "$own/stage/usr/$file" ]; then
		good=$((good + 1))
	else
		bad=$((bad + 1))
		echo "failed: make install brings no $file"
	fi
done
cat "$own/stage/usr/share/applications/stillroom.desktop" >"$own/plan"
says 'the desktop entry opens a terminal' '^Terminal=true$'
says 'the desktop entry starts the program' '^Exec=stillroom$'

# One version: the program says it, and the newest change is about it.
version=$(sed -n 's/^VERSION := //p' Makefile)
"$STILLROOM" --version >"$own/plan"
says 'stillroom --version' "^stillroom $version\$"
grep '^## ' docs/CHANGELOG.md | head -n 1 >"$own/plan"
says 'the head of docs/CHANGELOG.md' "^## $version \([0-9-]{10}\)\$"
head -n 1 .ci/debian/changelog >"$own/plan"
says 'the head of .ci/debian/changelog' "^stillroom \\($version\\) "
sed -n 's/^ -- .*  //p' .ci/debian/changelog | head -n 1 | TZ=UTC xargs -d '\n' -I WHEN date -d WHEN +%F >"$own/when"
grep '^## ' docs/CHANGELOG.md | head -n 1 >"$own/plan"
says 'the day of .ci/debian/changelog' "\\($(cat "$own/when")\\)\$"

echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
