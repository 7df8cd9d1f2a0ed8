# The links of Markdown files whose target is not there, one a line: "file:line: target".
# LIST names all files there are, a line each; FILES are those of Markdown, named as in it.
# First they are read for their heads, then for their links.
#
#   awk -f links.awk pass=0 LIST pass=1 FILES pass=2 FILES

# As a browser of repositories makes it of a head: small letters, blanks as dashes, no other marks.
function anchor_of(head) {
	head = tolower(head)
	gsub(/[^a-z0-9 _-]/, "", head)
	gsub(/ /, "-", head)
	return head
}

function folder_of(path) {
	return match(path, /.*\//) ? substr(path, 1, RLENGTH) : ""
}

# "docs/decisions/../log.md" is "docs/log.md".
function plain(path) {
	while (match(path, /[^\/.]+\/\.\.\//)) path = substr(path, 1, RSTART - 1) substr(path, RSTART + RLENGTH)
	return path
}

function look(target,   path, part) {
	part = index(target, "#") ? substr(target, index(target, "#") + 1) : ""
	path = target
	sub(/#.*/, "", path)
	path = path == "" ? FILENAME : plain(folder_of(FILENAME) path)
	seen++
	if (path ~ /^\/|:|^\.\.\//) print FILENAME ":" FNR ": leads out of here: " target
	else if (!(path in stands)) print FILENAME ":" FNR ": no such file: " target
	else if (part != "" && !((path, part) in anchors)) print FILENAME ":" FNR ": no such head: " target
}

pass == 0 { stands[$0] = 1; next }
FNR == 1 { fenced = 0 }
/^```/ { fenced = !fenced; next }
fenced { next }
pass == 1 && /^#+ / {
	head = $0
	sub(/^#+ +/, "", head)
	name = anchor_of(head)
	count = used[FILENAME, name]++
	anchors[FILENAME, count ? name "-" count : name] = 1
}
pass == 2 {
	rest = $0
	gsub(/`[^`]*`/, "", rest)
	while (match(rest, /\]\([^)]*\)/)) {
		target = substr(rest, RSTART + 2, RLENGTH - 3)
		rest = substr(rest, RSTART + RLENGTH)
		look(target)
	}
}
END { print seen + 0 " links" }
