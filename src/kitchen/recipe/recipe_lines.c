#include "kitchen/recipe/recipe_lines.h"

#include <string.h>

#include "base/text.h"
#include "engine/food/food.h"
#include "engine/recipe/amount.h"

#define FOAM_DEFAULT 33 /* a pot no more than two thirds full: common practice, no source */
#define BOIL_OFF_DEFAULT 10
#define UNLISTED "unlisted"

/* --- words of one form ------------------------------------------------------------ */

static bool digit(char c)
{
	return c >= '0' && c <= '9';
}

/* Digits up to `end`; no sign, no blank. */
static bool read_whole(const char **at, int max, int *out)
{
	int value = 0;

	if (!digit(**at))
		return false;
	for (; digit(**at); (*at)++) {
		value = value * 10 + (**at - '0');
		if (value > max)
			return false;
	}
	*out = value;
	return true;
}

static bool set_whole(const char *value, const char *key, int min, int max, int *out, struct fault *fault)
{
	const char *at = value;
	int read;

	if (!read_whole(&at, max, &read) || *at != '\0' || read < min)
		return fault_set(fault, FAULT_MISUSE, "%s= is a whole number from %d to %d, not \"%s\".", key, min, max,
		                 value);
	*out = read;
	return true;
}

static bool set_text(const char *value, const char *key, char *out, size_t size, struct fault *fault)
{
	if (!text_copy(out, size, value))
		return fault_set(fault, FAULT_MISUSE, "%s= is too long: at most %zu bytes.", key, size - 1);
	return true;
}

static bool set_yes_no(const char *value, const char *key, bool *out, struct fault *fault)
{
	if (strcmp(value, "yes") != 0 && strcmp(value, "no") != 0)
		return fault_set(fault, FAULT_MISUSE, "%s= is yes or no, not \"%s\".", key, value);
	*out = strcmp(value, "yes") == 0;
	return true;
}

/* The number of a name among `count`; -1: there is none.  The list of names is
 * put into the fault. */
static int number_of(const char *value, const char *key, const char *(*name)(int), int count, struct fault *fault)
{
	char list[200];
	struct text text = TEXT_OVER(list);

	for (int i = 0; i < count; i++) {
		if (strcmp(name(i), value) == 0)
			return i;
		text_add(&text, "%s%s", i == 0 ? "" : i == count - 1 ? " or " : ", ", name(i));
	}
	fault_set(fault, FAULT_MISUSE, "%s= is %s, not \"%s\".", key, list, value);
	return -1;
}

static const char *pectin_at(int n)
{
	return pectin_name((enum pectin)n);
}

static const char *acidity_at(int n)
{
	return acidity_name((enum acidity)n);
}

static const char *adding_at(int n)
{
	return adding_name((enum adding)n);
}

static const char *supply_at(int n)
{
	return supply_name((enum supply_kind)n);
}

/* "1/4", "1", "1 1/4", "1-1/4", "0.375", with or without "in": thousandths of an inch. */
static bool set_headspace(const char *value, int *out, struct fault *fault)
{
	const char *at = value;
	int whole = 0;
	int part = 0;
	int of = 1;
	bool done = read_whole(&at, 99, &whole);

	if (done && (*at == ' ' || *at == '-') && digit(at[1])) {
		at++;
		done = read_whole(&at, 99, &part) && *at == '/';
	} else if (done && *at == '/') {
		part = whole;
		whole = 0;
	} else if (done && *at == '.') {
		at++;
		for (done = digit(*at); digit(*at) && of < 1000; at++) {
			part = part * 10 + (*at - '0');
			of *= 10;
		}
	}
	if (done && *at == '/') {
		at++;
		done = read_whole(&at, 99, &of) && of > 0;
	}
	if (done && strcmp(*at == ' ' ? at + 1 : at, "in") == 0)
		at = "";
	if (!done || *at != '\0' || whole * 1000 + part * 1000 / of > 3000 || whole * 1000 + part * 1000 / of < 1)
		return fault_set(fault, FAULT_MISUSE, "headspace= is inches such as 1/4 or 1, not \"%s\".", value);
	*out = whole * 1000 + part * 1000 / of;
	return true;
}

/* "5-15" or "10": percent of the volume, low and high. */
static bool set_boil_off(const char *value, struct log_recipe *recipe, struct fault *fault)
{
	const char *at = value;
	int low = 0;
	int high = 0;
	bool done = read_whole(&at, RECIPE_PERCENT_MAX, &low);

	high = low;
	if (done && *at == '-') {
		at++;
		done = read_whole(&at, RECIPE_PERCENT_MAX, &high);
	}
	if (!done || *at != '\0' || high < low)
		return fault_set(fault, FAULT_MISUSE, "boiloff= is percent from low to high, such as 5-15, not \"%s\".",
		                 value);
	recipe->boil_off_low_percent = low;
	recipe->boil_off_high_percent = high;
	return true;
}

/* --- the recipe ------------------------------------------------------------------------ */

enum recipe_key {
	KEY_FOOD,
	KEY_PACKS,
	KEY_JARS,
	KEY_PECTIN,
	KEY_ACIDITY,
	KEY_HOLD,
	KEY_HEADSPACE,
	KEY_MULTIPLE,
	KEY_FOAM,
	KEY_BOILOFF,
	KEY_GEL,
	KEY_CAUTION,
	KEY_SOURCE,
	KEY_MINUTES,
	KEY_VINEGAR,
	KEY_LEMON,
	KEY_YIELD,
	RECIPE_KEY_COUNT
};

static const char *const recipe_keys[RECIPE_KEY_COUNT] = {
	[KEY_FOOD] = "food",           [KEY_PACKS] = "packs",       [KEY_JARS] = "jars",
	[KEY_PECTIN] = "pectin",       [KEY_ACIDITY] = "acidity",   [KEY_HOLD] = "hold",
	[KEY_HEADSPACE] = "headspace", [KEY_MULTIPLE] = "multiple", [KEY_FOAM] = "foam",
	[KEY_BOILOFF] = "boiloff",     [KEY_GEL] = "gel",           [KEY_CAUTION] = "caution",
	[KEY_SOURCE] = "source",       [KEY_MINUTES] = "minutes",   [KEY_VINEGAR] = "vinegar",
	[KEY_LEMON] = "lemon",         [KEY_YIELD] = "yield",
};

enum ingredient_key { KEY_SUPPLY, KEY_AMOUNT, KEY_FORM, KEY_WHEN, KEY_AS, INGREDIENT_KEY_COUNT };

static const char *const ingredient_keys[INGREDIENT_KEY_COUNT] = {
	[KEY_SUPPLY] = "supply", [KEY_AMOUNT] = "amount", [KEY_FORM] = "form", [KEY_WHEN] = "when", [KEY_AS] = "as",
};

/* Which of the keys a word "key=value" gives; -1 with a fault.  `given` has a bit
 * for each key that has come before. */
static int key_of(const char *word, const char *const *keys, int count, unsigned *given, const char **value,
                  struct fault *fault)
{
	const char *equals = strchr(word, '=');
	char list[200];
	struct text text = TEXT_OVER(list);

	for (int i = 0; i < count; i++) {
		size_t length = strlen(keys[i]);

		text_add(&text, "%s%s=", i == 0 ? "" : ", ", keys[i]);
		if (equals == NULL || (size_t)(equals - word) != length || strncmp(word, keys[i], length) != 0)
			continue;
		if ((*given & 1u << i) != 0) {
			fault_set(fault, FAULT_MISUSE, "%s= is there twice.", keys[i]);
			return -1;
		}
		*given |= 1u << i;
		*value = equals + 1;
		return i;
	}
	fault_set(fault, FAULT_MISUSE, "\"%s\" is not one of %s.", word, list);
	return -1;
}

static bool set_recipe_words(struct log_recipe *recipe, enum recipe_key key, const char *value, struct fault *fault)
{
	const char *name = recipe_keys[key];

	switch (key) {
	case KEY_FOOD: return set_text(value, name, recipe->food, sizeof(recipe->food), fault);
	case KEY_PACKS: return set_text(value, name, recipe->packs, sizeof(recipe->packs), fault);
	case KEY_JARS: return set_text(value, name, recipe->jars, sizeof(recipe->jars), fault);
	case KEY_CAUTION: return set_text(value, name, recipe->caution, sizeof(recipe->caution), fault);
	default: return set_text(value, name, recipe->source, sizeof(recipe->source), fault);
	}
}

static bool set_recipe_choice(struct log_recipe *recipe, enum recipe_key key, const char *value, struct fault *fault)
{
	int number = key == KEY_PECTIN ? number_of(value, "pectin", pectin_at, PECTIN_COUNT, fault)
	                               : number_of(value, "acidity", acidity_at, ACIDITY_COUNT, fault);

	if (number < 0)
		return false;
	if (key == KEY_PECTIN)
		recipe->pectin = (enum pectin)number;
	else
		recipe->acidity = (enum acidity)number;
	return true;
}

static bool set_yield(struct log_recipe *recipe, const char *value, struct fault *fault)
{
	struct amount_range yield = { 0 };
	struct fault why = { 0 };

	if (!amount_read_range(value, SUPPLY_OTHER, &yield, &why))
		return fault_set(fault, why.kind, "yield=: %s", why.sentence);
	if (yield.measure != MEASURE_VOLUME)
		return fault_set(fault, FAULT_MISUSE, "yield= is a volume such as \"6 pt\", not \"%s\".", value);
	recipe->yield_low_ul = yield.amount;
	recipe->yield_high_ul = yield.most > 0 ? yield.most : yield.amount;
	return true;
}

static bool set_swap(const char *value, enum acid_swap *out, struct fault *fault)
{
	bool may = false;

	if (!set_yes_no(value, "lemon", &may, fault))
		return false;
	*out = may ? ACID_SWAP_LEMON_FOR_VINEGAR : ACID_SWAP_NONE;
	return true;
}

static bool set_recipe(struct log_recipe *recipe, enum recipe_key key, const char *value, struct fault *fault)
{
	bool gel = false;

	switch (key) {
	case KEY_PECTIN:
	case KEY_ACIDITY: return set_recipe_choice(recipe, key, value, fault);
	case KEY_HOLD: return set_whole(value, "hold", 0, RECIPE_HOLD_MAX_S, &recipe->boil_hold_s, fault);
	case KEY_HEADSPACE: return set_headspace(value, &recipe->headspace_thou, fault);
	case KEY_MULTIPLE: return set_whole(value, "multiple", 1, RECIPE_MULTIPLE_MAX, &recipe->multiple_max, fault);
	case KEY_MINUTES: return set_whole(value, "minutes", 0, SHEET_MINUTES_MAX, &recipe->sheet_minutes, fault);
	case KEY_VINEGAR:
		return set_whole(value, "vinegar", RECIPE_VINEGAR_MIN, RECIPE_VINEGAR_MAX, &recipe->vinegar_percent,
		                 fault);
	case KEY_LEMON: return set_swap(value, &recipe->acid_swap, fault);
	case KEY_YIELD: return set_yield(recipe, value, fault);
	case KEY_FOAM: return set_whole(value, "foam", 0, RECIPE_PERCENT_MAX, &recipe->foam_percent, fault);
	case KEY_BOILOFF: return set_boil_off(value, recipe, fault);
	case KEY_GEL:
		if (!set_yes_no(value, "gel", &gel, fault))
			return false;
		recipe->gel_test = gel ? GEL_TEST_TEMPERATURE : GEL_TEST_NONE;
		return true;
	default: return set_recipe_words(recipe, key, value, fault);
	}
}

static void set_defaults(struct log_recipe *recipe)
{
	recipe->food[0] = '\0';
	recipe->packs[0] = '\0';
	recipe->jars[0] = '\0';
	recipe->pectin = PECTIN_NONE;
	recipe->acidity = ACIDITY_ACID;
	recipe->gel_test = GEL_TEST_NONE;
	recipe->boil_hold_s = 0;
	recipe->headspace_thou = 250;
	recipe->multiple_max = 1;
	recipe->foam_percent = FOAM_DEFAULT;
	recipe->boil_off_low_percent = 0;
	recipe->boil_off_high_percent = BOIL_OFF_DEFAULT;
	recipe->caution[0] = '\0';
	recipe->source[0] = '\0';
	recipe->retired = false;
	recipe->sheet_minutes = 0;
	recipe->vinegar_percent = 0;
	recipe->acid_swap = ACID_SWAP_NONE;
	recipe->yield_low_ul = 0;
	recipe->yield_high_ul = 0;
}

static bool set_name(const struct words *words, const char *of, char *out, size_t size, struct fault *fault)
{
	const char *name = words_at(words, 1);

	if (name[0] == '\0')
		return fault_set(fault, FAULT_MISUSE, "The %s needs a name: %s \"NAME\" ...", of, of);
	if (!text_copy(out, size, name))
		return fault_set(fault, FAULT_MISUSE, "That name is too long: at most %zu bytes.", size - 1);
	return true;
}

/* Acid food in a boiling-water canner is the wrong thing to guess. */
static bool settle_acidity(struct log_recipe *recipe, unsigned given, struct fault *fault)
{
	if ((given & 1u << KEY_ACIDITY) != 0 ||
	    (recipe->food[0] != '\0' && process_acidity(recipe->food, &recipe->acidity)))
		return true;
	return fault_set(fault, FAULT_MISUSE, "Say how acid it is: acidity=acid, acidified or low_acid.");
}

bool recipe_line_read(const struct words *words, struct log_recipe *recipe, struct fault *fault)
{
	struct log_recipe read = *recipe;
	unsigned given = 0;

	set_defaults(&read);
	if (!set_name(words, "recipe", read.name, sizeof(read.name), fault))
		return false;
	for (size_t i = 2; i < words->count; i++) {
		const char *value = "";
		int key;

		if (strcmp(words_at(words, i), "retired") == 0) {
			read.retired = true;
			continue;
		}
		key = key_of(words_at(words, i), recipe_keys, RECIPE_KEY_COUNT, &given, &value, fault);
		if (key < 0 || !set_recipe(&read, (enum recipe_key)key, value, fault))
			return false;
	}
	if (!settle_acidity(&read, given, fault))
		return false;
	*recipe = read;
	return true;
}

/* --- an ingredient ------------------------------------------------------------------------ */

/* What a name stands for in the list of known ingredients; "" for none. */
static const char *known_by(const char *name)
{
	const struct known_ingredient *known = known_ingredient_named(name);

	return known == NULL ? "" : known->name;
}

static bool set_known(struct log_recipe_ingredient *out, const char *value, struct fault *fault)
{
	const char *known = known_by(value);

	if (known[0] == '\0' && strcmp(value, UNLISTED) != 0)
		return fault_set(fault, FAULT_MISUSE, "as= is a known ingredient or unlisted; \"%.60s\" is neither.",
		                 value);
	return set_text(known, "as", out->known, sizeof(out->known), fault);
}

static bool set_ingredient(struct log_recipe_ingredient *out, enum ingredient_key key, const char *value,
                           struct fault *fault)
{
	int number;

	switch (key) {
	case KEY_SUPPLY:
		number = number_of(value, "supply", supply_at, SUPPLY_KIND_COUNT, fault);
		out->supply = number < 0 ? SUPPLY_OTHER : (enum supply_kind)number;
		return number >= 0;
	case KEY_WHEN:
		number = number_of(value, "when", adding_at, OWN_ADDINGS, fault);
		out->adding = number < 0 ? ADD_AT_START : (enum adding)number;
		return number >= 0;
	case KEY_AS: return set_known(out, value, fault);
	case KEY_FORM: return set_text(value, "form", out->form, sizeof(out->form), fault);
	default: return true; /* the amount waits until the supply is known */
	}
}

static bool set_amount(struct log_recipe_ingredient *out, const char *words, struct fault *fault)
{
	struct amount_range range = { 0 };
	struct fault why = { 0 };

	if (words == NULL)
		return fault_set(fault, FAULT_MISUSE, "Say how much of %s: amount=\"2 cups\".", out->name);
	if (!amount_read_range(words, out->supply, &range, &why))
		return fault_set(fault, why.kind, "amount= of %s: %s", out->name, why.sentence);
	out->measure = range.measure;
	out->amount = range.amount;
	out->amount_most = range.most;
	return out->amount > 0 ||
	       fault_set(fault, FAULT_MISUSE, "The amount of %s is zero: leave the line out.", out->name);
}

bool ingredient_line_read(const struct words *words, struct log_recipe_ingredient *out, struct fault *fault)
{
	struct log_recipe_ingredient read = { .adding = ADD_AT_START };
	const char *amount = NULL;
	unsigned given = 0;

	if (!set_name(words, "ingredient", read.name, sizeof(read.name), fault) ||
	    !set_text(known_by(read.name), "as", read.known, sizeof(read.known), fault))
		return false;
	for (size_t i = 2; i < words->count; i++) {
		const char *value = "";
		int key;

		if (strcmp(words_at(words, i), "optional") == 0) {
			read.optional = true;
			continue;
		}
		key = key_of(words_at(words, i), ingredient_keys, INGREDIENT_KEY_COUNT, &given, &value, fault);
		if (key < 0 || !set_ingredient(&read, (enum ingredient_key)key, value, fault))
			return false;
		if (key == KEY_AMOUNT)
			amount = value;
	}
	if (!set_amount(&read, amount, fault))
		return false;
	*out = read;
	return true;
}

/* --- and back --------------------------------------------------------------------------------- */

static void add_words(struct text *text, const char *key, const char *value)
{
	if (value[0] == '\0')
		return;
	text_add(text, " %s=", key);
	words_quote(text, value);
}

static void add_amount(struct text *text, const char *key, const struct amount_range *range, enum supply_kind supply,
                       enum unit_system units)
{
	char words[AMOUNT_RANGE_BYTES];

	amount_range_words(range, supply, units, words, sizeof(words));
	add_words(text, key, words);
}

static void add_headspace(struct text *text, int headspace_thou)
{
	char inches[24];

	headspace_words(headspace_thou, inches, sizeof(inches));
	text_add(text, " headspace=%.*s", (int)strcspn(inches, " "), inches);
}

bool recipe_line_words(const struct log_recipe *recipe, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	text_add(&text, "recipe ");
	words_quote(&text, recipe->name);
	add_words(&text, "food", recipe->food);
	add_words(&text, "packs", recipe->packs);
	add_words(&text, "jars", recipe->jars);
	text_add(&text, " pectin=%s acidity=%s hold=%d", pectin_name(recipe->pectin), acidity_name(recipe->acidity),
	         recipe->boil_hold_s);
	add_headspace(&text, recipe->headspace_thou);
	text_add(&text, " multiple=%d foam=%d boiloff=%d-%d gel=%s", recipe->multiple_max, recipe->foam_percent,
	         recipe->boil_off_low_percent, recipe->boil_off_high_percent,
	         recipe->gel_test == GEL_TEST_NONE ? "no" : "yes");
	if (recipe->sheet_minutes > 0)
		text_add(&text, " minutes=%d", recipe->sheet_minutes);
	if (recipe->vinegar_percent > 0)
		text_add(&text, " vinegar=%d", recipe->vinegar_percent);
	if (recipe->acid_swap == ACID_SWAP_LEMON_FOR_VINEGAR)
		text_add(&text, " lemon=yes");
	if (recipe->yield_low_ul > 0)
		add_amount(
		    &text, "yield",
		    &(struct amount_range){ MEASURE_VOLUME, recipe->yield_low_ul,
		                            recipe->yield_high_ul > recipe->yield_low_ul ? recipe->yield_high_ul : 0 },
		    SUPPLY_OTHER, UNITS_US);
	add_words(&text, "caution", recipe->caution);
	add_words(&text, "source", recipe->source);
	if (recipe->retired)
		text_add(&text, " retired");
	return !text.cut;
}

bool ingredient_picked_words(const struct log_recipe_ingredient *ingredient, enum unit_system units, char *buffer,
                             size_t size)
{
	struct text text = text_over(buffer, size);

	text_add(&text, "ingredient ");
	words_quote(&text, ingredient->name);
	text_add(&text, " supply=%s", supply_name(ingredient->supply));
	add_amount(&text, "amount",
	           &(struct amount_range){ ingredient->measure, ingredient->amount, ingredient->amount_most },
	           ingredient->supply, units);
	add_words(&text, "form", ingredient->form);
	text_add(&text, " when=%s", adding_name(ingredient->adding));
	add_words(&text, "as", ingredient->known[0] == '\0' ? UNLISTED : ingredient->known);
	text_add(&text, "%s", ingredient->optional ? " optional" : "");
	return !text.cut;
}
