/*
 * judged.h - what the gate said last (src/kitchen/act/verdict.c), and where a load is, as they are selected.
 */
#ifndef STILLROOM_LOG_QUERY_JUDGED_H
#define STILLROOM_LOG_QUERY_JUDGED_H

/* Of the load or batch `id`: its verdict, why or gate. */
#define JUDGED(of, id, column, otherwise) \
	"coalesce((SELECT g." column " FROM judgement g WHERE g." of "_id = " id " AND g.jar_id IS NULL), " otherwise \
	")"

/* Of a jar: what was said of it alone, else of its load. */
#define JAR_VERDICT \
	"coalesce((SELECT g.verdict FROM judgement g WHERE g.jar_id = jar.id), " JUDGED("load", "jar.load_id", \
	                                                                                "verdict", "'open'") ")"

/* Where a load is, of load and work. */
#define LOAD_PLACE "CASE WHEN work.at_station THEN 'canner' WHEN load.shelved THEN 'shelf' ELSE 'rack' END"

#endif
