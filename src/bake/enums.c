/*
 * enums.c - enums of the engine: read by its own words, printed by their names in C.
 */
#include "bake/bake.h"

#define FIELD_ENUM(function, type, count, name_of) \
	type function(const struct record *record, size_t index, const char *name) \
	{ \
		const char *words[count]; \
\
		for (int i = 0; i < (count); i++) \
			words[i] = name_of((type)i); \
		return (type)field_word(record, index, name, words, count); \
	}

FIELD_ENUM(field_acid, enum acid, ACID_COUNT, acid_name)
FIELD_ENUM(field_acidity, enum acidity, ACIDITY_COUNT, acidity_name)
FIELD_ENUM(field_adding, enum adding, ADDING_COUNT, adding_name)
FIELD_ENUM(field_confirmed, enum confirmed, CONFIRMED_COUNT, confirmed_name)
FIELD_ENUM(field_jars_ready, enum jars_ready, JARS_READY_COUNT, jars_ready_name)
FIELD_ENUM(field_method, enum method, METHOD_COUNT, method_name)
FIELD_ENUM(field_packed, enum packed, PACKED_COUNT, packed_name)
FIELD_ENUM(field_pectin, enum pectin, PECTIN_COUNT, pectin_name)
FIELD_ENUM(field_supply, enum supply_kind, SUPPLY_KIND_COUNT, supply_name)

#define ITSELF(name) [name] = #name

const char *const acid_constants[ACID_COUNT] = {
	ITSELF(ACID_NOT_SAID), ITSELF(ACID_NONE_ASKED), ITSELF(ACID_LEFT_OUT),   ITSELF(ACID_LEMON_JUICE),
	ITSELF(ACID_CITRIC),   ITSELF(ACID_VINEGAR),    ITSELF(ACID_AS_PRINTED),
};

const char *const acidity_constants[ACIDITY_COUNT] = {
	ITSELF(ACIDITY_ACID),
	ITSELF(ACIDITY_ACIDIFIED),
	ITSELF(ACIDITY_LOW_ACID),
};

const char *const adding_constants[ADDING_COUNT] = {
	ITSELF(ADD_AT_START), ITSELF(ADD_AT_BOIL), ITSELF(ADD_LAST),
	ITSELF(ADD_IN_JAR),   ITSELF(ADD_AHEAD),   ITSELF(ADD_PACKED),
};

const char *const confirmed_constants[CONFIRMED_COUNT] = {
	ITSELF(CONFIRMED_YES),
	ITSELF(CONFIRMED_PRACTICE),
	ITSELF(CONFIRMED_DISPUTED),
	ITSELF(CONFIRMED_MEMORY),
};

const char *const jars_ready_constants[JARS_READY_COUNT] = {
	ITSELF(JARS_EITHER),
	ITSELF(JARS_BOILED_FIRST),
	ITSELF(JARS_NOT_BOILED_FIRST),
};

const char *const measure_constants[MEASURE_COUNT] = {
	ITSELF(MEASURE_VOLUME),
	ITSELF(MEASURE_MASS),
	ITSELF(MEASURE_EACH),
};

const char *const method_constants[METHOD_COUNT] = {
	ITSELF(METHOD_BOILING_WATER),
	ITSELF(METHOD_STEAM),
	ITSELF(METHOD_DIAL_GAUGE),
	ITSELF(METHOD_WEIGHTED_GAUGE),
};

const char *const packed_constants[PACKED_COUNT] = {
	ITSELF(PACKED_HOT),
	ITSELF(PACKED_RAW),
};

const char *const pectin_constants[PECTIN_COUNT] = {
	ITSELF(PECTIN_NONE),
	ITSELF(PECTIN_REGULAR),
	ITSELF(PECTIN_LOW_METHOXYL),
};

const char *const supply_constants[SUPPLY_KIND_COUNT] = {
	ITSELF(SUPPLY_OTHER),
	ITSELF(SUPPLY_JUICE),
	ITSELF(SUPPLY_FRUIT),
	ITSELF(SUPPLY_SUGAR),
	ITSELF(SUPPLY_LEMON_JUICE),
	ITSELF(SUPPLY_CITRIC_ACID),
	ITSELF(SUPPLY_VINEGAR),
	ITSELF(SUPPLY_PECTIN_REGULAR),
	ITSELF(SUPPLY_PECTIN_LIQUID),
	ITSELF(SUPPLY_PECTIN_LOW),
	ITSELF(SUPPLY_CALCIUM_SOLUTION),
	ITSELF(SUPPLY_SALT),
	ITSELF(SUPPLY_BUTTER),
	ITSELF(SUPPLY_JAR),
	ITSELF(SUPPLY_BAND),
};
