/*
 * product.h - what a kitchen makes, by its everyday name, and which food of the
 * process tables it may use.  Data: schema/product.csv, baked in at build.
 */
#ifndef STILLROOM_ENGINE_PROCESS_PRODUCT_H
#define STILLROOM_ENGINE_PROCESS_PRODUCT_H

#include <stddef.h>

struct product {
	const char *name;      /* "grape jelly" */
	const char *food;      /* a food of the process tables */
	const char *usual_jar; /* a jar size name */
	const char *caution;   /* one short sentence for the person, or "" */
	const char *source;    /* of the caution and the pairing, or "house recipe, no source" */
};

extern const struct product products[];
extern const size_t product_count;

const struct product *product_named(const char *name); /* NULL: none */

#endif
