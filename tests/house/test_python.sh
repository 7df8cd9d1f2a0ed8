#!/bin/sh
# .ci/python names the first python3 of the PATH that has all that is asked for.
set -u
own=$(mktemp -d) || exit 1
trap 'rm -rf "$own"' EXIT
good=0
bad=0

# python_in FOLDER MODULE: a python3 that can import this one, or with "" any.
python_in() {
	mkdir -p "$own/$1"
	printf '#!/bin/sh\n[ -z "%s" ] || [ "$*" = "-c import %s" ]\n' "$2" "$2" >"$own/$1/python3"
	chmod +x "$own/$1/python3"
}

# expect FOLDER PATH MODULE...: the python3 in that folder is named, or none with "".
expect() {
	wanted=${1:+$own/$1/python3} path=$2
	shift 2
	got=$(PATH=$path "$shell" "$REPO/.ci/python" "$@")
	status=$?
	if [ "$got" = "$wanted" ] && [ "$status" -eq "$([ -z "$wanted" ] && echo 1 || echo 0)" ]; then
		good=$((good + 1))
	else
		bad=$((bad + 1))
		echo "$* on $path: \"$got\" with status $status, not \"$wanted\""
	fi
}

shell=$(command -v sh)
python_in one icalendar
python_in two jsonschema
python_in three ''
mkdir "$own/tools" "$own/none"
ln -s "$(command -v tr)" "$own/tools/tr"
echo 'not a program' >"$own/none/python3"
some=$own/tools:$own/none:$own/one:$own/two

expect one "$some" icalendar
expect two "$some" jsonschema
expect '' "$some" icalendar jsonschema
expect three "$some:$own/three" icalendar jsonschema
expect one "$own/one:$own/three:$own/tools" icalendar
expect '' "$own/tools" json
expect '' "$own/tools:$own/none" json

echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
