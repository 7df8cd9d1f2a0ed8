# Commands and their options (command_list.sh) as sections of a manual page, in mdoc(7).
#
#   awk -F '\t' -f mdoc_text.awk -f mdoc_commands.awk LIST

function sentence(text) {
	return toupper(substr(text, 1, 1)) substr(text, 2)
}

function flush_more() {
	if (more != "") {
		print ".Pp"
		put(more)
	}
	more = ""
}

function end_command() {
	flush_more()
	if (listed)
		print ".El"
	listed = 0
}

function put_usage(   line, count, words, i) {
	print ".Ss " $2
	print ".Nm"
	print ".Cm " $2 ($3 != "-" ? " Ar " $3 : "")
	count = $4 == "-" ? 0 : split($4, words, " ")
	for (i = 1; i <= count; i++)
		print (words[i] ~ /^--/ ? ".Fl \\-" substr(words[i], 3) : ".Ar " words[i])
	print ".Op Ar option ...\n.Pp"
	put(sentence($5))
}

function put_option(   line) {
	flush_more()
	if (!listed++)
		print ".Bl -tag -width Ds"
	line = $3 != "-" ? "Fl " $3 " , " : ""
	print ".It " line "Fl \\-" $4 ($5 != "-" ? " Ar " $5 : "")
	put($6)
}

$1 == "command" { end_command() }
$1 == "command" && $2 == "-" { print ".Ss The board" }
$1 == "command" && $2 != "-" { put_usage() }
$1 == "more" && $2 != "-" { more = more (more == "" ? "" : " ") $3 }
# Help and version, which all have, are told once.
$1 == "option" && ($2 == "-" || $4 != "help" && $4 != "version") { put_option() }
END { end_command() }
