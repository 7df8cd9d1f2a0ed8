/*
 * log_document.h - what every JSON document about a log begins with.
 */
#ifndef STILLROOM_REPORT_OUT_LOG_DOCUMENT_H
#define STILLROOM_REPORT_OUT_LOG_DOCUMENT_H

#include "kitchen/board/board.h"
#include "report/out/json.h"

/* Opens the object of the document and says when it was and by which clock; leaves
 * the object open. */
void log_document_open(struct json *json, const struct kitchen *kitchen, const struct moment *now);
/* The same into an object that is open and says something else first. */
void log_document_head(struct json *json, const struct kitchen *kitchen, const struct moment *now);

#endif
