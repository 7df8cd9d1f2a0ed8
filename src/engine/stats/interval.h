/*
 * interval.h - between which shares may the true one lie, when so many of so many
 * failed?  Exact for small counts; no allocation.
 */
#ifndef STILLROOM_ENGINE_STATS_INTERVAL_H
#define STILLROOM_ENGINE_STATS_INTERVAL_H

#include <stdint.h>

/* Shares from 0 to 1. */
struct interval {
	double low;
	double high;
};

#define INTERVAL_CONFIDENCE 0.95

/* The 95 % interval of a share by Clopper and Pearson (C. J. Clopper and E. S.
 * Pearson, The use of confidence or fiducial limits illustrated in the case of the
 * binomial, Biometrika 26, 1934): low is the share at which `failed` or more of
 * `looked` have a chance of 2.5 %, high the one at which `failed` or fewer have.
 * It is never narrower than it says.  Nothing looked at, or counts that make no
 * sense: 0 to 1. */
struct interval interval_of_share(int64_t failed, int64_t looked);

/* How it is worked out, for whoever asks. */
#define INTERVAL_SOURCE "Clopper and Pearson, Biometrika 26, 1934"
#define INTERVAL_HOW \
	"the exact 95 % interval of a share by Clopper and Pearson: in 40 such counts, one comes out so high and one " \
	"so low by chance where the true share stands at its end"

#endif
