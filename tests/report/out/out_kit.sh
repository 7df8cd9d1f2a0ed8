# Sourced by the tests of what leaves the program: counting, and a python that has
# what is asked for.  Needs STILLROOM, SUPPORT and REPO.
# shellcheck shell=sh

: "${STILLROOM:?STILLROOM must name the program}" "${SUPPORT:?SUPPORT must name the support programs}" \
	"${REPO:?REPO must name the root of the tree}"
own=$(mktemp -d "${TMPDIR:-/tmp}/stillroom-out.XXXXXX") || exit 1
trap 'rm -rf "$own"' EXIT
passed=0
failed=0

good() { passed=$((passed + 1)); }
bad() {
	failed=$((failed + 1))
	echo "failed: $*"
}

# gives STATUS ARGUMENT...: runs the program; what it says goes to $own/out and err.
gives() {
	wanted=$1
	shift
	"$STILLROOM" "$@" >"$own/out" 2>"$own/err" </dev/null
	got=$?
	if [ "$got" -eq "$wanted" ]; then good; else
		bad "stillroom $*: status $got, not $wanted"
		sed 's/^/    /' "$own/out" "$own/err"
	fi
}

# says TEXT: on either.
says() {
	if grep -qF -- "$1" "$own/out" "$own/err"; then good; else
		bad "no \"$1\""
		sed 's/^/    /' "$own/out" "$own/err"
	fi
}

# same FILE FILE
same() {
	if cmp "$1" "$2"; then good; else bad "$1 and $2 differ"; fi
}

# No control character but tab and line ends: nothing for a terminal to obey.
tame() {
	for file in "$@"; do
		# C1 in UTF-8 is C2 80 to C2 9F.
		if LC_ALL=C tr -d '\t\n\r\f' <"$file" | LC_ALL=C grep -q "$(printf '[\001-\037\177]\|\302[\200-\237]')"; then
			bad "$file holds control characters"
		else
			good
		fi
	done
}

# python_with MODULE...: sets $python; ends the test as skipped when there is none.
python_with() {
	python=$(sh "$REPO/.ci/python" "$@") && return
	echo "no python with $* is installed"
	exit 77
}

# checks WHAT ARGUMENT...: the python script on standard input ends well.
checks() {
	what=$1
	shift
	if "$python" - "$@" >"$own/said" 2>&1; then good; else
		bad "$what"
		sed 's/^/    /' "$own/said" | tail -n 12
	fi
}

finish() {
	echo "$passed passed, $failed failed"
	[ "$failed" -eq 0 ]
	exit $?
}
