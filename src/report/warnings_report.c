/*
 * warnings_report.c - what is not as it should be, worst first.
 */
#include "kitchen/warnings.h"
#include "report/json.h"
#include "report/plain.h"
#include "report/report.h"

/* Name of the station a warning is about; NULL: about no one station. */
static const char *station_name(const struct board *board, int64_t station_id)
{
	for (size_t i = 0; i < board->stations + board->racked; i++)
		if (station_id != 0 && board->strips[i].station.id == station_id)
			return board->strips[i].station.name;
	return NULL;
}

static void put_json(FILE *out, const struct board *board, const struct moment *now,
                     const struct warning *warnings, size_t count)
{
	struct json json = json_begin(out);

	json_open_object(&json, NULL, JSON_LINES);
	json_instant(&json, "now", now->wall_ms);
	json_whole(&json, "practice_speed", board->house.practice_speed);
	json_bool(&json, "invented", board->house.invented);
	json_open_array(&json, "warnings", JSON_LINES);
	for (size_t i = 0; i < count; i++) {
		json_open_object(&json, NULL, JSON_FLAT);
		json_text(&json, "id", warnings[i].id);
		json_text(&json, "severity", severity_name(warnings[i].severity));
		json_text(&json, "station", station_name(board, warnings[i].station_id));
		if (warnings[i].load_id != 0)
			json_whole(&json, "load", warnings[i].load_id);
		else
			json_null(&json, "load");
		json_text(&json, "sentence", warnings[i].sentence);
		json_text(&json, "source", warnings[i].source);
		json_close(&json);
	}
	json_close(&json);
	json_close(&json);
}

static void put_text(FILE *out, const struct warning *warnings, size_t count)
{
	if (count == 0)
		(void)fputs("There are no warnings.\n", out);
	for (size_t i = 0; i < count; i++) {
		(void)fprintf(out, "%-8s ", severity_name(warnings[i].severity));
		plain_put(out, warnings[i].sentence);
		(void)fputc('\n', out);
	}
}

void report_warnings(const struct report *to, struct day *day)
{
	const struct kitchen *kitchen = day_kitchen(day);
	struct moment now = kitchen_now(kitchen);
	struct warning warnings[WARNINGS_MAX];
	size_t count;

	count = kitchen_warnings(kitchen, &now, warnings);
	if (to->json)
		put_json(to->out, kitchen_board(kitchen), &now, warnings, count);
	else
		put_text(to->out, warnings, count);
}
