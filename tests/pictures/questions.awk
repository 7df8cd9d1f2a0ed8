# questions.awk - the questions of all lines that are typed, out of the sources of the
# screen, as regular expressions: what stands in quotes in a call of desk_ask or desk_offer
# and in what makes a `prompt`.  %s and the like may be anything.
function tell(text) {
	gsub(/[][\\.*^$]/, "\\\\&", text)
	gsub(/%[-0-9.*\\]*(l|z)*[dsu]/, ".*", text)
	print " " text
}

# A call goes on until its semicolon.
/desk_(ask|offer)\(desk,|snprintf\(prompt,|\.prompt = |^\t\{ "[^"]*:", "[a-z]+", / { inside = 1; call = "" }
inside {
	call = call " " $0
	if ($0 !~ /;|^\t\{/) next
	inside = 0
	if (call ~ /^ \t\{/) { # a row of a table of questions
		match(call, /"[^"]*"/)
		tell(substr(call, RSTART + 1, RLENGTH - 2))
		next
	}
	sub(/.*desk_(ask|offer)\(desk, */, "", call)
	sub(/.*snprintf\(prompt, sizeof\(prompt\), */, "", call)
	# The first argument; with a choice of two, both.
	while (match(call, /^[^",]*"([^"\\]|\\.)*"/)) {
		text = substr(call, RSTART, RLENGTH)
		call = substr(call, RSTART + RLENGTH)
		sub(/^[^"]*"/, "", text)
		sub(/"$/, "", text)
		tell(text)
	}
}
