#include "engine/process/pack.h"

#include "base/text.h"

const struct pack *pack_named(const char *words)
{
	for (size_t i = 0; words != NULL && i < pack_row_count; i++) {
		if (text_same_name(words, pack_rows[i].name) || text_same_name(words, pack_rows[i].words))
			return &pack_rows[i];
	}
	return NULL;
}

const char *pack_words(const char *pack)
{
	const struct pack *found = pack_named(pack);

	return found == NULL ? "?" : found->words;
}

bool pack_is_raw(const char *pack)
{
	const struct pack *found = pack_named(pack);

	return found != NULL && found->packed == PACKED_RAW;
}

bool pack_has_jars(const char *pack, enum jars_ready jars)
{
	const struct pack *found = pack_named(pack);

	return found != NULL && found->jars == jars;
}
