#!/bin/sh
# A rule reads its own subject: a row of the table whose function is for another
# subject does not compile, nor does a name whose form does not fit its fact.
set -u
cd "$REPO" || exit 1
folder=$(mktemp -d) || exit 1
trap 'rm -rf "$folder"' EXIT
passed=0
failed=0

# compiles file: as C17, warnings aside, with what was changed before what stands.
compiles() {
	# shellcheck disable=SC2086 # a compiler may have a word before it
	${CC:-cc} -std=c17 -w -I"$folder" -Isrc -fsyntax-only "$1" >"$folder/said" 2>&1
}

tell() {
	if [ "$1" = "$2" ]; then
		passed=$((passed + 1))
	else
		failed=$((failed + 1))
		printf '%s: %s, not %s\n' "$3" "$2" "$1"
		cat "$folder/said"
	fi
}

# with file from to answer: `from`, which stands there once, made `to`; a header is compiled with rule.c.
mkdir -p "$folder/engine/rules"
with() {
	changed=$folder/engine/rules/$1
	case $1 in
	*.h) compiled=src/engine/rules/rule.c ;;
	*) compiled=$changed ;;
	esac
	tell 1 "$(grep -cF "$2" "src/engine/rules/$1")" "lines with $2"
	sed "s/$2/$3/" "src/engine/rules/$1" >"$changed"
	if compiles "$compiled"; then said=compiles; else said=refused; fi
	rm "$changed"
	tell "$4" "$said" "$2 made $3"
}

with rule_table.c 'STOP("elevation-unset", house,' 'STOP("elevation-unset", house,' compiles
with rule_table.c 'STOP("elevation-unset", house,' 'STOP("elevation-unset", load,' refused
with rule_table.c 'STOP("key-fate", key_fate,' 'STOP("key-fate", key_fill,' refused
with rule_table.c 'when(f->broken > 0)' 'when(f->kept_ms > 0)' refused
with subject.h '"held", held_ms, FORM_DURATION' '"held", held_ms, FORM_MINUTES' compiles
with subject.h '"held", held_ms, FORM_DURATION' '"held", held_ms, FORM_COUNT' refused
with subject.h '"held", held_ms, FORM_DURATION' '"held", kept_ms, FORM_DURATION' refused

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
