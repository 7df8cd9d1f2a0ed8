# The commands and their options (command_list.sh), read for those who write them down for a
# shell: words[1..count], does[word], operands[word]; of each word option_count[word] and the
# lines option[word, i], read by use().  The board is the word "-".

# The fields of an option: letter, name, value, help; what is not there is "".
function use(word, i,   part) {
	split(option[word, i], part, "\t")
	letter = part[3] == "-" ? "" : part[3]
	name = part[4]
	value = part[5] == "-" ? "" : part[5]
	help = part[6]
}

function is_file(what) {
	return what ~ /FILE|PATH|BACKUP|TO/
}

# Within the single quotation marks of a shell.
function quoted(text, mark,    part, n, i, out) {
	n = split(text, part, /\047/) # what a backslash is in the text of gsub() differs from one awk to the next
	out = part[1]
	for (i = 2; i <= n; i++) out = out mark part[i]
	return "\047" out "\047"
}

$1 == "command" { words[++count] = $2; operands[$2] = $3 == "-" ? "" : $3; does[$2] = $5 }
$1 == "option" { option[$2, ++option_count[$2]] = $0 }
