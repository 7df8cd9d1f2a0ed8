/*
 * pantry_private.h - shared by the files of this room only.
 */
#ifndef STILLROOM_KITCHEN_PANTRY_PANTRY_PRIVATE_H
#define STILLROOM_KITCHEN_PANTRY_PANTRY_PRIVATE_H

#include "kitchen/act/act.h"
#include "kitchen/pantry/pantry.h"

/* The last act of the pantry or of a recall, if it bears one of two verbs. */
bool undo_kept(struct kitchen *kitchen, enum verb verb, enum verb other, char *said, size_t said_size,
               struct fault *fault);

#endif
