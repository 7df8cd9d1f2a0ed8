/*
 * road_kit.h - the roads on which a jar comes into a load, walked with one thing that is
 * missing.
 *
 * A walk begins in a new Quince Hollow with pots and a store (pot_kit.h), packs three
 * pints of the lack's food on its road, takes them through the canner to the shelf, and
 * leaves out, or does, what the lack says at its place.  It ends on the shelf, at the
 * seal check of jars that nobody may eat, or where it is refused.
 */
#ifndef STILLROOM_TESTS_ROAD_KIT_H
#define STILLROOM_TESTS_ROAD_KIT_H

#include "engine/gate/gate.h"
#include "log/rows/canner.h"
#include "support/pot_kit.h"

enum road {
	BY_HAND,  /* packed by hand */
	FROM_POT, /* filled from a pot, waiting, loaded */
	AGAIN,    /* processed again */
	EXPORTED, /* this program's own export, come into another kitchen */
	NOTEBOOK,
	REDONE, /* what made the lack is undone and done again */
	ROAD_COUNT
};

enum canned { TOMATOES, PICKLES, BEANS, PUREE };
enum acidity rk_acidity(enum canned canned);

/* Which act makes a lack. */
enum made {
	BY_LOAD,
	BY_BATCH,
	BY_FILL,
	IN_CANNER, /* lack.act at the beginning of lack.at */
	ON_SHELF   /* lack.act */
};

struct walk;
struct lack_row {
	const char *name;
	enum canned canned;
	enum road first; /* by which the jars come that are processed again, exported, redone */
	enum made made;
	enum phase_name at;
	bool (*act)(struct walk *walk); /* false: refused */
	const char *line;               /* of a notebook, behind its size */
	const char *asks;               /* the stop that wants a reason first; it is given one */
	bool acid_given;                /* `acid` is said instead of what serves */
	enum acid acid;
	int vinegar;           /* percent in tenths; 0: not said */
	int multiple;          /* batches in the pot; 0: one */
	int stands;            /* minutes, filled or in the canner */
	int heats;             /* minutes, on its way to the hold in one phase */
	int pot_stands;        /* minutes */
	int canner;            /* another one */
	const char *pack;      /* another one */
	const char *known;     /* what is in the house's recipe; NULL: nobody picked it */
	const char *elevation; /* of the kitchen, when it is not 4,650 ft */
	const char *lost;      /* of the export */
	bool held_short;       /* in the export */
};

struct walk {
	const struct lack_row *lack;
	enum road road;
	struct kitchen_kit *kit; /* the jars are in its log */
	int64_t batch_id;        /* 0: of no pot */
	int64_t load_id;
	bool refused; /* for the fault of the kit */
	char *before; /* rows, while an act is to be undone and done again */
	bool redone;  /* it was */
};

/* A walk with its lack and road set, from its beginning. */
void rk_walk(struct walk *walk);
void rk_end(struct walk *walk); /* its logs are closed and taken away */

/* For acts of lacks: round the one act that makes it, with what that act is about.
 * On the road REDONE it is undone then, and every row must be as before it, what was said
 * of the process too; and done again, as after it. */
void rk_act_begins(struct walk *walk, enum made made);
void rk_act_ends(struct walk *walk, struct log_subject about);
struct log_subject rk_batch(const struct walk *walk);
bool rk_go_on(struct walk *walk, bool done); /* not done: refused; `done` again */

/* What the log says of a jar; of no jar, of its load. */
struct log_judgement rk_said(const struct walk *walk, const struct log_jar *jar);
/* One jar of the load's lot is used. */
bool rk_take_one(const struct walk *walk);

#endif
