#pragma once

#include <span>
#include <string>
#include <string_view>

#include "heatmatch/base/field.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/heat/bed_charge.hpp"
#include "heatmatch/parts/medium.hpp"
#include "heatmatch/setting/store.hpp"

namespace heatmatch {

/// Remedy for a number, created only if the number is rejected.
using Remedy = Sentence (*)();

/// Throws InvalidInput unless a number is finite and within its range.
void require_number(std::string_view part, const char* field, double value, const Unit& unit,
                    const Range& range, Remedy remedy);

/// Remedy with the conductivity of dry sand.
[[nodiscard]] Sentence dry_sand_has();

/// The same for those fields of a record, against their table.
void require_fields(std::span<const Field> fields, const void* record, const std::string& part,
                    std::span<const std::string_view> names);

/// Throws InvalidInput for a number of a fill without meaning.
void check_fill(const Medium& medium);

/// Throws InvalidInput for a size, emissivity or heat loss of a store without meaning.
void check_store_sizes(const Store& store);

/// Throws InvalidInput for a number of a charge, or its power, without meaning.
void check_bed_charge(const BedCharge& charge, double power_w);

/// Throws InvalidInput for a sheath limit without meaning.
void check_sheath_limit(double limit_c);

}  // namespace heatmatch
