#compdef stillroom
# zsh completion of stillroom; made by make docs.
_stillroom() {
	local curcontext=$curcontext state line
	typeset -A opt_args
	local -a commands=(
		'setup:make a new log from the description of a kitchen, or write one of a log.'
		'rehearse:practice on a fast clock, in a log of its own.'
		'boil:air pressure, boiling point and jelly stage of a place.'
		'process:the published process: minutes, pressure, headspace, source.'
		'foods:the foods, packs and jars the tables offer.'
		'loads:open loads and those started today: phase, time left, process.'
		'jars:every jar of those loads: seal, siphoning, what happens to it.'
		'warnings:what needs a person, worst first.'
		'supplies:what is on the shelf: jars, lids, sugar, acid, pectin, fruit, juice.'
		'pantry:jars left by product and size, oldest first; how long they last.'
		'recall:every jar of a lot, lid box, product or piece of work; open recalls.'
		'seasons:the years side by side: jars, seals, juice, hours, come-up.'
		'season:one year: jars, yields, seals by box, canner and product, stations.'
		'forecast:this fruit, these products: juice, batches, jars, lids, loads.'
		'shortage:what is missing for them, in the units you buy.'
		'plan:the day plan: finish, what next, ribbons, tasks, what if.'
		'labels:sheets of labels for the jars that sealed.'
		'export:everything in the log as csv, json or ics.'
		'import:an old notebook, or the csv export of another log.'
		'backup:write a complete, checked copy of the log, even while a board has it open.'
		'restore:list the backups; replace a damaged log with one.'
	)
	_arguments -C \
		'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
		'--ascii[draw with plain ASCII]' \
		'--no-color[leave color out]' \
		'(-h --help)'{-h,--help}'[this help]' \
		'(-V --version)'{-V,--version}'[the version]' \
		'1:command:->command' '*::argument:->argument'
	case $state in
	command) _describe command commands ;;
	argument)
		case $line[1] in
		setup)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--print[write the kitchen of the log as a kitchen file]' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' \
				'1:KITCHEN_FILE:_files' ;;
		rehearse)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--ascii[draw with plain ASCII]' \
				'--no-color[leave color out]' \
				'--kitchen[practice in this kitchen]:KITCHEN_FILE:_files' \
				'--scratch[the practice log, made when missing]:FILE:_files' \
				'--speed[the clock runs N times as fast, 1 to 3600; else 60]:N: ' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' ;;
		boil)
			_arguments \
				'--json[answer in JSON]' \
				'*'{-e,--elevation}'[of the kitchen, with its unit: 4650ft, 1417m]:HEIGHT: ' \
				'--barometer[station pressure: "85.4 kPa"]:PRESSURE: ' \
				'--measured[of boiling water: 203.1F, 95.1C]:TEMPERATURE: ' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' ;;
		process)
			_arguments \
				'--json[answer in JSON]' \
				'*'{-e,--elevation}'[of the kitchen, with its unit: 4650ft, 1417m]:HEIGHT: ' \
				'--food[as the tables name it (see "stillroom foods")]:FOOD: ' \
				'--pack[hot, raw, hot_sterile_jar, ...]:PACK: ' \
				'--jar[half_pint, pint, quart, ...]:JAR: ' \
				'--method[boiling_water, steam, dial_gauge, weighted_gauge]:METHOD: ' \
				'--pressure[gauge pressure, where the table has several]:PSI: ' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' ;;
		foods)
			_arguments \
				'--json[answer in JSON]' \
				'--method[boiling_water, steam, dial_gauge, weighted_gauge]:METHOD: ' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' ;;
		loads)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--json[answer in JSON]' \
				'--all[all there are, not only open ones and today'\''s]' \
				'--since[open loads and those begun on DATE or later: 2026-09-14]:DATE: ' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' ;;
		jars)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--json[answer in JSON]' \
				'--all[all there are, not only open ones and today'\''s]' \
				'--since[open loads and those begun on DATE or later: 2026-09-14]:DATE: ' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' ;;
		warnings)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--json[answer in JSON]' \
				'--rules[the rules themselves, without a log]' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' ;;
		supplies)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--json[answer in JSON]' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' ;;
		pantry)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--json[answer in JSON]' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' ;;
		recall)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--json[answer in JSON]' \
				'--all[all there are, not only open ones and today'\''s]' \
				'*--product["grape jelly", "3 x grape jelly in pints"; again: one more]:PRODUCT: ' \
				'--lot[jars of a lot: 2026-09-14-B1]:CODE: ' \
				'--lid-box[jars under lids of a box; a part of its label will do]:LABEL: ' \
				'--load[what came out of a load]:NUMBER: ' \
				'--run[what came out of a run]:NUMBER: ' \
				'--batch[what came out of a batch]:NUMBER: ' \
				'--drying[what came out of a drying]:NUMBER: ' \
				'--day[jars made or canned on a day: 2026-09-14]:DATE: ' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' ;;
		seasons)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--json[answer in JSON]' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' ;;
		season)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--json[answer in JSON]' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' \
				'1:YEAR: ' ;;
		forecast)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--json[answer in JSON]' \
				'--jar[half_pint, pint, quart, ...]:JAR: ' \
				'--fruit[grapes, apples, ...]:FRUIT: ' \
				'--weight[of the fruit: 60lb, 27kg]:WEIGHT: ' \
				'*--product["grape jelly", "3 x grape jelly in pints"; again: one more]:PRODUCT: ' \
				'--want[a number of jars of the product: how much fruit?]:JARS: ' \
				'--in-pot[batches cooked in one pot at most; else 1]:N: ' \
				'--juice-in-stock[the juice in stock is used as well]' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' ;;
		shortage)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--json[answer in JSON]' \
				'--jar[half_pint, pint, quart, ...]:JAR: ' \
				'--fruit[grapes, apples, ...]:FRUIT: ' \
				'--weight[of the fruit: 60lb, 27kg]:WEIGHT: ' \
				'*--product["grape jelly", "3 x grape jelly in pints"; again: one more]:PRODUCT: ' \
				'--want[a number of jars of the product: how much fruit?]:JARS: ' \
				'--in-pot[batches cooked in one pot at most; else 1]:N: ' \
				'--juice-in-stock[the juice in stock is used as well]' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' ;;
		plan)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--json[answer in JSON]' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' ;;
		labels)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--all[all there are, not only open ones and today'\''s]' \
				'--since[open loads and those begun on DATE or later: 2026-09-14]:DATE: ' \
				'--lot[jars of a lot: 2026-09-14-B1]:CODE: ' \
				'--load[what came out of a load]:NUMBER: ' \
				'--format[html, svg or text]:FORMAT: ' \
				'(-o --out)'{-o,--out}'[write there, not to standard output]:FILE:_files' \
				'--every-jar[jars that did not seal or were not checked, too]' \
				'--page[letter, legal, a4, a5, or a size: 210x297mm]:PAGE: ' \
				'--grid[labels side by side x one below the other: 3x10]:GRID: ' \
				'--margin[of the page: 12mm; top and bottom,sides; top,right,bottom,left]:MARGIN: ' \
				'--gap[between labels: 3mm; between columns,between rows]:GAP: ' \
				'--copies[of each label, 1 to 50; else 1]:N: ' \
				'--start[first label that is still free on a used sheet; else 1]:N: ' \
				'--yes[yes, do it]' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' ;;
		export)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'(-o --out)'{-o,--out}'[write there, not to standard output]:FILE:_files' \
				'--table[this table only, to standard output or a file]:TABLE: ' \
				'--schema[what the JSON document looks like, as a JSON schema]' \
				'--yes[yes, do it]' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' \
				'1:FORMAT: ' ;;
		import)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--yes[yes, do it]' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' \
				'1:csv:(csv)' \
				'2:PATH:_files' ;;
		backup)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--yes[yes, do it]' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' \
				'1:TO:_files' ;;
		restore)
			_arguments \
				'(-f --file)'{-f,--file}'[the log; else log.db in $XDG_DATA_HOME/stillroom]:FILE:_files' \
				'--yes[yes, do it]' \
				'(-h --help)'{-h,--help}'[this help]' \
				'(-V --version)'{-V,--version}'[the version]' \
				'1:BACKUP:_files' ;;
		esac ;;
	esac
}
_stillroom "$@"
