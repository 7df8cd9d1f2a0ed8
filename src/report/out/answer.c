/*
 * answer.c - see answer.h.
 */
#include "report/out/answer.h"

#include "kitchen/file/backups.h"
#include "kitchen/file/open_day.h"
#include "report/cli/plain.h"
#include "report/out/json.h"

/* Into an object that is open. */
static void put_refusal_json(struct json *json, const struct fault *fault)
{
	json_open_object(json, "refused", JSON_FLAT);
	json_text(json, "rule", fault->rule);
	json_text(json, "sentence", fault->sentence);
	json_close(json);
}

static void put_refusal_text(FILE *out, const struct fault *fault)
{
	(void)fputs("refused: ", out);
	plain_put(out, fault->sentence);
	(void)fputc('\n', out);
}

void report_refusal_among(struct report *to, struct json *json, const struct fault *fault)
{
	if (to->json) {
		json_open_object(json, NULL, JSON_FLAT);
		put_refusal_json(json, fault);
		json_close(json);
	} else {
		put_refusal_text(to->out, fault);
	}
	to->told = true;
}

void report_refusal(const struct report *to, const struct fault *fault)
{
	struct json json = json_begin(to->out);

	if (!to->json) {
		put_refusal_text(to->out, fault);
		return;
	}
	json_open_document(&json, JSON_FLAT);
	put_refusal_json(&json, fault);
	json_close(&json);
}

bool report_open(const char *path, enum log_mode mode, struct day **day, struct fault *fault)
{
	const char *notice;

	if (!day_open(path, mode, day, fault))
		return false;
	notice = kitchen_notice(day_kitchen(*day));
	if (notice[0] != '\0') {
		(void)fputs("stillroom: ", stderr);
		plain_put(stderr, notice);
		(void)fputc('\n', stderr);
	}
	return true;
}
