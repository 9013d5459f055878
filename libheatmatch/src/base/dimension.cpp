#include "heatmatch/base/dimension.hpp"

namespace heatmatch {

std::string_view describe(Dimension dimension) {
    switch (dimension) {
        case Dimension::ratio:
            return "a ratio";
        case Dimension::count:
            return "a count";
        case Dimension::voltage:
            return "a voltage";
        case Dimension::current:
            return "a current";
        case Dimension::resistance:
            return "a resistance";
        case Dimension::power:
            return "a power";
        case Dimension::energy:
            return "an energy";
        case Dimension::temperature:
            return "a temperature";
        case Dimension::temperature_difference:
            return "a temperature difference";
        case Dimension::length:
            return "a length";
        case Dimension::area:
            return "an area";
        case Dimension::volume:
            return "a volume";
        case Dimension::density:
            return "a density";
        case Dimension::conductivity:
            return "a thermal conductivity";
        case Dimension::heat_transfer:
            return "a heat transfer coefficient";
        case Dimension::heat_capacity:
            return "a heat capacity";
        case Dimension::thermal_mass:
            return "a heat capacity of a whole body";
        case Dimension::irradiation:
            return "an irradiation";
        case Dimension::irradiance:
            return "an irradiance";
        case Dimension::time:
            return "a time";
        case Dimension::angle:
            return "an angle";
        case Dimension::money:
            return "an amount of money";
        case Dimension::relative_per_kelvin:
            return "a relative temperature coefficient";
        case Dimension::voltage_per_kelvin:
            return "a voltage per kelvin";
        case Dimension::current_per_kelvin:
            return "a current per kelvin";
        case Dimension::power_per_kelvin:
            return "a power per kelvin";
        case Dimension::power_per_length:
            return "a power per length";
        case Dimension::resistance_per_length:
            return "a resistance per length";
        case Dimension::speed:
            return "a speed";
        case Dimension::air_changes:
            return "an air change rate";
    }
    return "a number";
}

}  // namespace heatmatch
