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

const char *jar_size_words(const char *name, int64_t jars)
{
	const struct jar_size *size = jar_size_named(name);

	if (size == NULL && name != NULL && strcmp(name, SIZE_PACKAGE) == 0)
		return jars == 1 ? "package" : "packages";
	if (size == NULL)
		return jars == 1 ? "jar" : "jars";
	return jars == 1 ? size->words : size->plural;
}
