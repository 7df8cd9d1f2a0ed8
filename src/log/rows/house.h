/*
 * house.h - rows of the house: its stations, the rules it turned off, how its lids did.
 */
#ifndef STILLROOM_LOG_ROWS_HOUSE_H
#define STILLROOM_LOG_ROWS_HOUSE_H

#include <stdbool.h>
#include <stdint.h>

#include "engine/gate/gate.h"
#include "engine/physics/elevation.h"
#include "engine/process/process.h"
#include "engine/recipe/scaling.h"
#include "log/rows/common.h"

#define STORAGE_NOT_READ INT64_MIN
struct log_house {
	char name[NAME_MAX_BYTES];
	struct elevation elevation;
	char elevation_by[NAME_MAX_BYTES];
	int64_t elevation_set_wall_ms; /* 0: never */
	int measured_boil_mc;          /* 0: not measured */
	int barometer_pa;              /* 0: none */
	bool invented;
	int practice_speed; /* 0: a real log */
	int64_t practice_wall_ms;
	int64_t practice_real_wall_ms;
	enum unit_system units;
	int run_minutes;         /* a juicer run in this house; 0: not set */
	int first_juice_minutes; /* hint that the first juice can be drawn; 0: no hint */
	int water_minutes;       /* between water checks of juicers that say none of their own; 0: not set */
	int jar_wait_minutes;    /* filled jars may wait this long for a canner: house setting */
	int stand_minutes;       /* longest that filled jars or a finished pot may stand; 0: as STANDING_MAX_MS */
	int64_t storage_mc;      /* where jars are kept, thousandths of a degree Celsius */
	int64_t storage_wall_ms; /* when that was read; 0: never */
};

/* The canners, stored under the names of their methods (kitchen/board/phases.h has which is which, and their words),
 * and the others. */
/* clang-format off */
#define EACH_CANNER(OF) /* OF(TAG, word in the log and of a kitchen file, words on the screen) */ \
	OF(BOILING_WATER, boiling_water, NULL) \
	OF(STEAM, steam, NULL) \
	OF(DIAL_GAUGE, dial_gauge, NULL) \
	OF(WEIGHTED_GAUGE, weighted_gauge, NULL)
#define EACH_OTHER_STATION(OF) \
	OF(JUICER, juicer, "steam juicer") \
	OF(POT, pot, "pot") \
	OF(DRYER, dryer, "dryer")
#define EACH_STATION(OF) EACH_CANNER(OF) EACH_OTHER_STATION(OF)
#define ANY_STATION "canner, juicer, pot or dryer"
/* clang-format on */
#define STATION_TAG(TAG, stored, words) STATION_##TAG,
enum station_kind { EACH_STATION(STATION_TAG) STATION_KIND_COUNT };

struct log_station {
	int64_t id; /* 0 when putting a new row */
	int digit;
	enum station_kind kind;
	char name[NAME_MAX_BYTES];
	int64_t gauge_checked_wall_ms; /* 0: never */
	bool retired;
	int capacity[JAR_SIZES_MAX]; /* canners, by jar size index; 0: not stated */
	int64_t volume_ul;           /* pots, to the brim; 0: not stated */
	char who[NAME_MAX_BYTES];    /* initials of who has it; "" nobody */
	bool own_heat;               /* has its own heat; else a shared burner of the house */
	enum canner_wall wall;       /* pressure canners: how one sees that the pressure is gone */
	int watts;                   /* canners: heat into the water; 0: not stated */
	int trays;                   /* dryers; 0: not stated */
	int tray_wide_thou;          /* of one tray, thousandths of an inch; 0: not stated */
	int tray_deep_thou;
	int water_minutes; /* juicers: between water checks; 0: as the house */
};

/* Lids looked at, and those that had not sealed, in one season: kept by the log,
 * so that nobody counts jars again. */
enum tally_about { TALLY_HOUSE, TALLY_LID_BOX, TALLY_CANNER, TALLY_PERSON, TALLY_ABOUT_COUNT };

struct log_tally {
	enum tally_about about;
	char which[NAME_MAX_BYTES]; /* id of the lid box or station, or initials; "" the house */
	int64_t looked;
	int64_t failed; /* unsealed or doubtful */
};

/* A rule of the warnings that this house does not want to see. */
struct log_rule_off {
	char rule[WORD_MAX_BYTES * 2];
	int64_t since_wall_ms;
};

#endif
