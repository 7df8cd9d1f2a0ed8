# stillroom - build, test and install.  `make help` lists the verbs.
# GNU make.  Works from a clean checkout; everything made goes to $(BUILD).

BUILD ?= build
PREFIX ?= /usr/local
MANDIR ?= $(PREFIX)/share/man
DESTDIR ?=
CC ?= cc
# HOSTCC builds what runs at the build itself; in a cross build it is another than CC.
HOSTCC ?= $(CC)
HOSTCFLAGS ?= -O1 -g
INSTALL ?= install
PKG_CONFIG ?= pkg-config
VERSION := 1.0.0
Q := $(if $(V),,@)

# --- flags --------------------------------------------------------------------

WARN := -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Wundef -Wformat=2 -Wstrict-prototypes \
	-Wmissing-prototypes -Wwrite-strings -Wpointer-arith -Wcast-qual -Wvla
CFLAGS ?= -O2 -g
# Time and file sizes have 64 bits on machines of 32, too.
STD := -std=c17 -D_XOPEN_SOURCE=700 -D_DEFAULT_SOURCE -D_FILE_OFFSET_BITS=64 -D_TIME_BITS=64
# There the two macros above hide what POSIX does not have: SIGWINCH, struct winsize.
ifneq ($(shell uname -s),Linux)
STD += -D__BSD_VISIBLE=1 -D_DARWIN_C_SOURCE
endif
# No path of the machine that builds stands in what is built.
PATHS := -ffile-prefix-map='$(CURDIR)'=.
# Only the log uses the session extension; these macros open its declarations.
SESSION := -DSQLITE_ENABLE_SESSION -DSQLITE_ENABLE_PREUPDATE_HOOK
INCLUDES := -Isrc -I$(BUILD)/generated

# Hardening; `make HARDEN= HARDEN_LINK=` leaves it out (the sanitizers do).
# _FORTIFY_SOURCE is an error of its own in a build without optimisation.
HARDEN ?= -fstack-protector-strong -fPIE \
	$(if $(filter-out -O0,$(filter -O%,$(CFLAGS))),-U_FORTIFY_SOURCE -D_FORTIFY_SOURCE=2)
ifeq ($(shell uname -s),Linux)
HARDEN_LINK ?= -pie -Wl,-z,relro -Wl,-z,now
endif

# Asked for once, and only when something is compiled: on a bare machine
# pkg-config comes with `make deps`, after this file has been read.
once = $(eval $(1) := $(2))$($(1))
# ncursesw names feature macros of its own; STD has ours.
LIB_CFLAGS = $(call once,LIB_CFLAGS,$(filter-out -D_XOPEN_SOURCE% -D_DEFAULT_SOURCE%,\
	$(shell $(PKG_CONFIG) --cflags ncursesw sqlite3 2>/dev/null)))
LIBS = $(call once,LIBS,$(shell $(PKG_CONFIG) --libs ncursesw sqlite3 2>/dev/null \
	|| echo -lncursesw -lsqlite3) -lm)
CHECK_CFLAGS = $(call once,CHECK_CFLAGS,$(shell $(PKG_CONFIG) --cflags check 2>/dev/null))
CHECK_LIBS = $(call once,CHECK_LIBS,$(shell $(PKG_CONFIG) --libs check 2>/dev/null || echo -lcheck))
JOBS = $(call once,JOBS,$(shell nproc 2>/dev/null || getconf _NPROCESSORS_ONLN 2>/dev/null || echo 2))
# Tests side by side: three for each core, because those at a terminal mostly wait.
TEST_JOBS = $(call once,TEST_JOBS,$(shell expr 3 '*' $(JOBS)))

ALL_CFLAGS = $(STD) $(WARN) $(HARDEN) $(PATHS) $(CFLAGS) $(CPPFLAGS) $(INCLUDES) $(SESSION) $(LIB_CFLAGS) \
	-DSTILLROOM_VERSION='"$(VERSION)"' $(EXTRA_CFLAGS)
# What is tested is compiled as it will be used; the tests beside it need not be fast, and
# a hundred programs that each carry the debug lines of the whole take long to link.  Lint
# asks for -O1, where the compiler sees more.
TEST_O ?= -O0
TEST_CFLAGS = $(patsubst -O2,$(TEST_O),$(if $(filter -O0,$(TEST_O)),\
	$(filter-out -U_FORTIFY_SOURCE -D_FORTIFY_SOURCE=2,$(ALL_CFLAGS)),$(ALL_CFLAGS))) -Itests $(CHECK_CFLAGS)
STRIPPED := -Wl,-S
TEST_LINK = $(LINK) $(if $(filter -O2,$(CFLAGS)),$(STRIPPED))
LINK = $(CC) $(HARDEN) $(PATHS) $(CFLAGS) $(HARDEN_LINK) $(EXTRA_CFLAGS) $(LDFLAGS)

# Finds what is missing and installs it; with DEPS=no nobody is asked, nor any network.
deps_for = @$(if $(filter no,$(DEPS)),:,sh .ci/deps $(1))

# A second make, which reads this file afresh (flags, generated files) and uses
# all cores unless -j was given.
AGAIN = $(MAKE) --no-print-directory $(if $(V),,-s) $(if $(findstring jobserver,$(MAKEFLAGS)),,-j$(JOBS))

# --- what there is ------------------------------------------------------------

FLOORS := base engine log kitchen report screen
SOURCES := $(sort $(foreach f,$(FLOORS),$(wildcard src/$(f)/*.c src/$(f)/*/*.c)))
HEADERS := $(sort $(wildcard src/*/*.h src/*/*/*.h))
OBJECTS := $(SOURCES:%.c=$(BUILD)/%.o)
GENERATED := $(addprefix $(BUILD)/generated/,process_table.c jar_table.c pack_table.c product_table.c \
	yield_table.c drying_table.c recipe_table.c recipe_step_table.c food_table.c layouts.c)
GENERATED_OBJECTS := $(GENERATED:%.c=%.o)
EACH := $(BUILD)/generated/screen/ui/each.h
LIBRARY := $(BUILD)/libstillroom.a
PROGRAM := $(BUILD)/stillroom
BAKE := $(BUILD)/bake
BAKE_RECIPES := $(BUILD)/bake_recipes

UNIT_TESTS := $(sort $(filter-out tests/support/%,$(wildcard tests/*/test_*.c tests/*/*/test_*.c)))
UNIT_PROGRAMS := $(UNIT_TESTS:%.c=$(BUILD)/%)
# Those that take longest stand first, so that none of them is left for the end.
LONGEST_SCRIPTS := $(addprefix tests/terminal/test_,$(addsuffix .sh,\
	full_day alarm_command seasons story kill_board sizes))
BROWSER_TEST := tests/report/exchange/test_labels_in_chromium.sh
SHELL_TESTS := $(LONGEST_SCRIPTS) tests/floors.sh \
	$(filter-out $(LONGEST_SCRIPTS) $(BROWSER_TEST),$(sort $(wildcard tests/*/test_*.sh tests/*/*/test_*.sh)))
SUPPORT := $(sort $(wildcard tests/support/*.c))
SUPPORT_OBJECTS := $(SUPPORT:%.c=$(BUILD)/%.o)
# Programs that the shell tests drive, and timings.
SUPPORT_PROGRAM_SOURCES := $(sort $(wildcard tests/support_programs/*.c))
SUPPORT_PROGRAMS := $(SUPPORT_PROGRAM_SOURCES:tests/support_programs/%.c=$(BUILD)/support/%)
BENCH_SOURCES := $(sort $(wildcard tests/bench/bench_*.c))
BENCH_PROGRAMS := $(BENCH_SOURCES:tests/bench/%.c=$(BUILD)/bench/%)
TEST_OBJECTS := $(patsubst %.c,$(BUILD)/%.o,$(UNIT_TESTS) $(SUPPORT_PROGRAM_SOURCES) $(BENCH_SOURCES))

# --- build --------------------------------------------------------------------

.PHONY: all
all: $(PROGRAM) ## build the program (the default)

$(PROGRAM): $(BUILD)/src/main.o $(LIBRARY)
	@echo "  link  $@"
	$(Q)$(LINK) -o $@ $^ $(LIBS)

$(LIBRARY): $(OBJECTS) $(GENERATED_OBJECTS)
	$(Q)rm -f $@
	$(Q)$(AR) rcs $@ $^

$(BUILD)/%.o: %.c Makefile | $(EACH)
	@mkdir -p $(@D)
	@echo "  cc    $<"
	$(Q)$(CC) $(ALL_CFLAGS) -MMD -MP -c -o $@ $<

$(BUILD)/generated/%.o: $(BUILD)/generated/%.c Makefile
	$(Q)$(CC) $(ALL_CFLAGS) -MMD -MP -c -o $@ $<

# Which views and forms there are (screen/ui/view.h): each make looks, and writes the list anew
# when it has become another.  A desk of zeros shows the board, so that stands first.
each = sed -n 's/^const struct $(2) \([a-z_]*\)_$(3) = {$$/\1/p' src/screen/*/*.c | LC_ALL=C sort \
	| awk 'function put(word) { printf " \\\n\tOF(%s, %s)", toupper(word), word } \
		BEGIN { printf "\#define $(1)(OF)" } NR == 1 && "$(4)" { put("$(4)") } $$0 != "$(4)" { put($$0) } \
		END { print "" }'
each_of_both = { $(call each,EACH_VIEW,view,view,board); $(call each,EACH_ENTRY,entry_form,form); }
$(EACH): $(shell $(each_of_both) | cmp -s - '$(EACH)' || echo force)
	@mkdir -p $(@D)
	@$(each_of_both) >$@
.PHONY: force
force:

# Tables and the log's layout are baked into the program from schema/, by two programs of
# the machine that builds: bake, linked with those files of the engine that need no table,
# and bake_recipes, linked with the tables of bake and the engine's rules for recipes.
# Their objects stand apart, as HOSTCC may build for another machine than CC.
BAKE_OBJECTS := $(BUILD)/bake-objects
BAKE_LINK = $(HOSTCC) $(STD) $(HOSTCFLAGS) $(EXTRA_CFLAGS)
BAKE_MAINS := src/bake/bake.c src/bake/bake_recipes.c
BAKE_RECIPE_SOURCES := src/bake/recipe.c src/bake/step.c
BAKE_SHARED := $(filter-out $(BAKE_MAINS) $(BAKE_RECIPE_SOURCES),$(sort $(wildcard src/bake/*.c))) \
	$(addprefix src/base/,csv.c fault.c text.c utf8.c) \
	$(addprefix src/engine/,food/food_names.c process/process_names.c \
	recipe/amount.c recipe/fruit.c recipe/recipe_names.c)
BAKE_RULES := $(addprefix src/engine/,food/food.c food/recipe_check.c process/jar_size.c \
	process/process_walk.c recipe/recipe.c)
BAKE_TABLES := $(addprefix $(BUILD)/generated/,jar_table.c process_table.c food_table.c)
objects_of_bake = $(patsubst %.c,$(BAKE_OBJECTS)/%.o,$(1))
# All of bake_recipes but the tables.
BAKE_RECIPES_OBJECTS := $(call objects_of_bake,src/bake/bake_recipes.c $(BAKE_RECIPE_SOURCES) \
	$(BAKE_SHARED) $(BAKE_RULES))

$(BAKE): $(call objects_of_bake,src/bake/bake.c $(BAKE_SHARED))
	$(Q)$(BAKE_LINK) -o $@ $^
$(BAKE_RECIPES): $(BAKE_RECIPES_OBJECTS) $(BAKE_TABLES:$(BUILD)/%.c=$(BAKE_OBJECTS)/%.o)
	$(Q)$(BAKE_LINK) -o $@ $^

$(BAKE_OBJECTS)/%.o: %.c Makefile
	@mkdir -p $(@D)
	@echo "  cc    $< for bake"
	$(Q)$(BAKE_LINK) $(WARN) -Isrc -MMD -MP -c -o $@ $<
$(BAKE_OBJECTS)/generated/%.o: $(BUILD)/generated/%.c Makefile
	@mkdir -p $(@D)
	$(Q)$(BAKE_LINK) $(WARN) -Isrc -MMD -MP -c -o $@ $<

# In the order bake takes the files.
PROCESS_TABLES := schema/jar.csv schema/pack.csv $(sort $(wildcard schema/process_*.csv))
RECIPE_CSV := schema/recipe.csv schema/recipe_ingredient.csv \
	schema/recipe_guide.csv schema/recipe_guide_ingredient.csv
# What each food needs, in the order bake takes the files.
FOOD_CSV := $(addprefix schema/,food.csv acid_rule.csv ingredient_class.csv own_recipe.csv ingredient.csv \
	suspect_step.csv)
MIGRATION_SQL := $(sort $(wildcard schema/migration/*.sql))

$(BUILD)/generated/process_table.c: $(BAKE) $(PROCESS_TABLES)
	@mkdir -p $(@D)
	$(Q)$(BAKE) process $(PROCESS_TABLES) >$@.new && mv $@.new $@
$(BUILD)/generated/jar_table.c: $(BAKE) schema/jar.csv
	@mkdir -p $(@D)
	$(Q)$(BAKE) jar schema/jar.csv >$@.new && mv $@.new $@
$(BUILD)/generated/pack_table.c: $(BAKE) schema/pack.csv
	@mkdir -p $(@D)
	$(Q)$(BAKE) pack schema/pack.csv >$@.new && mv $@.new $@
$(BUILD)/generated/product_table.c: $(BAKE) schema/product.csv
	@mkdir -p $(@D)
	$(Q)$(BAKE) product schema/product.csv >$@.new && mv $@.new $@
$(BUILD)/generated/yield_table.c: $(BAKE) schema/yield.csv
	@mkdir -p $(@D)
	$(Q)$(BAKE) yield schema/yield.csv >$@.new && mv $@.new $@
$(BUILD)/generated/drying_table.c: $(BAKE) schema/drying.csv schema/drying_keep.csv
	@mkdir -p $(@D)
	$(Q)$(BAKE) drying schema/drying.csv schema/drying_keep.csv >$@.new && mv $@.new $@
$(BUILD)/generated/recipe_table.c: $(BAKE_RECIPES) $(RECIPE_CSV)
	@mkdir -p $(@D)
	$(Q)$(BAKE_RECIPES) recipe $(RECIPE_CSV) >$@.new && mv $@.new $@
$(BUILD)/generated/recipe_step_table.c: $(BAKE_RECIPES) schema/recipe_step.csv schema/recipe.csv schema/recipe_guide.csv
	@mkdir -p $(@D)
	$(Q)$(BAKE_RECIPES) step schema/recipe_step.csv schema/recipe.csv schema/recipe_guide.csv >$@.new && mv $@.new $@
$(BUILD)/generated/food_table.c: $(BAKE) $(FOOD_CSV) $(PROCESS_TABLES)
	@mkdir -p $(@D)
	$(Q)$(BAKE) food $(FOOD_CSV) $(PROCESS_TABLES) >$@.new && mv $@.new $@
$(BUILD)/generated/layouts.c: $(BAKE) schema/log.sql $(MIGRATION_SQL)
	@mkdir -p $(@D)
	$(Q)$(BAKE) layout schema/log.sql $(MIGRATION_SQL) >$@.new && mv $@.new $@

# The list of all rules is what the program itself says: docs/warnings.md is a copy,
# and a test fails when it is an old one.
$(BUILD)/docs/warnings.md: $(PROGRAM)
	@mkdir -p $(@D)
	$(Q)$(PROGRAM) warnings --rules >$@.new && mv $@.new $@

# Likewise what an export looks like.
$(BUILD)/docs/export.schema.json: $(PROGRAM)
	@mkdir -p $(@D)
	$(Q)$(PROGRAM) export json --schema >$@.new && mv $@.new $@

# Pages made of tables: of the keys of every view, of the configuration, of the commands.
MADE_PAGES := $(addprefix $(BUILD)/docs/,warnings.md export.schema.json keys.md configuration.md commands.md)
$(BUILD)/docs/keys.md $(BUILD)/docs/configuration.md $(BUILD)/docs/commands.md: $(BUILD)/docs/%.md: $(BUILD)/support/write_page
	@mkdir -p $(@D)
	$(Q)$(BUILD)/support/write_page $* >$@.new && mv $@.new $@

# Likewise the manual, and what shells complete; they are kept in docs/, so that an
# installation for another machine has them.
MANUAL := $(addprefix man/,stillroom.1 stillroom-log.5 stillroom-kitchen.5)
COMPLETIONS := $(addprefix completion/stillroom.,bash zsh fish)
PAGE_MAKERS := $(wildcard tests/docs/*.awk tests/docs/*.sh)
MAKE_PAGE = STILLROOM='$(abspath $(PROGRAM))' SUPPORT='$(abspath $(BUILD)/support)' sh
$(addprefix $(BUILD)/share/,$(MANUAL)): $(BUILD)/share/man/%: $(PAGE_MAKERS) $(PROGRAM) $(BUILD)/support/write_page \
	docs-pages README.md $(wildcard docs/*.md)
	@mkdir -p $(@D)
	$(Q)$(MAKE_PAGE) tests/docs/manual.sh $* >$@.new && mv $@.new $@
$(addprefix $(BUILD)/share/,$(COMPLETIONS)): $(BUILD)/share/completion/stillroom.%: $(PAGE_MAKERS) $(PROGRAM)
	@mkdir -p $(@D)
	$(Q)$(MAKE_PAGE) tests/docs/completion.sh $* >$@.new && mv $@.new $@

# The pictures of docs/: a day at the board, keys in, windows out.
DAY := tests/data/tutorial_day.txt
PICTURED := demo/quince-hollow-day.kitchen
$(BUILD)/docs/pictures/drawn: $(BUILD)/support/draw_pictures $(DAY) $(PICTURED)
	@mkdir -p $(@D)
	$(Q)rm -f $(@D)/*.svg
	$(Q)$(BUILD)/support/draw_pictures $(PICTURED) $(@D) $(DAY) >$@.said || { cat $@.said; exit 1; }
	$(Q)touch $@

.PHONY: docs docs-run docs-pages pictures pictures-run
docs: ## bring what is made in docs/ up to date: pages, JSON schema, manual, completion, pictures
	$(call deps_for,check)
	+@$(AGAIN) docs-run pictures-run

docs-run: docs-pages $(addprefix $(BUILD)/share/,$(MANUAL) $(COMPLETIONS))
	@for made in $(MANUAL) $(COMPLETIONS); do \
		cmp -s "$(BUILD)/share/$$made" "docs/$$made" || { cp "$(BUILD)/share/$$made" "docs/$$made" && echo "  docs  docs/$$made"; }; done

docs-pages: $(MADE_PAGES)
	@for made in $^; do \
		cmp -s "$$made" "docs/$${made##*/}" || { cp "$$made" docs/ && echo "  docs  docs/$${made##*/}"; }; done

pictures: ## draw the pictures of docs/ anew, from the program's own screen
	$(call deps_for,check)
	+@$(AGAIN) pictures-run

pictures-run: $(BUILD)/docs/pictures/drawn
	@mkdir -p docs/pictures
	@for made in $(BUILD)/docs/pictures/*.svg; do \
		cmp -s "$$made" "docs/pictures/$${made##*/}" || { cp "$$made" docs/pictures/ && echo "  docs  docs/pictures/$${made##*/}"; }; done

# What every view shows, whole, as text: kept in tests/pictures/ and compared there.
.PHONY: screens screens-run
screens: ## draw what tests/pictures/ keeps of each view anew, and show what differs
	$(call deps_for,check)
	+@$(AGAIN) screens-run

screens-run: $(BUILD)/support/draw_pictures
	@SUPPORT='$(abspath $(BUILD)/support)' sh tests/pictures/keep.sh

# --- tests --------------------------------------------------------------------

$(BUILD)/tests/%.o: tests/%.c Makefile | $(EACH)
	@mkdir -p $(@D)
	@echo "  cc    $<"
	$(Q)$(CC) $(TEST_CFLAGS) -MMD -MP -c -o $@ $<

$(SUPPORT_OBJECTS): TEST_O = -O1
$(UNIT_PROGRAMS): $(BUILD)/tests/%: $(BUILD)/tests/%.o $(SUPPORT_OBJECTS) $(LIBRARY)
	$(Q)$(TEST_LINK) -o $@ $^ $(LIBS) $(CHECK_LIBS)
$(SUPPORT_PROGRAMS): $(BUILD)/support/%: $(BUILD)/tests/support_programs/%.o $(SUPPORT_OBJECTS) $(LIBRARY)
	@mkdir -p $(@D)
	$(Q)$(TEST_LINK) -o $@ $^ $(LIBS) $(CHECK_LIBS)
$(BENCH_PROGRAMS): $(BUILD)/bench/%: $(BUILD)/tests/bench/%.o $(SUPPORT_OBJECTS) $(LIBRARY)
	@mkdir -p $(@D)
	$(Q)$(LINK) -o $@ $^ $(LIBS) $(CHECK_LIBS)

# Everything that is compiled; lint goes through all of it.
.PHONY: everything
everything: $(PROGRAM) $(BAKE) $(BAKE_RECIPES) $(UNIT_PROGRAMS) $(SUPPORT_PROGRAMS) $(BENCH_PROGRAMS)

# What every test finds in its environment.  The padding: glibc otherwise hands the
# top of the heap back and takes it again with each of 100,000 rows, which takes
# a minute on a virtual machine.
TEST_ENVIRONMENT = MALLOC_TOP_PAD_=4194304 LOGS='$(BUILD)/test-logs' JOBS='$(TEST_JOBS)' \
	STILLROOM='$(abspath $(PROGRAM))' BAKE='$(abspath $(BAKE))' BAKE_RECIPES='$(abspath $(BAKE_RECIPES))' \
	LINK_BAKE_RECIPES='$(BAKE_LINK) $(abspath $(BAKE_RECIPES_OBJECTS))' \
	OBJECTS_DIR='$(abspath $(BUILD)/src)' SUPPORT='$(abspath $(BUILD)/support)' SCHEMA='$(abspath schema)' REPO='$(CURDIR)' CC='$(CC)'
# ONLY=word runs the tests whose path holds that word.
only = $(if $(ONLY),$(foreach t,$(1),$(if $(findstring $(ONLY),$(t)),$(t))),$(1))

# Many seconds of computing each: every n-th failure, every row, every road, everything undone,
# a hundred thousand jars, chance, optima, a browser.
LONG_TESTS := $(BROWSER_TEST) $(filter %/test_failures %/test_kill9 %/test_random_pots %/test_random_days \
	%/test_every_row %/test_roads %/test_undo %/test_pot_undo %/test_tallies %/test_plans %/test_migrate \
	%/test_plan_day %/test_day_plan_exact %/test_day_plan_rules,$(UNIT_PROGRAMS))
# Of the scripts those that take longest stand first.
SHORT_TESTS := $(SHELL_TESTS) $(filter-out $(LONG_TESTS),$(UNIT_PROGRAMS))
ALL_TESTS := $(LONG_TESTS) $(SHORT_TESTS)
# ONLY finds the long ones, too, wherever it is asked.
SHORT = $(call only,$(if $(ONLY),$(ALL_TESTS),$(SHORT_TESTS)))
LONG = $(call only,$(LONG_TESTS))
programs_of = $(filter-out %.sh,$(1))

.PHONY: check check-run check-long check-long-run check-all-run
check: ## get what is missing, build, run the tests but the longest (ONLY=word: some of all)
	$(call deps_for,check)
	+@$(AGAIN) check-run

check-long: ## run the longest tests
	$(call deps_for,check)
	+@$(AGAIN) check-long-run

check-run: $(PROGRAM) $(BAKE) $(BAKE_RECIPES) $(call programs_of,$(SHORT)) $(SUPPORT_PROGRAMS)
	@$(TEST_ENVIRONMENT) sh tests/run.sh $(SHORT)

check-long-run: $(PROGRAM) $(BAKE) $(BAKE_RECIPES) $(call programs_of,$(LONG)) $(SUPPORT_PROGRAMS)
	@$(TEST_ENVIRONMENT) LOGS='$(BUILD)/test-logs-long' JOBS='$(JOBS)' sh tests/run.sh $(LONG)

check-all-run: $(PROGRAM) $(BAKE) $(BAKE_RECIPES) $(call only,$(UNIT_PROGRAMS)) $(SUPPORT_PROGRAMS)
	@$(TEST_ENVIRONMENT) sh tests/run.sh $(call only,$(ALL_TESTS))

.PHONY: sanitize
sanitize: ## the whole test run under address and undefined-behaviour sanitizers
	$(call deps_for,check)
	+@ASAN_OPTIONS=detect_stack_use_after_return=1:strict_string_checks=1 \
		UBSAN_OPTIONS=print_stacktrace=1 TEST_SECONDS=3600 CK_TIMEOUT_MULTIPLIER=60 \
		$(AGAIN) check-all-run BUILD='$(BUILD)/sanitize' HARDEN= HARDEN_LINK= \
		CFLAGS='-O1 -g -fno-omit-frame-pointer' \
		EXTRA_CFLAGS='-fsanitize=address,undefined -fno-sanitize-recover=all'

.PHONY: valgrind valgrind-run
valgrind: ## unit tests under valgrind
	$(call deps_for,check valgrind)
	+@$(AGAIN) valgrind-run BUILD='$(BUILD)/valgrind' HARDEN= HARDEN_LINK= CFLAGS='-O1 -g'

valgrind-run: $(call only,$(UNIT_PROGRAMS))
	@$(TEST_ENVIRONMENT) JOBS='$(JOBS)' TEST_SECONDS=3600 CK_FORK=no CK_TIMEOUT_MULTIPLIER=20 \
		WRAP='valgrind --quiet --error-exitcode=1 --leak-check=full --errors-for-leak-kinds=definite,indirect' \
		sh tests/run.sh $(call only,$(UNIT_PROGRAMS))

.PHONY: coverage coverage-run
coverage: ## the whole test run with line counts per source file
	$(call deps_for,check)
	@find '$(BUILD)/coverage' -name '*.gcda' -exec rm -f {} + 2>/dev/null || true
	+@$(AGAIN) coverage-run BUILD='$(BUILD)/coverage' HARDEN= HARDEN_LINK= CFLAGS='-O0 -g' \
		EXTRA_CFLAGS=--coverage

coverage-run: check-all-run
	@gcov -n $(OBJECTS:.o=.gcda) 2>/dev/null | awk -v q="'" ' \
		/^File / { split($$0, part, q); file = part[2] } \
		/^Lines executed:/ && file ~ /^src\/.*\.c$$/ { sub(/Lines executed:/, ""); \
			printf "  %-36s %s\n", file, $$0; file = "" }'

.PHONY: bench bench-run
bench: ## timings
	$(call deps_for,check)
	+@$(AGAIN) bench-run

bench-run: $(PROGRAM) $(BENCH_PROGRAMS)
	@for b in $(BENCH_PROGRAMS); do \
		echo "$${b##*/}:"; MALLOC_TOP_PAD_=4194304 STILLROOM='$(abspath $(PROGRAM))' SCHEMA='$(abspath schema)' "$$b" || exit 1; \
	done
	$(if $(BENCH_PROGRAMS),,@echo "no benchmark is written yet (tests/bench/bench_*.c)")

# --- lint ---------------------------------------------------------------------

.PHONY: lint lint-run lint-built lint-built-run lint-rules lint-format lint-headers lint-shell lint-pages lint-gcc lint-clang lint-tidy lint-cppcheck
lint: ## warnings as errors under gcc and clang, clang-tidy, cppcheck, shellcheck, mandoc, house rules
	$(call deps_for,check lint)
	+@$(AGAIN) lint-run
	@echo "lint: nothing found"

lint-run: lint-gcc lint-built-run
lint-built-run: lint-rules lint-format lint-headers lint-shell lint-pages lint-clang lint-tidy lint-cppcheck

# Behind a build of everything by gcc with the flags of lint-gcc: it is not compiled once more.
lint-built:
	+@$(AGAIN) lint-built-run
	@echo "lint: nothing found"

lint-rules:
	@sh tests/floors.sh

# As `make format` would lay them out, by Debian 12's clang-format and by 13's.
lint-format:
	@clang-format --dry-run -Werror $(C_FILES)

# Every header must stand alone.
lint-headers: $(EACH)
	@for h in $(HEADERS); do \
		printf '#include "%s"\nextern int alone;\n' "$${h#src/}" \
		| $(CC) $(ALL_CFLAGS) -Werror -Wno-unused -fsyntax-only -x c - || exit 1; done

lint-shell:
	@shellcheck $(filter-out .ci/debian,$(wildcard .ci/*)) $(wildcard tests/*.sh tests/*/*.sh tests/*/*/*.sh)

lint-pages:
	@! mandoc -T lint $(wildcard docs/man/*) 2>&1 | grep -v 'not found: Xr stillroom' # pages that are not installed here
	@desktop-file-validate docs/applications/stillroom.desktop

lint-gcc:
	+@$(MAKE) --no-print-directory everything BUILD='$(BUILD)/lint-gcc' CC=gcc TEST_O=-O1 EXTRA_CFLAGS=-Werror
# What clang warns of does not depend on how it optimizes; gcc's warnings do.
lint-clang:
	+@$(MAKE) --no-print-directory everything BUILD='$(BUILD)/lint-clang' CC=clang CFLAGS='-O0 -g' TEST_O=-O0 \
		EXTRA_CFLAGS=-Werror

# A stamp a file, so that a second lint only looks at what has changed.  Tests are not followed
# through every call: they are nearly half of the files, and what they call is looked at in src/.
TIDY_SHALLOW := -Xclang -analyzer-config -Xclang mode=shallow
TIDY_SOURCES = $(SOURCES) $(wildcard src/main.c src/bake/*.c) $(SUPPORT) $(UNIT_TESTS) \
	$(SUPPORT_PROGRAM_SOURCES) $(BENCH_SOURCES)
TIDY_STAMPS = $(TIDY_SOURCES:%.c=$(BUILD)/tidy/%.ok)
lint-tidy: $(TIDY_STAMPS)
$(BUILD)/tidy/%.ok: %.c .clang-tidy tests/.clang-tidy $(HEADERS) $(EACH) $(wildcard tests/*/*.h) | $(GENERATED)
	@mkdir -p $(@D)
	@echo "  tidy  $<"
	@clang-tidy --quiet $< -- $(filter-out -U% -D_FORTIFY_SOURCE=2,$(TEST_CFLAGS)) \
		$(if $(filter tests/%,$<),$(TIDY_SHALLOW)) >$@.log 2>&1 \
		|| { cat $@.log; exit 1; }
	@touch $@

# zerodivcond: guesses at a divisor from a loop's condition; clang-tidy follows the real paths.
# In the tests it does not know what Check's macros do: a file closed within one is not used
# after it, one found to be NULL not at all.
lint-cppcheck: $(EACH)
	@cppcheck --quiet --error-exitcode=1 --std=c11 --language=c --inline-suppr \
		--enable=warning,performance,portability --suppress=missingIncludeSystem \
		--suppress=zerodivcond --suppress=normalCheckLevelMaxBranches \
		--suppress='deallocuse:tests/*' --suppress='nullPointerOutOfResources:tests/*' \
		--suppress='nullPointerOutOfMemory:tests/*' -j $(JOBS) $(INCLUDES) -Itests -DSQLITE_ENABLE_SESSION -DSTILLROOM_VERSION='"$(VERSION)"' src tests

C_FILES = $(wildcard src/*.c src/*/*.c src/*/*.h src/*/*/*.c src/*/*/*.h tests/*/*.c tests/*/*.h tests/*/*/*.c)
.PHONY: format
format: ## lay out the C sources anew (.clang-format)
	$(call deps_for,format)
	@clang-format -i $(C_FILES)

# --- use ----------------------------------------------------------------------

DEMO := $(BUILD)/demo.db

.PHONY: demo
demo: ## get what is missing, build, open the board of an invented kitchen
	$(call deps_for,build)
	+@$(AGAIN) all
	@test -f '$(DEMO)' || '$(PROGRAM)' setup demo/quince-hollow-day.kitchen -f '$(DEMO)'
	@'$(PROGRAM)' -f '$(DEMO)'

.PHONY: deps
deps: ## find what the build and the tests need, install what is missing
	@sh .ci/deps build check

# As they stand here, so that what links to another finds it there.
DOCS = README.md DEVELOPERS.md LICENSE $(wildcard docs/*.md docs/*.json docs/*/*.md docs/*/*.svg demo/*.kitchen)
BINDIR = $(DESTDIR)$(PREFIX)/bin
DOCDIR = $(DESTDIR)$(PREFIX)/share/doc/stillroom
DOC_FOLDERS = $(sort $(filter-out ./,$(dir $(DOCS))))
BASHDIR ?= $(PREFIX)/share/bash-completion/completions
ZSHDIR ?= $(PREFIX)/share/zsh/site-functions
FISHDIR ?= $(PREFIX)/share/fish/vendor_completions.d
# A file of docs/ and where it goes.
SHARED = $(foreach page,$(MANUAL),$(page):$(MANDIR)/man$(subst .,,$(suffix $(page)))/$(notdir $(page))) \
	completion/stillroom.bash:$(BASHDIR)/stillroom completion/stillroom.zsh:$(ZSHDIR)/_stillroom \
	completion/stillroom.fish:$(FISHDIR)/stillroom.fish \
	applications/stillroom.desktop:$(PREFIX)/share/applications/stillroom.desktop

.PHONY: install uninstall
install: $(PROGRAM) ## copy the program, its manual and documents under DESTDIR and PREFIX
	$(INSTALL) -d '$(BINDIR)' '$(DOCDIR)' $(foreach d,$(DOC_FOLDERS),'$(DOCDIR)/$(d)')
	$(INSTALL) -m 755 '$(PROGRAM)' '$(BINDIR)/stillroom'
	for d in $(DOCS); do $(INSTALL) -m 644 "$$d" '$(DOCDIR)'/"$$d" || exit 1; done
	for s in $(SHARED); do to='$(DESTDIR)'"$${s#*:}"; \
		$(INSTALL) -d "$${to%/*}" && $(INSTALL) -m 644 "docs/$${s%%:*}" "$$to" || exit 1; done

uninstall: ## take out what install put there; logs are left alone
	rm -f '$(BINDIR)/stillroom' $(foreach d,$(DOCS),'$(DOCDIR)/$(d)')
	for s in $(SHARED); do rm -f '$(DESTDIR)'"$${s#*:}"; done
	-rmdir $(foreach d,$(DOC_FOLDERS),'$(DOCDIR)/$(d)') 2>/dev/null
	-rmdir '$(DOCDIR)/docs' '$(DOCDIR)' 2>/dev/null

.PHONY: clean
clean: ## remove the build folder, the demo's log with it
	rm -rf '$(BUILD)'

.PHONY: help
help: ## this list
	@sed -n 's/^\([a-z-]*\):.*## /\1|/p' Makefile | awk -F'|' '{ printf "  make %-10s %s\n", $$1, $$2 }'
	@echo '  Behind a verb: DEPS=no       nothing is looked for, nothing installed, no network (packagers)'
	@echo '                 V=1           show the commands;  BUILD=folder  build there'
	@echo '                 CC CPPFLAGS CFLAGS LDFLAGS     the compiler and its flags'
	@echo '                 HOSTCC HOSTCFLAGS              the same for programs that run at the build'
	@echo '                 PREFIX DESTDIR MANDIR INSTALL  where and with what install puts it'

.SECONDARY:
.DELETE_ON_ERROR:

-include $(wildcard $(BAKE_OBJECTS)/*/*.d $(BAKE_OBJECTS)/src/*/*.d $(BAKE_OBJECTS)/src/*/*/*.d)
-include $(OBJECTS:.o=.d) $(GENERATED_OBJECTS:.o=.d) $(BUILD)/src/main.d $(SUPPORT_OBJECTS:.o=.d) \
	$(TEST_OBJECTS:.o=.d)
