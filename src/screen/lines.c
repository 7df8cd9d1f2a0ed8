#include "screen/lines.h"

#include <stdlib.h>
#include <string.h>

struct line {
	char *bytes; /* heads, each with its text and the zero of it */
	size_t used;
	size_t room;
	size_t last;  /* where the head put last begins */
	bool another; /* than the row of the frame before, as far as it was put */
};

struct lines {
	struct line *now;
	struct line *before;
	int rows;
	int cols;
	bool anew;
};

struct head {
	int col;
	int room;
	int role;
	int fill;
	int columns;
	size_t length; /* of the text */
};

struct lines *lines_new(void)
{
	return calloc(1, sizeof(struct lines));
}

static void free_rows(struct line *list, int rows)
{
	for (int i = 0; list != NULL && i < rows; i++)
		free(list[i].bytes);
	free(list);
}

void lines_free(struct lines *lines)
{
	if (lines == NULL)
		return;
	free_rows(lines->now, lines->rows);
	free_rows(lines->before, lines->rows);
	free(lines);
}

static bool make_rows(struct lines *lines, int rows, int cols)
{
	free_rows(lines->now, lines->rows);
	free_rows(lines->before, lines->rows);
	lines->rows = rows;
	lines->cols = cols;
	lines->now = calloc((size_t)rows + 1, sizeof(*lines->now));
	lines->before = calloc((size_t)rows + 1, sizeof(*lines->before));
	lines->anew = true;
	if (lines->now != NULL && lines->before != NULL)
		return true;
	free(lines->now);
	free(lines->before);
	lines->now = lines->before = NULL;
	lines->rows = 0;
	return false;
}

bool lines_begin(struct lines *lines, int rows, int cols)
{
	struct line *last = lines->now;

	if (rows != lines->rows || cols != lines->cols)
		return make_rows(lines, rows, cols);
	lines->now = lines->before;
	lines->before = last;
	lines->anew = false;
	for (int i = 0; i < rows; i++) {
		lines->now[i].used = 0;
		lines->now[i].last = 0;
		lines->now[i].another = false;
	}
	return true;
}

static bool make_room(struct line *line, size_t more)
{
	size_t wanted = line->used + more;
	size_t room = line->room == 0 ? 256 : line->room;
	char *grown;

	if (wanted <= line->room)
		return true;
	while (room < wanted)
		room *= 2;
	grown = realloc(line->bytes, room);
	if (grown == NULL)
		return false;
	line->bytes = grown;
	line->room = room;
	return true;
}

/* The mark in the same place of the frame before, if it is the same. */
static bool stood(const struct line *before, size_t at, const struct head *head, const char *text, int *columns)
{
	struct head old;

	if (at + sizeof(old) + head->length + 1 > before->used)
		return false;
	memcpy(&old, before->bytes + at, sizeof(old));
	if (old.col != head->col || old.room != head->room || old.role != head->role || old.fill != head->fill ||
	    old.length != head->length || memcmp(before->bytes + at + sizeof(old), text, head->length) != 0)
		return false;
	*columns = old.columns;
	return true;
}

bool lines_put(struct lines *lines, int row, struct mark *mark)
{
	struct head head = { mark->col, mark->room, mark->role, mark->fill, 0, strlen(mark->text) };
	struct line *line;
	bool same;

	if (row < 0 || row >= lines->rows)
		return false;
	line = &lines->now[row];
	if (!make_room(line, sizeof(head) + head.length + 1)) {
		line->another = true;
		return false;
	}
	same = !line->another && !lines->anew && stood(&lines->before[row], line->used, &head, mark->text, &head.columns);
	line->another = !same;
	line->last = line->used;
	memcpy(line->bytes + line->used, &head, sizeof(head));
	memcpy(line->bytes + line->used + sizeof(head), mark->text, head.length + 1);
	line->used += sizeof(head) + head.length + 1;
	mark->columns = head.columns;
	return same;
}

void lines_took(struct lines *lines, int row, int columns)
{
	struct line *line;
	struct head head;

	if (row < 0 || row >= lines->rows || lines->now[row].used == 0)
		return;
	line = &lines->now[row];
	memcpy(&head, line->bytes + line->last, sizeof(head));
	head.columns = columns;
	memcpy(line->bytes + line->last, &head, sizeof(head));
}

bool lines_changed(const struct lines *lines, int row)
{
	if (row < 0 || row >= lines->rows)
		return false;
	return lines->anew || lines->now[row].another || lines->now[row].used != lines->before[row].used;
}

bool lines_next(const struct lines *lines, int row, size_t *at, struct mark *mark)
{
	const struct line *line;
	struct head head;

	if (row < 0 || row >= lines->rows)
		return false;
	line = &lines->now[row];
	if (*at >= line->used)
		return false;
	memcpy(&head, line->bytes + *at, sizeof(head));
	*mark = (struct mark){ head.col, head.room, head.role, head.fill, head.columns, line->bytes + *at + sizeof(head) };
	*at += sizeof(head) + head.length + 1;
	return true;
}
