/*
 * statement_text.c - the text of a statement, with the columns of its tables written out.
 *
 * In the texts of src/log/query/statements.c
 *   {jar}         is every column of a jar that is read, in the order of its descriptor;
 *   {insert jar}  writes a new row, {update jar} the row of that id: the values in the
 *                 same order, then those worked out by hand, the id last;
 *   {open load}   is what the loads that are open are looked for in: FROM ... WHERE ...;
 *   {jars of load}  finds the ids of the jars that came of load ?1;
 *   {holds}, {lots}  are what the work of a work_line holds, by the table of whatever kind it is.
 */
#include <string.h>

#include "base/text.h"
#include "log/query/query.h"

static const struct log_table *table_of(const struct log *log, const char *name, size_t length)
{
	for (size_t i = 0; i < log->table_count; i++) {
		const char *table = log->tables[i]->table;

		if (strncmp(table, name, length) == 0 && table[length] == '\0')
			return log->tables[i];
	}
	return NULL;
}

void column_selected(struct text *sql, const struct log_table *table, const struct log_column *column)
{
	if (column->sql != NULL)
		text_add(sql, "%s", column->sql);
	else
		text_add(sql, "%s.%s", table->table, column->column);
}

static void add_read(struct text *sql, const struct log_table *table)
{
	const char *comma = "";

	for (size_t i = 0; i < table->column_count; i++) {
		if (table->columns[i].size == 0)
			continue;
		text_add(sql, "%s", comma);
		column_selected(sql, table, &table->columns[i]);
		comma = ", ";
	}
}

static bool is_written(const struct log_column *column, bool by_hand)
{
	return column->column != NULL && (by_hand ? column->by_hand : column->size != 0);
}

/* All that is written but the key: the names, if asked for, and `value` behind each. */
static void add_written(struct text *sql, const struct log_table *table, bool named, const char *value)
{
	const char *comma = "";

	for (int by_hand = 0; by_hand <= 1; by_hand++)
		for (size_t i = 1; i < table->column_count; i++) {
			const struct log_column *column = &table->columns[i];

			if (!is_written(column, by_hand == 1))
				continue;
			text_add(sql, "%s%s%s", comma, named ? column->column : "", value);
			comma = ", ";
		}
}

static void add_insert(struct text *sql, const struct log_table *table)
{
	text_add(sql, "INSERT INTO %s (", table->table);
	add_written(sql, table, true, "");
	text_add(sql, ", %s) VALUES (", table->columns[0].column);
	add_written(sql, table, false, "?");
	text_add(sql, ", ?)");
}

static void add_update(struct text *sql, const struct log_table *table)
{
	text_add(sql, "UPDATE %s SET ", table->table);
	add_written(sql, table, true, " = ?");
	text_add(sql, " WHERE %s = ?", table->columns[0].column);
}

/* From the few that are looked for: at a station, or what else says that it is open. */
static void add_open(struct text *sql, const struct log_table *table)
{
	const char *name = table->table;

	if (table->open == NULL)
		text_add(sql, "FROM work CROSS JOIN %s ON %s.id = work.id WHERE work.at_station = 1", name, name);
	else
		text_add(sql, "FROM %s CROSS JOIN work ON work.id = %s.id WHERE %s", name, name, table->open);
}

static void add_jars(struct text *sql, const struct log_table *table)
{
	text_add(sql, "%s", table->jars != NULL ? table->jars : "SELECT id FROM jar WHERE id = 0 * ?1");
}

/* '' where the tables of all kinds say nothing. */
static void add_of_works(struct text *sql, const struct log *log, bool lots)
{
	text_add(sql, "coalesce(");
	for (size_t i = 0; i < log->table_count; i++) {
		const char *said = lots ? log->tables[i]->lots : log->tables[i]->holds;

		if (said != NULL)
			text_add(sql, "%s, ", said);
	}
	text_add(sql, "'')");
}

static bool is_words(const char *words, const char *at, size_t length)
{
	return strlen(words) == length && strncmp(words, at, length) == 0;
}

/* What stands between two braces; false: no such table. */
static bool add_columns(const struct log *log, struct text *sql, const char *words, size_t length)
{
	static const struct {
		const char *verb;
		void (*add)(struct text *sql, const struct log_table *table);
	} verbs[] = { { "insert ", add_insert },
		      { "update ", add_update },
		      { "open ", add_open },
		      { "jars of ", add_jars },
		      { "", add_read } };

	if (is_words("holds", words, length) || is_words("lots", words, length)) {
		add_of_works(sql, log, *words == 'l');
		return true;
	}
	for (size_t i = 0; i < sizeof(verbs) / sizeof(verbs[0]); i++) {
		size_t verb = strlen(verbs[i].verb);
		const struct log_table *table;

		if (length < verb || strncmp(words, verbs[i].verb, verb) != 0)
			continue;
		table = table_of(log, words + verb, length - verb);
		if (table != NULL)
			verbs[i].add(sql, table);
		return table != NULL;
	}
	return false;
}

bool statement_expand(const struct log *log, const char *at, char *buffer, size_t size)
{
	struct text sql = text_over(buffer, size);

	for (const char *open; (open = strchr(at, '{')) != NULL;) {
		const char *close = strchr(open, '}');

		text_add(&sql, "%.*s", (int)(open - at), at);
		if (close == NULL || !add_columns(log, &sql, open + 1, (size_t)(close - open - 1)))
			return false;
		at = close + 1;
	}
	text_add(&sql, "%s", at);
	return !sql.cut;
}

bool statement_write(const struct log *log, enum statement which, char *buffer, size_t size)
{
	return statement_expand(log, statement_text[which], buffer, size);
}
