#include "heatmatch/match/candidate/rank_options.hpp"

#include "heatmatch/base/error.hpp"

namespace heatmatch {

void check_rank_options(const RankOptions& options) {
    const auto refuse = [](const char* field, std::string value, const char* allowed,
                           const char* remedy) {
        throw InvalidInput(ErrorDetail{.part = "ranking",
                                       .field = field,
                                       .value = std::move(value),
                                       .allowed = allowed,
                                       .remedy = remedy});
    };
    if (options.max_bank < 1 || options.max_bank > 64) {
        refuse("max_bank", std::to_string(options.max_bank), ">= 1 and <= 64",
               "banks of up to four elements are usual");
    }
    if (options.bank && options.bank->count() > options.max_bank) {
        refuse("bank", options.bank->label(), "of no more elements than max_bank",
               "raise max_bank, or take a smaller bank");
    }
    if (options.threads > 256) {
        refuse("threads", std::to_string(options.threads), "<= 256",
               "leave it out: as many as the machine has");
    }
    if (options.conditions.empty()) {
        refuse("conditions", "none", "at least one sun and cell temperature",
               "for example (1000, 45)");
    }
    for (const Condition& condition : options.conditions) {
        if (!(condition.irradiance_w_m2 > 0.0 && condition.irradiance_w_m2 <= 2000.0)) {
            refuse("conditions irradiance_w_m2", format_number(condition.irradiance_w_m2) + " W/m2",
                   "> 0 W/m2 and <= 2000 W/m2", "full sun is 1000 W/m2");
        }
        if (!(condition.cell_temperature_c >= -60.0 && condition.cell_temperature_c <= 110.0)) {
            refuse("conditions cell_temperature_c",
                   format_number(condition.cell_temperature_c) + " °C", ">= -60 °C and <= 110 °C",
                   "cells in full sun are 20 to 35 K above the air");
        }
    }
    if (!(options.coil_temperature_c >= 20.0 && options.coil_temperature_c <= 1200.0)) {
        refuse("coil_temperature_c", format_number(options.coil_temperature_c) + " °C",
               ">= 20 °C and <= 1200 °C", "300 °C is the default");
    }
}

}  // namespace heatmatch
