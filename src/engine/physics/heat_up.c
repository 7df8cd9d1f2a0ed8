#include "engine/physics/heat_up.h"

#include "engine/physics/boiling.h"

/* kJ for a kelvin, of what belongs to a litre in jars. */
#define WATER_KJ (0.96 * 4.18)
#define GLASS_KJ (0.4 * 0.84)
#define FOOD_KJ 3.0
#define UL_PER_L 1e6

int64_t heat_up_least_ms(const struct heat_up *load)
{
	double from_c = celsius_from_fahrenheit(load->raw_pack ? RAW_PACK_F : HOT_PACK_F);
	double rise = load->boiling_c - from_c;
	double kj = (double)load->holds_ul / UL_PER_L * (WATER_KJ + GLASS_KJ + FOOD_KJ) * rise;
	int watts = load->watts > 0 ? load->watts : HEAT_UP_WATTS;

	return rise > 0 ? (int64_t)(kj * 1e6 / watts) : 0;
}
