# As a function of bash; it needs nothing but bash.

# "-f --file" and so on: all that word takes, or those with a value (of a file: FILES=1).
function names(word, with_value, files,   i, out) {
	for (i = 1; i <= option_count[word]; i++) {
		use(word, i)
		if (with_value && (value == "" || is_file(value) != files))
			continue
		out = out (letter != "" ? " -" letter : "") " --" name
	}
	return substr(out, 2)
}

# Of all commands together, each once, as a pattern.
function pattern(files,   i, j, part, n, seen, out) {
	for (i = 1; i <= count; i++) {
		n = split(names(words[i], 1, files), part, " ")
		for (j = 1; j <= n; j++)
			if (!seen[part[j]]++)
				out = out (out == "" ? "" : " | ") part[j]
	}
	return out
}

END {
	for (i = 2; i <= count; i++)
		all = all (i == 2 ? "" : " ") words[i]
	print "# bash completion of stillroom; made by make docs."
	print "_stillroom() {"
	print "\tlocal word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} command= options= words= files= i"
	print "\tCOMPREPLY=()"
	print "\tfor ((i = 1; i < COMP_CWORD; i++)); do"
	print "\t\tcase ${COMP_WORDS[i]} in"
	print "\t\t" pattern(1) " | \\\n\t\t\t" pattern(0) ") ((i++)) ;;"
	print "\t\t-*) ;;"
	print "\t\t*) command=${COMP_WORDS[i]}; break ;;"
	print "\t\tesac"
	print "\tdone"
	print "\tcase $before in"
	print "\t" pattern(1) ") files=1 ;;"
	print "\t" pattern(0) ") return ;;"
	print "\t*)"
	print "\t\tcase $command in"
	printf "\t\t\047\047) options=\"%s\" words=\"%s\" ;;\n", names("-", 0, 0), all
	for (i = 2; i <= count; i++) {
		word = words[i]
		split(operands[word], operand, " ")
		printf "\t\t%s) options=\"%s\"%s%s ;;\n", word, names(word, 0, 0), \
			operand[1] ~ /^[a-z]+$/ ? " words=" operand[1] : "", is_file(operands[word]) ? " files=1" : ""
	}
	print "\t\tesac"
	print "\t\tif [[ $word == -* ]]; then words=$options files=; fi"
	print "\t\t;;"
	print "\tesac"
	print "\tmapfile -t COMPREPLY < <(compgen -W \"$words\" -- \"$word\")"
	print "\tif [[ -n $files ]]; then"
	print "\t\tcompopt -o filenames 2>/dev/null"
	print "\t\tmapfile -t -O \"${#COMPREPLY[@]}\" COMPREPLY < <(compgen -f -- \"$word\")"
	print "\tfi"
	print "}"
	print "complete -F _stillroom stillroom"
}
