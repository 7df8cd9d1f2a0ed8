/*
 * boil_report.c - what water does here: pressure, boiling point, jelly stage.
 */
#include <math.h>

#include "engine/physics/boiling.h"
#include "engine/physics/reading.h"
#include "kitchen/board/board.h"
#include "report/cli/command.h"
#include "report/out/answer.h"
#include "report/out/json.h"

struct basis {
	const char *name;
	const char *words;
};

static const struct basis bases[] = {
	[BOIL_FROM_ELEVATION] = { "elevation", "from the elevation, in standard air" },
	[BOIL_FROM_BAROMETER] = { "barometer", "from the barometer" },
	[BOIL_MEASURED] = { "measured", "as measured" },
};

static bool read_words(const struct arguments *arguments, struct elevation *elevation, double *barometer_kpa,
                       double *measured_c, struct fault *fault)
{
	const char *barometer = arguments->value[OPTION_BAROMETER];
	const char *measured = arguments->value[OPTION_MEASURED];

	*barometer_kpa = (double)NAN;
	*measured_c = (double)NAN;
	if (!elevation_read(arguments->value[OPTION_ELEVATION], elevation, fault))
		return false;
	if (barometer != NULL && !reading_pressure(barometer, barometer_kpa))
		return fault_set(fault, FAULT_MISUSE,
		                 "\"%s\" is not a station pressure: write \"85.4 kPa\" or \"854 hPa\", "
		                 "not reduced to sea level",
		                 barometer);
	if (measured != NULL && !reading_temperature(measured, measured_c))
		return fault_set(fault, FAULT_MISUSE, "\"%s\" is not a temperature: write 203.1F or 95.1C", measured);
	return true;
}

static void put_json(FILE *out, const struct boil *boil)
{
	struct json json = json_begin(out);

	json_open_document(&json, JSON_LINES);
	json_measure(&json, "elevation_m", boil->elevation_m, JSON_METERS);
	json_measure(&json, "pressure_kpa", boil->pressure_kpa, JSON_KILOPASCALS);
	json_measure(&json, "boiling_point_c", boil->boiling_point_c, JSON_DEGREES);
	json_measure(&json, "boiling_point_f", boil->boiling_point_f, JSON_DEGREES);
	json_measure(&json, "jelly_stage_f", boil->jelly_stage_f, JSON_DEGREES);
	json_text(&json, "basis", bases[boil->basis].name);
	json_close(&json);
}

static void put_text(FILE *out, const struct elevation *elevation, const struct boil *boil)
{
	char height[64];

	elevation_words(elevation, height, sizeof(height));
	(void)fprintf(out, "elevation     %s\n", height);
	(void)fprintf(out, "air pressure  %.1f kPa\n", boil->pressure_kpa);
	(void)fprintf(out, "water boils   %.1f F (%.1f C), %s\n", boil->boiling_point_f, boil->boiling_point_c,
	              bases[boil->basis].words);
	(void)fprintf(out, "jelly stage   %.1f F, 8 F above boiling water\n", boil->jelly_stage_f);
}

/* From --measured, else --barometer, else --elevation. */
static bool report_boil(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct elevation elevation;
	struct boil boil;
	double barometer_kpa;
	double measured_c;

	(void)day;
	if (!read_words(arguments, &elevation, &barometer_kpa, &measured_c, fault) ||
	    !boil_here(&elevation, barometer_kpa, measured_c, &boil, fault))
		return false;
	if (to->json)
		put_json(to->out, &boil);
	else
		put_text(to->out, &elevation, &boil);
	return true;
}

static const struct command listed[] = {
	{
	    .word = "boil",
	    .help = "air pressure, boiling point and jelly stage of a place",
	    .more = "A measured boiling point outranks a barometer; a barometer outranks the elevation.\n",
	    .takes = TAKES(ELEVATION) | TAKES(BAROMETER) | TAKES(MEASURED) | TAKES(JSON),
	    .log = COMMAND_NO_LOG,
	    .run = report_boil,
	},
};

const struct commands boil_commands = COMMANDS(listed);
