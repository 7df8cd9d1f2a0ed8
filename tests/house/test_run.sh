#!/bin/sh
# The test runner counts right, shows what failed, and fails when it must.
set -u
own=$(mktemp -d) || exit 1
trap 'rm -rf "$own"' EXIT
cd "$own" || exit 1
mkdir tests
echo 'echo quiet; exit 0' >tests/test_pass.sh
echo 'echo the reason; exit 3' >tests/test_fail.sh
echo 'echo "no terminal here"; exit 77' >tests/test_skip.sh
echo 'sleep 600' >tests/test_hang.sh
echo 'echo "100%: Checks: 12, Failures: 0, Errors: 0"' >tests/test_checks.sh
printf 'echo "80%%: Checks: 10, Failures: 1, Errors: 1"\nexit 1\n' >tests/test_two_bad.sh
echo 'echo "5 passed, 0 failed"' >tests/test_plain.sh
# shellcheck disable=SC2016 # for the inner shell
echo '[ "$HOME" = "$TMPDIR" ] && [ "$TZ" = UTC ] && [ -z "${NO_COLOR:-}" ] && >"$TMPDIR/mark"' \
	>tests/test_home.sh
good=0
bad=0
SKIPS_FAIL=
TEST_SECONDS=60

# expect STATUS "last line" "pattern that must be in the output" TEST...
expect() {
	status=$1 last=$2 pattern=$3
	shift 3
	NO_COLOR=1 LOGS=$own/logs JOBS=2 TEST_SECONDS=$TEST_SECONDS WRAP='' SKIPS_FAIL=$SKIPS_FAIL sh "$REPO/tests/run.sh" "$@" >said 2>&1
	got=$?
	if [ "$got" -eq "$status" ] && [ "$(tail -n 1 said)" = "$last" ] && grep -q "$pattern" said; then
		good=$((good + 1))
	else
		bad=$((bad + 1))
		echo "run.sh $*: status $got, expected $status; last line expected: $last"
		sed 's/^/    /' said
	fi
}

expect 0 '1 passed, 0 failed' '^1 passed' tests/test_pass.sh
expect 1 '1 passed, 1 failed' 'the reason' tests/test_pass.sh tests/test_fail.sh
expect 0 '1 passed, 0 failed, 1 skipped' 'no terminal here' tests/test_pass.sh tests/test_skip.sh
TEST_SECONDS=1
expect 1 '0 passed, 1 failed' 'ended by the runner' tests/test_hang.sh
TEST_SECONDS=60
SKIPS_FAIL=1
expect 1 '1 passed, 1 failed' 'test_skip.sh could not run: no terminal here' tests/test_pass.sh tests/test_skip.sh
expect 0 '1 passed, 0 failed' '^1 passed' tests/test_pass.sh
SKIPS_FAIL=
expect 0 '17 passed, 0 failed' '^17' tests/test_checks.sh tests/test_plain.sh
expect 1 '8 passed, 2 failed' 'test_two_bad' tests/test_two_bad.sh
expect 0 '1 passed, 0 failed' '^1' tests/test_home.sh
expect 1 '0 passed, 0 failed, 1 skipped' 'skipped' tests/test_skip.sh
expect 1 '0 passed, 1 failed' 'absent' tests/test_absent.sh
expect 1 'run.sh: there is no test to run' 'no test'

if grep -q quiet said || [ -n "$(ls -d "${TMPDIR:-/tmp}"/still.* 2>/dev/null)" ]; then
	echo "a passing test was not quiet, or its folder was left behind"
	bad=$((bad + 1))
fi
echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
