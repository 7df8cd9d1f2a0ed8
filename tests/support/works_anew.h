/*
 * works_anew.h - SQL that works out the lines of all loads, runs and batches and their
 * words at once, for a history that was written past the acts.
 */
#ifndef STILLROOM_TESTS_WORKS_ANEW_H
#define STILLROOM_TESTS_WORKS_ANEW_H

#define WORKS_ANEW \
	"DELETE FROM work_stale;" \
	"INSERT INTO work SELECT * FROM work_of_load;" \
	"INSERT INTO work SELECT * FROM work_of_run;" \
	"INSERT INTO work SELECT * FROM work_of_batch;" \
	"INSERT INTO work_product SELECT work.id, product_of_load.product, season, jars, broken, looked, failed" \
	" FROM product_of_load JOIN work ON work.kind = 'load' AND work.ref = load_id;" \
	"INSERT INTO work_words (rowid, product, lot, dates, words, marks)" \
	" SELECT id, product, lot, dates, words, marks FROM work_text ORDER BY id;"

#endif
