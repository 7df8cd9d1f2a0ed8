/*
 * odds.h - is this share of failures clearly above the others', or could chance
 * alone have dealt it?  Exact for small counts; no allocation.
 */
#ifndef STILLROOM_ENGINE_STATS_ODDS_H
#define STILLROOM_ENGINE_STATS_ODDS_H

#include <stdbool.h>
#include <stdint.h>

/* Two groups, each with how many were looked at and how many of these failed. */
struct two_groups {
	int64_t looked;
	int64_t failed;
	int64_t others_looked;
	int64_t others_failed;
};

/* The chance that `failed` or more of all failures fall on the first group when
 * they fall on any of the looked-at ones alike: Fisher's exact test, one-sided
 * (hypergeometric upper tail; R. A. Fisher, The Design of Experiments, 1935).
 * 0 to 1; 1 when a count is negative or more failed than were looked at. */
double odds_by_chance(const struct two_groups *groups); /* public for its test */

/* Less likely than this by chance is "clearly above": 1 in 100. House rule; the
 * boxes and canners of a season are a dozen or two, so that a false alarm comes
 * up once in several seasons. */
#define ODDS_CLEAR 0.01
/* One lid alone is never a cluster: house rule. */
#define ODDS_FAILED_MIN 2

bool odds_clearly_above(const struct two_groups *groups);

/* How it is worked out, for whoever asks. */
#define ODDS_SOURCE "R. A. Fisher, The Design of Experiments, 1935; 1 in 100, and 2 lids or more: house rule"
#define ODDS_HOW \
	"Fisher's exact test, one-sided, against all others of the year: as many failures or more fall on it by " \
	"chance at most once in 100"

#endif
