# stillroom - build, test and install. `make help` lists the verbs.
# Works from a clean checkout; everything made goes to $(BUILD).

BUILD ?= build
PREFIX ?= /usr/local
DESTDIR ?=
CC ?= cc
HOSTCC ?= $(CC)
PKG_CONFIG ?= pkg-config
VERSION := 0.1.0

WARN := -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Wundef -Wformat=2 -Wstrict-prototypes \
	-Wmissing-prototypes -Wwrite-strings -Wpointer-arith -Wcast-qual -Wvla
CFLAGS ?= -O2 -g
STD := -std=c17 -D_XOPEN_SOURCE=700 -D_DEFAULT_SOURCE
# Only the log uses the session extension; these macros open its declarations.
SESSION := -DSQLITE_ENABLE_SESSION -DSQLITE_ENABLE_PREUPDATE_HOOK
INCLUDES := -Isrc -I$(BUILD)/generated
LIB_CFLAGS = $(shell $(PKG_CONFIG) --cflags ncursesw sqlite3)
LIBS = $(shell $(PKG_CONFIG) --libs ncursesw sqlite3) -lm
CHECK_LIBS = $(shell $(PKG_CONFIG) --libs check)
ALL_CFLAGS = $(STD) $(WARN) $(CFLAGS) $(INCLUDES) $(SESSION) $(LIB_CFLAGS) \
	-DSTILLROOM_VERSION='"$(VERSION)"' $(EXTRA_CFLAGS)

FLOORS := engine log kitchen report screen
SOURCES := $(sort $(foreach f,$(FLOORS),$(wildcard src/$(f)/*.c)))
OBJECTS := $(SOURCES:%.c=$(BUILD)/%.o)
GENERATED := $(addprefix $(BUILD)/generated/,process_table.c jar_table.c product_table.c migrations.c)
GENERATED_OBJECTS := $(GENERATED:%.c=%.o)
LIBRARY := $(BUILD)/libstillroom.a
PROGRAM := $(BUILD)/stillroom
BAKE := $(BUILD)/bake

UNIT_TESTS := $(sort $(foreach f,$(FLOORS),$(wildcard tests/$(f)/test_*.c)))
UNIT_PROGRAMS := $(UNIT_TESTS:tests/%.c=$(BUILD)/tests/%)
SUPPORT := $(sort $(wildcard tests/support/*.c))
SUPPORT_OBJECTS := $(SUPPORT:%.c=$(BUILD)/%.o)

.PHONY: all
all: $(PROGRAM)

$(PROGRAM): $(BUILD)/src/main.o $(LIBRARY)
	@echo "  link  $@"
	@$(CC) $(CFLAGS) $(EXTRA_CFLAGS) $(LDFLAGS) -o $@ $^ $(LIBS)

$(LIBRARY): $(OBJECTS) $(GENERATED_OBJECTS)
	@rm -f $@
	@$(AR) rcs $@ $^

$(BUILD)/%.o: %.c
	@mkdir -p $(@D)
	@echo "  cc    $<"
	@$(CC) $(ALL_CFLAGS) -MMD -MP -c -o $@ $<

$(BUILD)/generated/%.o: $(BUILD)/generated/%.c
	@$(CC) $(ALL_CFLAGS) -MMD -MP -c -o $@ $<

# Tables and migrations are baked into the program from schema/.
$(BAKE): src/bake/bake.c
	@mkdir -p $(@D)
	@$(HOSTCC) $(STD) $(WARN) -O1 -g -o $@ $<

$(BUILD)/generated/process_table.c: $(BAKE) $(wildcard schema/process_*.csv) schema/jar.csv
	@mkdir -p $(@D)
	@$(BAKE) process schema/jar.csv $(sort $(wildcard schema/process_*.csv)) >$@.new && mv $@.new $@
$(BUILD)/generated/jar_table.c: $(BAKE) schema/jar.csv
	@mkdir -p $(@D)
	@$(BAKE) jar schema/jar.csv >$@.new && mv $@.new $@
$(BUILD)/generated/product_table.c: $(BAKE) schema/product.csv
	@mkdir -p $(@D)
	@$(BAKE) product schema/product.csv >$@.new && mv $@.new $@
$(BUILD)/generated/migrations.c: $(BAKE) $(wildcard schema/migration/*.sql)
	@mkdir -p $(@D)
	@$(BAKE) migration $(sort $(wildcard schema/migration/*.sql)) >$@.new && mv $@.new $@

$(BUILD)/tests/%: tests/%.c $(SUPPORT_OBJECTS) $(LIBRARY)
	@mkdir -p $(@D)
	@echo "  test  $<"
	@$(CC) $(ALL_CFLAGS) -Itests -MMD -MP -o $@ $< $(SUPPORT_OBJECTS) $(LIBRARY) $(LDFLAGS) $(LIBS) $(CHECK_LIBS)
$(BUILD)/tests/support/%.o: tests/support/%.c
	@mkdir -p $(@D)
	@$(CC) $(ALL_CFLAGS) -Itests -MMD -MP -c -o $@ $<

-include $(OBJECTS:.o=.d) $(BUILD)/src/main.d $(UNIT_PROGRAMS:=.d) $(SUPPORT_OBJECTS:.o=.d)
