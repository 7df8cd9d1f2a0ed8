# As a function of zsh.

function zsh_options(word, indent,   i, out, said, takes) {
	for (i = 1; i <= option_count[word]; i++) {
		use(word, i)
		said = help
		gsub(/\[/, "(", said)
		gsub(/\]/, ")", said)
		takes = value == "" ? "" : ":" value ":" (is_file(value) ? "_files" : " ")
		out = out " \\\n" indent
		# Products and heights may be given again.
		again = name == "product" || name == "elevation"
		if (letter != "")
			out = out (again ? "\047*\047" : "\047(-" letter " --" name ")\047") "{-" letter ",--" name "}" quoted("[" said "]" takes, "\047\\\047\047")
		else
			out = out quoted((again ? "*" : "") "--" name "[" said "]" takes, "\047\\\047\047")
	}
	return out
}

END {
	print "#compdef stillroom"
	print "# zsh completion of stillroom; made by make docs."
	print "_stillroom() {"
	print "\tlocal curcontext=$curcontext state line"
	print "\ttypeset -A opt_args"
	print "\tlocal -a commands=("
	for (i = 2; i <= count; i++)
		print "\t\t" quoted(words[i] ":" does[words[i]], "\047\\\047\047")
	print "\t)"
	print "\t_arguments -C" zsh_options("-", "\t\t") " \\"
	print "\t\t\0471:command:->command\047 \047*::argument:->argument\047"
	print "\tcase $state in"
	print "\tcommand) _describe command commands ;;"
	print "\targument)"
	print "\t\tcase $line[1] in"
	for (i = 2; i <= count; i++) {
		word = words[i]
		print "\t\t" word ")"
		printf "\t\t\t_arguments%s", zsh_options(word, "\t\t\t\t")
		n = split(operands[word], operand, " ")
		for (j = 1; j <= n; j++) {
			gsub(/[][]/, "", operand[j])
			printf " \\\n\t\t\t\t\047%d:%s:%s\047", j, operand[j], \
				is_file(operand[j]) ? "_files" : operand[j] ~ /^[a-z]+$/ ? "(" operand[j] ")" : " "
		}
		print " ;;"
	}
	print "\t\tesac ;;"
	print "\tesac"
	print "}"
	print "_stillroom \"$@\""
}
