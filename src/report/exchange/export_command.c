/*
 * export_command.c - "stillroom export".
 */
#include <string.h>

#include "base/text.h"
#include "kitchen/exchange/tables.h"
#include "kitchen/file/open_day.h"
#include "report/cli/command.h"
#include "report/cli/plain.h"
#include "report/exchange/export.h"
#include "report/out/answer.h"
#include "report/out/out_file.h"

enum format { FORMAT_CSV, FORMAT_JSON, FORMAT_ICS };

static bool read_format(const struct arguments *arguments, enum format *format, struct fault *fault)
{
	static const char *const names[] = { "csv", "json", "ics" };
	size_t i = 0;

	while (i < sizeof(names) / sizeof(names[0]) && strcmp(names[i], arguments->operand) != 0)
		i++;
	if (i == sizeof(names) / sizeof(names[0]))
		return fault_set(fault, FAULT_MISUSE, "\"%s\" is not csv, json or ics", arguments->operand);
	*format = (enum format)i;
	if (*format != FORMAT_CSV && arguments->given[OPTION_TABLE])
		return fault_set(fault, FAULT_MISUSE, "--table goes with csv");
	if (*format != FORMAT_JSON && arguments->given[OPTION_SCHEMA])
		return fault_set(fault, FAULT_MISUSE, "--schema goes with json");
	return true;
}

static bool find_table(const char *name, const struct log_table **table, struct fault *fault)
{
	char names[FAULT_SENTENCE_MAX];
	struct text text = TEXT_OVER(names);

	*table = tables_named(name);
	if (*table != NULL)
		return true;
	for (size_t i = 0; i < tables_count(); i++)
		text_add(&text, "%s%s", i > 0 ? ", " : "", tables_at(i)->name);
	return fault_set(fault, FAULT_MISUSE, "there is no table \"%.40s\": %s", name, names);
}

static bool write_one(FILE *out, struct day *day, enum format format, const struct log_table *table,
                      struct fault *fault)
{
	switch (format) {
	case FORMAT_CSV: return export_csv(out, day, table, fault);
	case FORMAT_JSON: return export_json(out, day, fault);
	case FORMAT_ICS: break;
	}
	return export_calendar(out, day, fault);
}

/* To standard output, or into a file that is there whole or not at all. */
static bool put_one(FILE *out, const char *path, bool replace, struct day *day, enum format format,
                    const struct log_table *table, struct fault *fault)
{
	struct out_file file;

	if (path == NULL)
		return write_one(out, day, format, table, fault);
	if (!out_open(&file, path, replace, fault))
		return false;
	if (write_one(file.stream, day, format, table, fault))
		return out_close(&file, fault);
	out_abandon(&file);
	return false;
}

static bool table_path(const char *folder, const struct log_table *table, char *path, size_t size, struct fault *fault)
{
	struct text text = text_over(path, size);

	text_add(&text, "%s/%s.csv", folder, table->name);
	return !text.cut || fault_set(fault, FAULT_IO, "the path of the file is too long");
}

static bool put_folder(FILE *out, const char *folder, bool replace, struct day *day, struct fault *fault)
{
	char path[OUT_PATH_BYTES];

	if (!out_folder(folder, fault))
		return false;
	for (size_t i = 0; !replace && i < tables_count(); i++)
		if (!table_path(folder, tables_at(i), path, sizeof(path), fault) || !out_is_free(path, fault))
			return false;
	for (size_t i = 0; i < tables_count(); i++)
		if (!table_path(folder, tables_at(i), path, sizeof(path), fault) ||
		    !put_one(out, path, replace, day, FORMAT_CSV, tables_at(i), fault))
			return false;
	(void)fprintf(out, "%zu tables in ", tables_count());
	plain_put(out, folder);
	(void)fputc('\n', out);
	return true;
}

static bool put_all(FILE *out, const struct arguments *arguments, enum format format, const struct log_table *table,
                    struct day *day, struct fault *fault)
{
	const char *path = arguments->value[OPTION_OUT];
	bool replace = arguments->given[OPTION_YES];
	bool done;

	if (format == FORMAT_ICS) /* from the board, which is of one instant anyway */
		return put_one(out, path, replace, day, format, NULL, fault);
	if (!tables_begin(day_kitchen(day), fault))
		return false;
	if (format == FORMAT_CSV && table == NULL)
		done = put_folder(out, path, replace, day, fault);
	else
		done = put_one(out, path, replace, day, format, table, fault);
	tables_end(day_kitchen(day));
	return done;
}

/* `table`: NULL for all of them. */
static bool read_words(const struct arguments *arguments, enum format *format, const struct log_table **table,
                       struct fault *fault)
{
	*table = NULL;
	if (!read_format(arguments, format, fault))
		return false;
	if (arguments->given[OPTION_TABLE] && !find_table(arguments->value[OPTION_TABLE], table, fault))
		return false;
	return *format != FORMAT_CSV || *table != NULL || arguments->given[OPTION_OUT] ||
	       fault_set(fault, FAULT_MISUSE,
	                 "csv makes a file for each table: name a folder with --out, or one "
	                 "--table");
}

static bool export_command_check(const struct arguments *arguments, const struct report *to, struct fault *fault)
{
	const struct log_table *table;
	enum format format;

	(void)to;
	return read_words(arguments, &format, &table, fault);
}

/* `day` is not used for --schema and may be NULL then. */
static bool export_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	const struct log_table *table;
	enum format format;

	if (!read_words(arguments, &format, &table, fault))
		return false;
	if (arguments->given[OPTION_SCHEMA]) {
		export_schema(to->out);
		return true;
	}
	return put_all(to->out, arguments, format, table, day, fault);
}

static const struct command listed[] = {
	{
	    .word = "export",
	    .operand = "FORMAT",
	    .help = "everything in the log as csv, json or ics",
	    .more = "csv: a file for each table, in the folder that --out names, or one --table. json: one\n"
	            "document. ics: seal checks, deadlines and best-by dates for a calendar. Columns, keys and\n"
	            "rules: docs/export.md. Existing files are replaced only with --yes.\n",
	    .takes = TAKES(FILE) | TAKES(OUT) | TAKES(TABLE) | TAKES(SCHEMA) | TAKES(YES),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .without_log = TAKES(SCHEMA),
	    .check = export_command_check,
	    .run = export_command,
	},
};

const struct commands export_commands = COMMANDS(listed);
