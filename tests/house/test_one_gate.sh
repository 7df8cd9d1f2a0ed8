#!/bin/sh
# Only the gate names a verdict: no other source gives one to anything, and its answer
# is written down in one place.
set -u
cd "$REPO" || exit 1
passed=0
failed=0

# nothing "words" "lines": the lines must be none.
nothing() {
	if [ -z "$2" ]; then
		passed=$((passed + 1))
	else
		failed=$((failed + 1))
		printf '%s:\n%s\n' "$1" "$2"
	fi
}

# What assigns a constant verdict, or one worked out on the spot: `x = VERDICT_...`,
# `.verdict = VERDICT_...`, `? VERDICT_...`.  Comparisons and case labels are none.
assignments() {
	grep -nE '(^|[^=!<>])=[^=].*VERDICT_(VALID|NOT_VALID|UNKNOWN)|[?:] *VERDICT_(VALID|NOT_VALID|UNKNOWN)' "$@" |
		grep -vE '(==|!=) *VERDICT_|\[VERDICT_|case VERDICT_'
}

nothing 'a verdict is given outside the gate' \
	"$(find src -name '*.c' ! -path 'src/engine/gate/gate.c' ! -path 'src/engine/gate/gate_words.c' ! -path src/kitchen/act/verdict.c \
		-exec grep -lE 'VERDICT_' {} + | while read -r file; do assignments /dev/null "$file"; done)"
nothing 'the answer of the gate is written elsewhere, too' \
	"$(grep -rn 'log_put_judgement(' src --include='*.c' | grep -vE '^src/(kitchen/act/verdict|log/tables/log_judgement)\.c:')"
nothing 'the gate is asked past its evidence' \
	"$(grep -rnE '\bgate_judge(_pot)?\(' src --include='*.c' | grep -vE '^src/(kitchen/act/verdict|engine/gate/gate)\.c:')"
nothing 'a statement sets a verdict' \
	"$(grep -rniE "verdict *= *[?]" src/log schema/log.sql)"
# The search itself finds what it should.
found=$(printf '%s\n' '	load.verdict = VERDICT_VALID;' '	x = a ? VERDICT_UNKNOWN : b;' '	.verdict = VERDICT_NOT_VALID,' |
	grep -cE '(^|[^=!<>])=[^=].*VERDICT_(VALID|NOT_VALID|UNKNOWN)|[?:] *VERDICT_(VALID|NOT_VALID|UNKNOWN)')
if [ "$found" -eq 3 ]; then
	passed=$((passed + 1))
else
	failed=$((failed + 1))
	echo "the search finds $found of 3"
fi

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
