# As commands of fish.

END {
	print "# fish completion of stillroom; made by make docs."
	print "complete -c stillroom -f"
	for (i = 1; i <= count; i++) {
		word = words[i]
		when = word == "-" ? "__fish_use_subcommand" : "\047__fish_seen_subcommand_from " word "\047"
		if (word != "-")
			print "complete -c stillroom -n __fish_use_subcommand -a " word " -d " quoted(does[word], "\\\047")
		if (is_file(operands[word]))
			print "complete -c stillroom -n " when " -F"
		for (j = 1; j <= option_count[word]; j++) {
			use(word, j)
			print "complete -c stillroom -n " when (letter != "" ? " -s " letter : "") " -l " name \
				(value == "" ? "" : is_file(value) ? " -r -F" : " -x") " -d " quoted(help, "\\\047")
		}
	}
}
