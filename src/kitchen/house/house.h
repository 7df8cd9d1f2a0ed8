/*
 * house.h - the house and its stations as settings, and the kitchen file.
 *
 * Each act returns true when the log holds it durably, or false with a fault and
 * nothing changed (kitchen/board/board.h).
 */
#ifndef STILLROOM_KITCHEN_HOUSE_HOUSE_H
#define STILLROOM_KITCHEN_HOUSE_HOUSE_H

#include <stdio.h>

#include "kitchen/board/board.h"

#define STATION_WATTS_MIN 100 /* heat of a canner as stated: what is typed outside is a slip */
#define STATION_WATTS_MAX 20000
#define STATION_WATER_MAX 600 /* minutes between looks at the water of a juicer */
/* What they are for, and where one finds them: no text that is published has a figure (common practice, no source). */
#define WATER_HELP \
	"So that its pan never boils dry: half as long as a full pan lasts. See its manual; else boil a full pan and " \
	"see how fast it sinks."
bool kitchen_set_name(struct kitchen *kitchen, const char *name, struct fault *fault);
/* `words` as elevation_read takes them; refused while a load is in a canner. */
bool kitchen_set_elevation(struct kitchen *kitchen, const char *words, struct fault *fault);
/* How high a kitchen is where a thermometer in boiling water reads so, "206F" or "97C" (elevation_of_boil);
 * the second sets it, and the boiling point with it, as kitchen_set_elevation does. */
bool kitchen_boiled_elevation(const char *words, struct elevation *out, struct fault *fault);
bool kitchen_set_elevation_boiled(struct kitchen *kitchen, const char *words, struct fault *fault);
/* As kitchen_set_elevation, when the one set before was wrong, not when the kitchen
 * moved: what was made at it is looked up again, and a load that would have needed
 * more is not valid.  One that is in its hold or before it gets what is asked: more
 * minutes, or more pressure and the full time again (rule process-raised); what an earlier slip added
 * goes again, never below what it was begun with or the row of the right elevation.  An undo of
 * any of these does the same.  `loads`: how many are not valid.  The other function only counts them. */
bool kitchen_elevation_was_wrong(struct kitchen *kitchen, const char *words, int *loads, struct fault *fault);
bool kitchen_elevation_touches(struct kitchen *kitchen, const char *words, int *loads, struct fault *fault);
/* The computer's clock is before the log's last entry, and somebody looked: it is right,
 * those entries were written by a wrong one.  Ends the stop "clock-behind". */
bool kitchen_clock_is_right(struct kitchen *kitchen, struct fault *fault);
/* A thermometer where the jars are kept, "64F" or "18C"; "" forgets it. */
bool kitchen_set_storage(struct kitchen *kitchen, const char *words, struct fault *fault);
/* Thermometer in boiling water here, "203.1F" or "95.1C"; "" forgets it. */
bool kitchen_set_measured_boil(struct kitchen *kitchen, const char *words, struct fault *fault);
bool kitchen_set_barometer(struct kitchen *kitchen, const char *words, struct fault *fault);
bool kitchen_set_invented(struct kitchen *kitchen, bool invented, struct fault *fault);
bool kitchen_set_practice(struct kitchen *kitchen, int speed, struct fault *fault);
bool kitchen_set_units(struct kitchen *kitchen, enum unit_system units, struct fault *fault);
/* Minutes: a juicer run, first juice, between water checks (each 0: not set), from when
 * on jars that wait are warned of (at most STANDING_ASK_MS), and the longest that they
 * or a finished pot may stand (0: the limits of engine/gate/gate.h, which a house only
 * shortens).  The program has no figure of its own for a juicer: without one a run has
 * no end and no hint, and without a water interval none is started. */
bool kitchen_set_minutes(struct kitchen *kitchen, int run, int first_juice, int water, int jar_wait, int stand,
                         struct fault *fault);
/* Initials of who has the station now; recorded with each act there. */
bool kitchen_set_station_who(struct kitchen *kitchen, int64_t station_id, const char *initials, struct fault *fault);
/* "14 x 14 in", "35 x 35 cm": the size of a tray of a dryer; without a unit inches. */
bool kitchen_read_tray(const char *words, struct log_station *station, struct fault *fault);
/* The same in the units of the house, to be read again; "": not stated. */
void kitchen_tray_words(const struct log_station *station, enum unit_system units, char *buffer, size_t size);
/* Two stations in use are never told apart by the same name: FAULT_REFUSED, with one that is free ("Canner 2").
 * `id`: whose name it is to be; 0: a new one's. */
bool kitchen_station_name_free(const struct kitchen *kitchen, int64_t id, const char *name, struct fault *fault);
/* id 0 adds; digit and name must be free. A station with work in it cannot change its kind or retire. */
bool kitchen_put_station(struct kitchen *kitchen, struct log_station *station, struct fault *fault);
bool kitchen_put_lid_box(struct kitchen *kitchen, struct log_lid_box *box, struct fault *fault);

/* --- rules --- */

/* Turn a caution or a note off in this house, or take it up again.  A stop cannot
 * be: FAULT_REFUSED. */
bool kitchen_rule_off(struct kitchen *kitchen, const char *rule_id, bool off, struct fault *fault);

/* --- the kitchen file --- */

/* Read a kitchen file (form: setup.c; example: demo/quince-hollow.kitchen) into a
 * log nothing has been written in.  One act a line; the fault names
 * `path:line: why`, and the lines before it stand: throw the new log away. */
bool kitchen_setup(struct kitchen *kitchen, const char *path, struct fault *fault);
/* One line of a kitchen file as an act; public for the tests, which set kitchens up by it.  `id` > 0 changes that canner or lid box instead
 * of adding one. */
bool kitchen_setup_line(struct kitchen *kitchen, const char *line, int64_t id, struct fault *fault);
/* The way back: the kitchen as it is now, in lines that make the same of a new log, in the order
 * of the table that both go by.  What was made is none of it, nor what no line says: jars, journal,
 * initials at stations.  FAULT_IO, FAULT_MEMORY;
 * FAULT_REFUSED: a recipe is too long for a line. */
bool kitchen_setup_print(const struct kitchen *kitchen, FILE *out, struct fault *fault);

#endif
