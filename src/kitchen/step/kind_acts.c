#include "kitchen/step/kind_acts.h"

#include <assert.h>

#define ITS_ACTS(TAG, word) &word##_acts,

const struct kind_acts *strip_acts(const struct strip *strip)
{
	static const struct kind_acts *const kinds[] = { EACH_WORK(ITS_ACTS) };
	const size_t count = sizeof(kinds) / sizeof(kinds[0]);
	size_t i = 0;

	while (i + 1 < count && kinds[i]->content != strip->content)
		i++;
	assert(kinds[i]->content == strip->content);
	return kinds[i];
}
