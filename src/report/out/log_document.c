/*
 * log_document.c - what every JSON document about a log begins with.
 */
#include "report/out/log_document.h"
#include "kitchen/board/board.h"

void log_document_open(struct json *json, const struct kitchen *kitchen, const struct moment *now)
{
	json_open_document(json, JSON_LINES);
	log_document_head(json, kitchen, now);
}

void log_document_head(struct json *json, const struct kitchen *kitchen, const struct moment *now)
{
	const struct log_house *house = &kitchen_board(kitchen)->house;

	json_instant(json, "now", now->wall_ms);
	json_whole(json, "practice_speed", house->practice_speed);
	json_bool(json, "invented", house->invented);
}
