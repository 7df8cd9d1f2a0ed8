#include "screen/term/lines.h"

#include "kitchen/board/board.h"
#include <stdlib.h>
#include <string.h>

struct line {
	char *bytes; /* heads, each with its text and the zero of it */
	size_t used;
	size_t room;
	size_t last;  /* where the head put last begins */
	size_t walk;  /* how far the row of the frame before has been compared */
	bool another; /* than that row, as far as it was put */
	bool moved;   /* a mark stands elsewhere or takes other columns than the one in its place did */
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
	int were;      /* columns of the mark that stood in its place; -1: none did there */
	bool same;     /* as that */
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
		lines->now[i].walk = 0;
		lines->now[i].another = false;
		lines->now[i].moved = false;
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

/* Compare with the mark in the same place of the frame before. */
static void compare(struct line *line, const struct line *before, struct head *head, const char *text)
{
	const char *old_text;
	struct head old;

	head->were = -1;
	if (line->walk >= before->used)
		return;
	memcpy(&old, before->bytes + line->walk, sizeof(old));
	old_text = before->bytes + line->walk + sizeof(old);
	line->walk += sizeof(old) + old.length + 1;
	if (old.col != head->col || old.room != head->room || old.fill != head->fill)
		return;
	head->were = old.columns;
	head->columns = old.columns;
	head->same = old.role == head->role && old.length == head->length && memcmp(old_text, text, head->length) == 0;
}

bool lines_put(struct lines *lines, int row, struct mark *mark)
{
	struct head head = { .col = mark->col,
		             .room = mark->room,
		             .role = mark->role,
		             .fill = mark->fill,
		             .length = strlen(mark->text) };
	struct line *line;

	if (row < 0 || row >= lines->rows)
		return false;
	line = &lines->now[row];
	if (!make_room(line, sizeof(head) + head.length + 1)) {
		line->another = true;
		line->moved = true;
		return false;
	}
	compare(line, &lines->before[row], &head, mark->text);
	line->another = line->another || !head.same;
	line->moved = line->moved || head.were < 0;
	line->last = line->used;
	memcpy(line->bytes + line->used, &head, sizeof(head));
	memcpy(line->bytes + line->used + sizeof(head), mark->text, head.length + 1);
	line->used += sizeof(head) + head.length + 1;
	mark->columns = head.columns;
	mark->same = head.same;
	return head.same;
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
	line->moved = line->moved || columns != head.were;
}

bool lines_keep_places(const struct lines *lines, int row)
{
	return row >= 0 && row < lines->rows && !lines->anew && !lines->now[row].moved &&
	       lines->now[row].walk == lines->before[row].used;
}

bool lines_changed(const struct lines *lines, int row)
{
	if (row < 0 || row >= lines->rows)
		return false;
	return lines->anew || lines->now[row].another || lines->now[row].walk != lines->before[row].used;
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
	*mark = (struct mark){ .col = head.col,
		               .room = head.room,
		               .role = head.role,
		               .fill = head.fill,
		               .columns = head.columns,
		               .same = head.same,
		               .text = line->bytes + *at + sizeof(head) };
	*at += sizeof(head) + head.length + 1;
	return true;
}
