# Text of docs/ and of --help as text lines of mdoc(7).

# A mark of roff as the letter it is.
function plain(text) {
	gsub(/\\/, "\\e", text)
	return text
}

# `code`, **bold** and [links](page.md#head), of which a manual has the words alone.
function inline(text,   out, word) {
	gsub(/\\\|/, "|", text)
	text = plain(text)
	while (match(text, /\[[^\]]*\]\([^)]*\)/)) {
		word = substr(text, RSTART + 1, index(substr(text, RSTART), "](") - 2)
		if (word ~ /\.md$/)
			word = "docs/" word
		text = substr(text, 1, RSTART - 1) word substr(text, RSTART + RLENGTH)
	}
	while (match(text, /`[^`]+`|\*\*[^*]+\*\*/)) {
		word = substr(text, RSTART, RLENGTH)
		out = out substr(text, 1, RSTART - 1) "\\fB"
		if (word ~ /^`/) {
			word = substr(word, 2, length(word) - 2)
			gsub(/-/, "\\-", word)
		} else {
			word = substr(word, 3, length(word) - 4)
		}
		out = out word "\\fR"
		text = substr(text, RSTART + RLENGTH)
	}
	return out text
}

# A sentence a line, as roff wants it, cut where a line gets long.
function put(text,   end) {
	text = inline(text)
	while (match(text, /[.!?][)"]* +/)) {
		end = RSTART + RLENGTH
		put_line(substr(text, 1, end - 1))
		text = substr(text, end)
	}
	put_line(text)
}

function put_line(line,   count, words, i, part) {
	gsub(/^ +| +$/, "", line)
	count = split(line, words, / +/)
	part = ""
	for (i = 1; i <= count; i++) {
		if (part != "" && length(part) + length(words[i]) >= 78) {
			put_raw(part)
			part = ""
		}
		part = part (part == "" ? "" : " ") words[i]
	}
	if (part != "")
		put_raw(part)
}

# No letter at the head of a line is a request.
function put_raw(line) {
	print (line ~ /^[.\047]/ ? "\\&" : "") line
}
