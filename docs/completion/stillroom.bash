# bash completion of stillroom; made by make docs.
_stillroom() {
	local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} command= options= words= files= i
	COMPREPLY=()
	for ((i = 1; i < COMP_CWORD; i++)); do
		case ${COMP_WORDS[i]} in
		-f | --file | --kitchen | --scratch | -o | --out | \
			--speed | -e | --elevation | --barometer | --measured | --food | --pack | --jar | --method | --pressure | --since | --product | --lot | --lid-box | --load | --run | --batch | --drying | --day | --fruit | --weight | --want | --in-pot | --format | --page | --grid | --margin | --gap | --copies | --start | --table) ((i++)) ;;
		-*) ;;
		*) command=${COMP_WORDS[i]}; break ;;
		esac
	done
	case $before in
	-f | --file | --kitchen | --scratch | -o | --out) files=1 ;;
	--speed | -e | --elevation | --barometer | --measured | --food | --pack | --jar | --method | --pressure | --since | --product | --lot | --lid-box | --load | --run | --batch | --drying | --day | --fruit | --weight | --want | --in-pot | --format | --page | --grid | --margin | --gap | --copies | --start | --table) return ;;
	*)
		case $command in
		'') options="-f --file --ascii --no-color -h --help -V --version" words="setup rehearse boil process foods loads jars warnings supplies pantry recall seasons season forecast shortage plan labels export import backup restore" ;;
		setup) options="-f --file --print -h --help -V --version" files=1 ;;
		rehearse) options="-f --file --ascii --no-color --kitchen --scratch --speed -h --help -V --version" ;;
		boil) options="--json -e --elevation --barometer --measured -h --help -V --version" ;;
		process) options="--json -e --elevation --food --pack --jar --method --pressure -h --help -V --version" ;;
		foods) options="--json --method -h --help -V --version" ;;
		loads) options="-f --file --json --all --since -h --help -V --version" ;;
		jars) options="-f --file --json --all --since -h --help -V --version" ;;
		warnings) options="-f --file --json --rules -h --help -V --version" ;;
		supplies) options="-f --file --json -h --help -V --version" ;;
		pantry) options="-f --file --json -h --help -V --version" ;;
		recall) options="-f --file --json --all --product --lot --lid-box --load --run --batch --drying --day -h --help -V --version" ;;
		seasons) options="-f --file --json -h --help -V --version" ;;
		season) options="-f --file --json -h --help -V --version" ;;
		forecast) options="-f --file --json --jar --fruit --weight --product --want --in-pot --juice-in-stock -h --help -V --version" ;;
		shortage) options="-f --file --json --jar --fruit --weight --product --want --in-pot --juice-in-stock -h --help -V --version" ;;
		plan) options="-f --file --json -h --help -V --version" ;;
		labels) options="-f --file --all --since --lot --load --format -o --out --every-jar --page --grid --margin --gap --copies --start --yes -h --help -V --version" ;;
		export) options="-f --file -o --out --table --schema --yes -h --help -V --version" ;;
		import) options="-f --file --yes -h --help -V --version" words=csv files=1 ;;
		backup) options="-f --file --yes -h --help -V --version" files=1 ;;
		restore) options="-f --file --yes -h --help -V --version" files=1 ;;
		esac
		if [[ $word == -* ]]; then words=$options files=; fi
		;;
	esac
	mapfile -t COMPREPLY < <(compgen -W "$words" -- "$word")
	if [[ -n $files ]]; then
		compopt -o filenames 2>/dev/null
		mapfile -t -O "${#COMPREPLY[@]}" COMPREPLY < <(compgen -f -- "$word")
	fi
}
complete -F _stillroom stillroom
