/*
 * pack.h - the packs of the process tables: how the food goes into its jars, and how the jars are made ready.
 * schema/pack.csv.
 */
#ifndef STILLROOM_ENGINE_PROCESS_PACK_H
#define STILLROOM_ENGINE_PROCESS_PACK_H

#include <stdbool.h>
#include <stddef.h>

enum packed { PACKED_HOT, PACKED_RAW, PACKED_COUNT };
enum jars_ready {
	JARS_EITHER,           /* its rows ask of no jar that it was boiled first */
	JARS_BOILED_FIRST,     /* they suppose it: the process alone is under 10 minutes */
	JARS_NOT_BOILED_FIRST, /* the longer process that makes up for it */
	JARS_READY_COUNT
};

struct pack {
	const char *name;  /* "hot_sterile_jar" */
	const char *words; /* "hot pack, jars boiled first" */
	enum packed packed;
	enum jars_ready jars;
};

extern const struct pack pack_rows[];
extern const size_t pack_row_count;
#define PACKS_MAX 16
#define PACK_NAME_BYTES 24

const char *packed_name(enum packed packed);
const char *jars_ready_name(enum jars_ready jars);

/* By name or words; NULL: there is none. */
const struct pack *pack_named(const char *words);
const char *pack_words(const char *pack); /* "?": no such pack */
bool pack_is_raw(const char *pack);
bool pack_has_jars(const char *pack, enum jars_ready jars);

#endif
