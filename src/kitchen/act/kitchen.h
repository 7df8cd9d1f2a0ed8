/*
 * kitchen.h - all of the kitchen.
 */
#ifndef STILLROOM_KITCHEN_ACT_KITCHEN_H
#define STILLROOM_KITCHEN_ACT_KITCHEN_H

#include "kitchen/act/undo.h"
#include "kitchen/board/board.h"
#include "kitchen/board/book.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/canner.h"
#include "kitchen/file/open_kitchen.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/recipe/own.h"
#include "kitchen/stock/stock.h"
#include "kitchen/work/work.h"

#endif
