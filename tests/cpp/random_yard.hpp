#pragma once

#include "dice.hpp"

#include <string>
#include <vector>

#include "heatmatch/setting/installation.hpp"

/// A random installation whose circuit stands: every part of it inline, and everything stated that
/// a field can state, facts with a careful end between their kind and that end.
[[nodiscard]] heatmatch::Installation random_yard(Dice& dice);

/// Puts a random control in a random place, mostly in a duty of its kind.
void add_random_device(heatmatch::Installation& yard, Dice& dice, const std::string& id);

/// Puts a limit and the contactor that it drives: drawn one by one they seldom meet.
void add_limit_that_opens(heatmatch::Installation& yard, Dice& dice);

/// One record of an installation or of its parts, reached by its field table.
struct YardRecord {
    std::string name{};  //!< `store`, `wire`
    std::span<const heatmatch::Field> fields{};
    void* record = nullptr;
};

/// Every record of a yard that margins may read.
[[nodiscard]] std::vector<YardRecord> records_of(heatmatch::Installation& yard);
