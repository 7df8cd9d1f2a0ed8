/*
 * memory.c - memory that is handed out, and the end that frees it.
 *
 * All blocks hang on one list, so that a run that dies half-way loses none.
 */
#include "bake/bake.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct block {
	struct block *next;
	struct block *before;
	_Alignas(max_align_t) unsigned char bytes[];
};

static struct block *blocks;

void bake_die(const char *path, long line, const char *format, ...)
{
	va_list args;

	if (line > 0)
		fprintf(stderr, "%s:%ld: ", path, line);
	else
		fprintf(stderr, "%s: ", path);
	va_start(args, format);
	vfprintf(stderr, format, args);
	va_end(args);
	fputc('\n', stderr);
	exit(1);
}

static struct block *block_of(void *bytes)
{
	void *start = (unsigned char *)bytes - offsetof(struct block, bytes);

	return start;
}

void *bake_room(void *old, size_t count, size_t size)
{
	struct block *was = old == NULL ? NULL : block_of(old);
	struct block *block;

	if (count > (SIZE_MAX - sizeof(*block)) / size)
		bake_die("bake", 0, "no memory left");
	block = realloc(was, sizeof(*block) + count * size);
	if (block == NULL)
		bake_die("bake", 0, "no memory left");
	if (old == NULL) {
		block->before = NULL;
		block->next = blocks;
	}
	if (block->next != NULL)
		block->next->before = block;
	if (block->before != NULL)
		block->before->next = block;
	else
		blocks = block;
	return block->bytes;
}

char *bake_copy(const char *text)
{
	size_t size = strlen(text) + 1;

	return memcpy(bake_room(NULL, size, 1), text, size);
}

void bake_release(void)
{
	while (blocks != NULL) {
		struct block *next = blocks->next;

		free(blocks);
		blocks = next;
	}
}
