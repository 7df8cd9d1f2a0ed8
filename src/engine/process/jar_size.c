#include <string.h>

#include "base/text.h"
#include "engine/process/process.h"

const struct jar_size *jar_size_named(const char *name)
{
	for (size_t i = 0; name != NULL && i < jar_size_count; i++) {
		if (text_same_name(name, jar_sizes[i].name) || text_same_name(name, jar_sizes[i].words) ||
		    text_same_name(name, jar_sizes[i].plural))
			return &jar_sizes[i];
	}
	return NULL;
}

int jar_size_index(const struct jar_size *size)
{
	return (int)(size - jar_sizes);
}

const char *kept_noun(int64_t count, bool jars, bool packages)
{
	if (jars && packages)
		return "jars and packages";
	if (packages)
		return count == 1 ? "package" : "packages";
	return count == 1 ? "jar" : "jars";
}

const char *jar_size_words(const char *name, int64_t jars)
{
	const struct jar_size *size = jar_size_named(name);

	if (size == NULL && name != NULL && strcmp(name, SIZE_PACKAGE) == 0)
		return kept_noun(jars, false, true);
	if (size == NULL)
		return kept_noun(jars, true, false);
	return jars == 1 ? size->words : size->plural;
}
