/*
 * enum_words.h - the words of each enum as a list, by which its columns are stored and read.
 *
 * What may be null has "" for its first.
 */
#ifndef STILLROOM_LOG_ROWS_ENUM_WORDS_H
#define STILLROOM_LOG_ROWS_ENUM_WORDS_H

struct enum_words {
	const char *const *list;
	int count;
	const char *(*name)(int index); /* instead of a list: an enum whose words the engine has */
};

const char *word_at(const struct enum_words *words, int index); /* "?": no such word */

extern const struct enum_words words_of_place;
extern const struct enum_words words_of_verdict;
extern const struct enum_words words_of_wall;
extern const struct enum_words words_of_mark;
extern const struct enum_words words_of_phase_end;
extern const struct enum_words words_of_jar_state;
extern const struct enum_words words_of_siphoning;
extern const struct enum_words words_of_fate;
extern const struct enum_words words_of_station_kind;
extern const struct enum_words words_of_units;
extern const struct enum_words words_of_juice_state;
extern const struct enum_words words_of_juice_why;
extern const struct enum_words words_of_supply_why;
extern const struct enum_words words_of_tally;
extern const struct enum_words words_of_tick;
extern const struct enum_words words_of_gone;
extern const struct enum_words words_of_trace;
extern const struct enum_words words_of_outcome;
extern const struct enum_words words_of_work;
extern const struct enum_words words_of_acidity;
extern const struct enum_words words_of_acid;
extern const struct enum_words words_of_origin;
extern const struct enum_words words_of_drying_class;
extern const struct enum_words words_of_method;
extern const struct enum_words words_of_pectin;
extern const struct enum_words words_of_own_adding; /* of an own recipe */
extern const struct enum_words words_of_measure;
extern const struct enum_words words_of_supply;
extern const struct enum_words words_of_confirmed; /* those a load can have: yes and practice */

#endif
