/*
 * pack.c - how food goes into its jars, and how these are made ready.
 */
#include "bake/bake.h"

#include <stdio.h>

#include "base/text.h"

static void check_pack(const struct record *record, const struct pack_lines *packs, const struct pack *pack)
{
	for (size_t i = 0; i < packs->count; i++) {
		const struct pack *other = &packs->row[i];

		if (text_same_name(pack->name, other->name) || text_same_name(pack->words, other->words))
			bake_die(record->path, record->line, "the pack is already on line %ld", packs->line[i]);
	}
}

struct pack_lines packs_read(const char *path)
{
	static const char *const header[] = { "pack", "words", "packed", "jars" };
	struct source source = source_read(path);
	struct record record;
	struct pack_lines packs = { .count = 0 };

	header_read(&source, header, 4);
	while (row_read(&source, &record, 4)) {
		struct pack pack = {
			.name = field_text(&record, 0, "pack", WORD_BYTES),
			.words = field_text(&record, 1, "words", NAME_BYTES),
			.packed = field_packed(&record, 2, "packed"),
			.jars = field_jars_ready(&record, 3, "jars"),
		};
		size_t at;

		check_pack(&record, &packs, &pack);
		at = next_row(&record, &packs.count, PACKS_MAX);
		packs.row[at] = pack;
		packs.line[at] = record.line;
	}
	if (packs.count == 0)
		bake_die(path, 2, "no rows");
	return packs;
}

void bake_pack(const char *path)
{
	struct pack_lines packs = packs_read(path);

	print_top("engine/process/pack.h");
	printf("const struct pack pack_rows[] = {\n");
	for (size_t i = 0; i < packs.count; i++) {
		const struct pack *pack = &packs.row[i];

		printf("\t{ ");
		print_string(pack->name);
		printf(", ");
		print_string(pack->words);
		printf(", %s, %s },\n", packed_constants[pack->packed], jars_ready_constants[pack->jars]);
	}
	print_count("pack_row_count", "pack_rows");
}
