/*
 * packed.h - packages that were made out of pots, as they are selected.
 */
#ifndef STILLROOM_LOG_QUERY_PACKED_H
#define STILLROOM_LOG_QUERY_PACKED_H

/* What was spread on trays out of the pots of `batches`, a FROM with a batch b, and packed. */
#define DRIED_OUT_OF(batches) \
	" UNION SELECT p.id FROM " batches " CROSS JOIN drying d ON d.batch_id = b.id " \
	"CROSS JOIN jar p ON p.drying_id = d.id WHERE "

/* The same out of pots of another log, of which the lots `l` alone came in. */
#define DRIED_FROM(lots) \
	" UNION SELECT p.id FROM " lots " CROSS JOIN drying d ON d.pot_lot_id = l.id " \
	"CROSS JOIN jar p ON p.drying_id = d.id WHERE "

#endif
