/*
 * json.h - JSON (RFC 8259) written straight to a stream, without memory of its
 * own.  What is written is always one whole, valid document, whatever bytes the
 * strings hold.
 *
 *   struct json json = json_begin(stdout);
 *   json_open_document(&json, JSON_LINES);
 *   json_text(&json, "food", "peaches");
 *   json_close(&json);
 *
 * Inside an object every value has a key; inside an array, and for the document
 * itself, the key is NULL.  Keys are plain constants of the program.
 * Write errors stay in ferror(out) for whoever owns the stream.
 */
#ifndef STILLROOM_REPORT_OUT_JSON_H
#define STILLROOM_REPORT_OUT_JSON_H

#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>

#define JSON_DEPTH_MAX 8 /* asserted; our documents are three deep */

enum json_layout {
	JSON_FLAT,  /* all on one line */
	JSON_LINES, /* each member on a line of its own: one load a line for grep */
};

/* How closely things are known. */
enum json_unit {
	JSON_METERS,         /* of elevation, to 0.1: it is found to a foot */
	JSON_KILOPASCALS,    /* to 0.01: a barometer's 0.1 hPa */
	JSON_DEGREES,        /* of either scale, to 0.1, as a kitchen thermometer shows them */
	JSON_INCHES,         /* of headspace, to 0.001: eighths of an inch are exact */
	JSON_POUNDS,         /* of fruit for a quart, to 0.01 */
	JSON_GRAMS,          /* to 0.1, as a small scale shows them */
	JSON_MILLILITERS,    /* to 0.1 */
	JSON_KILOGRAMS,      /* of fruit, to 0.01 */
	JSON_LITERS,         /* of juice, to 0.01 */
	JSON_LITERS_FROM_KG, /* of juice from a kilogram of fruit, to 0.001 */
	JSON_MINUTES,        /* a mean of whole ones, to 0.1 */
	JSON_SHARE,          /* of one, to 0.001 */
	JSON_UNIT_COUNT
};

struct json {
	FILE *out;
	int depth;
	struct {
		enum json_layout layout;
		bool array;
		bool begun; /* has a member already */
	} at[JSON_DEPTH_MAX];
};

struct json json_begin(FILE *out);

/* Of all our documents but the export, which has its own.  It goes up when a key goes, or means
 * something else; new keys may come at any time. */
#define JSON_VERSION 1
/* The outermost object; its first key is the version. */
void json_open_document(struct json *json, enum json_layout layout);
void json_open_object(struct json *json, const char *key, enum json_layout layout);
void json_open_array(struct json *json, const char *key, enum json_layout layout);
void json_close(struct json *json); /* a line end after the outermost */

/* A string: quotes, backslashes and control characters (C1 and DEL too) are
 * escaped, bytes that are not UTF-8 become U+FFFD.  NULL writes null. */
void json_text(struct json *json, const char *key, const char *text);
void json_whole(struct json *json, const char *key, int64_t value);
/* A measure, with the digits it has earned and no needless zeros; null for what JSON cannot write
 * (not a number, infinite) and for what no kitchen has (10^12 and more). */
void json_measure(struct json *json, const char *key, double value, enum json_unit unit);
/* A whole number of 10^-scale (0 to 9): exact, without needless digits. */
void json_decimal(struct json *json, const char *key, int64_t value, int scale);
#define DECIMAL_BYTES 32
void decimal_words(int64_t value, int scale, char *buffer, size_t size);
void json_bool(struct json *json, const char *key, bool value);
void json_null(struct json *json, const char *key);

/* An instant, "2026-09-14T12:05:33.412Z"; null for 0, the "never" of the log. */
void json_instant(struct json *json, const char *key, int64_t wall_ms);

#endif
