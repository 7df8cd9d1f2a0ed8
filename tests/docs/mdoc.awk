# Pages of docs/ as sections of a manual page, in mdoc(7): heads, paragraphs, lists, tables of
# two columns or more, code.  The first head of each page is left out; SUBHEADS=1 makes its
# others heads of the second order.
#
#   awk -f mdoc_text.awk -f mdoc.awk [SUBHEADS=1] FILE.md...

function flush() {
	sub(/ *\(Made by `make docs`[^)]*\)/, "", said)
	if (said != "") {
		if (!fresh)
			print ".Pp"
		put(said)
		fresh = 0
	}
	said = ""
}

function end_list() {
	flush_item()
	if (list != "") {
		print ".El"
		fresh = 0
	}
	list = ""
}

function begin_list(kind) {
	flush()
	if (list == kind)
		return
	end_list()
	list = kind
	print ".Bl -" kind
}

function flush_item() {
	if (item != "")
		put(item)
	item = ""
}

# Cells of a row; "\|" is no border.
function cells_of(row,   count, i) {
	gsub(/\\\|/, "\001", row)
	sub(/^\| */, "", row)
	sub(/ *\|$/, "", row)
	count = split(row, cell, / *\| */)
	for (i = 1; i <= count; i++) {
		gsub(/\001/, "|", cell[i])
		gsub(/^ +| +$/, "", cell[i])
	}
	return count
}

function put_row(   count, i, last) {
	count = cells_of($0)
	begin_list("tag -width Ds")
	print ".It " tagged(cell[1])
	last = 0
	for (i = 2; i <= count; i++) {
		if (cell[i] == "")
			continue
		if (i < count && title[i] != "")
			put("(" title[i] ": " cell[i] ")")
		else
			put(cell[i])
	}
}

# A line of a macro takes words; quotation marks hold them together.
function tagged(text) {
	text = inline(text)
	gsub(/"/, "\\(dq", text)
	return "\"" text "\""
}

function put_head(level, text) {
	flush()
	end_list()
	print (level == 2 && !SUBHEADS ? ".Sh " toupper(text) : ".Ss " text)
	fresh = 1
}

BEGIN { fresh = 1 }
FNR == 1 { fenced = 0; rows = 0 }
/^```/ {
	flush()
	end_list()
	fenced = !fenced
	print (fenced ? ".Bd -literal -offset indent" : ".Ed")
	fresh = 0
	next
}
fenced {
	text = plain($0)
	gsub(/-/, "\\-", text)
	put_raw(text)
	next
}
/^# / { next }
/^## / { put_head(2, plain(substr($0, 4))); next }
/^### / { put_head(3, plain(substr($0, 5))); next }
/^\|/ {
	rows++
	if (rows == 1) {
		count = cells_of($0)
		for (i = 1; i <= count; i++) title[i] = cell[i]
	} else if (rows > 2) {
		put_row()
	}
	next
}
{ rows = 0 }
/^- / { begin_list("bullet"); flush_item(); print ".It"; item = substr($0, 3); next }
/^[0-9]+\. / { begin_list("enum"); flush_item(); print ".It"; sub(/^[0-9]+\. /, ""); item = $0; next }
/^$/ { flush(); end_list(); next }
item != "" && /^ / { sub(/^ +/, ""); item = item " " $0; next }
{ end_list(); said = said (said == "" ? "" : " ") $0 }
END { flush(); end_list() }
