/*
 * config.h - the configuration file.
 *
 *   # a comment
 *   alarm_command = "/home/me/bin/ring loud" --twice
 *   ascii  = no
 *   color = yes
 *   bell   = yes
 *   label_page   = letter
 *   label_grid   = 2x5
 *   label_margin = 12.7mm
 *   label_gap    = 2.5mm
 *   label_format = html
 *
 * One `key = value` a line; ascii = yes draws with ASCII only.  alarm_command is
 * split at blanks into a list of arguments; "double quotes" keep blanks
 * together, a backslash takes the next character as it is, inside quotes and
 * outside.  There is no shell: $, ;, |, * and ~ mean nothing.  A key may stand
 * once.  A missing file means the defaults: no alarm command, UTF-8 where the
 * terminal has it, color and bell on.  The labels' values are as in
 * engine/label/label_sheet.h.
 */
#ifndef STILLROOM_SCREEN_TERM_CONFIG_H
#define STILLROOM_SCREEN_TERM_CONFIG_H

#include <stdbool.h>
#include <stddef.h>

#include "base/fault.h"
#include "base/words.h"
#include "engine/label/label_sheet.h"

#define CONFIG_FILE_MAX 65536 /* a longer file is refused */

/* Plain data; may be copied. */
struct config {
	bool ascii;
	bool color;
	bool bell;
	struct words alarm; /* the alarm command; no words: none */
	struct label_sheet sheet;
	enum label_format label_format;
};

/* $XDG_CONFIG_HOME/stillroom/config where that variable is an absolute path,
 * else ~/.config/stillroom/config.  FAULT_MISSING when there is no home. */
bool config_path(char *out, size_t size, struct fault *fault); /* public for its test */

/*
 * Read a file over the defaults.  `path` NULL takes config_path().  A file that
 * does not exist is no error, nor is having no home.  On a fault the sentence
 * names the file and the line, and *config holds the defaults.
 */
bool config_read(struct config *config, const char *path, struct fault *fault);

/* The same from memory, public for its test; `name` is what the sentence calls it. */
bool config_read_text(struct config *config, const char *name, const char *text, size_t length, struct fault *fault);

/* What the file may say, public for its page in docs/ and the test of that. */
struct config_about {
	const char *name;
	const char *usual; /* its value where the file says nothing; "": none */
	const char *help;
};
const struct config_about *config_key(size_t n); /* from 0; NULL: there are no more */

/* The alarm command as a list that ends in NULL, pointing into *config; returns
 * its length, 0 when none is configured. */
size_t config_alarm_argv(const struct config *config, const char *argv[WORDS_MAX + 1]);

/* Of the file, how labels are set.  FAULT_IO: the file cannot be read or understood; which is
 * no fault of the words of a command line. */
bool config_labels(struct label_sheet *sheet, enum label_format *format, struct fault *fault);

#endif
