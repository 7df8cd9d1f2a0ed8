/*
 * statements.h - every prepared statement of the log by name.
 *
 * Prepared once when the log is opened, run and reset by src/log/query.c, values
 * bound and never pasted. Parameters are numbered in the order in which the
 * callers bind them; *_INSERT and *_UPDATE of one table take the same ones, the
 * id last.
 */
#ifndef STILLROOM_LOG_STATEMENTS_H
#define STILLROOM_LOG_STATEMENTS_H

enum statement {
	BEGIN_ACT,
	COMMIT_ACT,
	ROLLBACK_ACT,
	DATA_VERSION,

	ENTRY_INSERT,
	ENTRY_CHANGES,
	ENTRY_TIP,
	ENTRY_NEWEST,
	ENTRIES_OF_LOAD,
	STANDING_OF_LOAD,
	STANDING_OF_STATION,
	STANDING_OF_HOUSE,
	UNDONE_OF_LOAD,
	UNDONE_OF_STATION,
	UNDONE_OF_HOUSE,

	HOUSE_GET,
	HOUSE_UPDATE,

	STATION_LIST,
	STATION_GET,
	STATION_FRESH_ID,
	STATION_INSERT,
	STATION_UPDATE,
	CAPACITY_LIST,
	CAPACITY_CLEAR,
	CAPACITY_INSERT,

	LID_BOX_LIST,
	LID_BOX_GET,
	LID_BOX_INSERT,
	LID_BOX_UPDATE,

	LOT_GET,
	LOT_CODES,
	LOT_INSERT,
	LOT_UPDATE,

	LOAD_GET,
	LOAD_OPEN,
	LOAD_BETWEEN,
	LOAD_FRESH_ID,
	LOAD_INSERT,
	LOAD_UPDATE,

	PHASE_LIST,
	PHASE_OPEN,
	PHASE_FRESH_ID,
	PHASE_INSERT,
	PHASE_UPDATE,

	JAR_LIST,
	JAR_GET,
	JAR_FATES,
	JAR_MADE,
	JAR_INSERT,
	JAR_UPDATE,

	STATEMENT_COUNT
};

extern const char *const statement_text[STATEMENT_COUNT];

#endif
