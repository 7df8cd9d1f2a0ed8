/* Words and names of foods; no table is asked (bake is linked with this file). */
#include <string.h>

#include "base/text.h"
#include "engine/food/food.h"
#include "engine/recipe/fruit.h"

/* --- acid ------------------------------------------------------------------------ */

static const struct {
	const char *name;
	const char *words;
	enum supply_kind supply;
} acids[ACID_COUNT] = {
	[ACID_NOT_SAID] = { "not_said", "acid not said", SUPPLY_OTHER },
	[ACID_NONE_ASKED] = { "none_asked", "no acid asked for", SUPPLY_OTHER },
	[ACID_LEFT_OUT] = { "left_out", "acid left out", SUPPLY_OTHER },
	[ACID_LEMON_JUICE] = { "lemon_juice", "bottled lemon juice", SUPPLY_LEMON_JUICE },
	[ACID_CITRIC] = { "citric_acid", "citric acid", SUPPLY_CITRIC_ACID },
	[ACID_VINEGAR] = { "vinegar", "vinegar of 5 percent", SUPPLY_VINEGAR },
	[ACID_AS_PRINTED] = { "as_printed", "acid as printed", SUPPLY_OTHER },
};

static bool is_acid(enum acid acid)
{
	return (int)acid >= 0 && (int)acid < ACID_COUNT;
}

const char *acid_name(enum acid acid)
{
	return is_acid(acid) ? acids[acid].name : "?";
}

const char *acid_words(enum acid acid)
{
	return is_acid(acid) ? acids[acid].words : "?";
}

bool acid_from_name(const char *name, enum acid *out)
{
	for (int acid = 0; name != NULL && acid < ACID_COUNT; acid++) {
		if (strcmp(acids[acid].name, name) == 0) {
			*out = (enum acid)acid;
			return true;
		}
	}
	return false;
}

enum supply_kind acid_supply(enum acid acid)
{
	return is_acid(acid) ? acids[acid].supply : SUPPLY_OTHER;
}

/* --- ingredients ------------------------------------------------------------------- */

static bool same_thing(const char *a, const char *b)
{
	return text_same_name(a, b) || fruit_same(a, b);
}

bool known_ingredient_called(const struct known_ingredient *item, const char *name)
{
	const char *also = item->also;
	char part[FRUIT_NAME_BYTES];

	if (same_thing(item->name, name))
		return true;
	while (*also != '\0') {
		size_t length = strcspn(also, ";");

		if (length < sizeof(part)) {
			memcpy(part, also, length);
			part[length] = '\0';
			if (same_thing(part, name))
				return true;
		}
		also += length;
		also += strspn(also, "; ");
	}
	return false;
}

/* --- origin ------------------------------------------------------------------------ */

static const char *const origins[ORIGIN_COUNT] = {
	[ORIGIN_NOT_SAID] = "not_said",       [ORIGIN_PRINTED] = "printed", [ORIGIN_OWN_CLASS] = "own_class",
	[ORIGIN_OWN_UNKNOWN] = "own_unknown", [ORIGIN_REFUSED] = "refused",
};

const char *origin_name(enum origin origin)
{
	return (int)origin >= 0 && (int)origin < ORIGIN_COUNT ? origins[origin] : "?";
}
