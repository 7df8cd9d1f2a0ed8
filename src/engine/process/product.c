#include "engine/process/product.h"

#include "base/text.h"

const struct product *product_named(const char *name)
{
	for (size_t i = 0; name != NULL && i < product_count; i++) {
		if (text_same_name(name, products[i].name))
			return &products[i];
	}
	return NULL;
}
