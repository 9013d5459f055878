#pragma once

#include "dice.hpp"

#include <string>
#include <vector>

#include "heatmatch/setting/installation.hpp"

/// A random installation with an existing circuit. Every part is inline and every field is stated,
/// so that a test can remove one fact and see what its absence changes. A fact with a careful end
/// lies between that end and the opposite one.
[[nodiscard]] heatmatch::Installation random_yard(Dice& dice);

/// Adds a random control in a random run, mostly with a duty that suits its kind.
void add_random_device(heatmatch::Installation& yard, Dice& dice, const std::string& id);

/// Adds an overtemperature limit and the contactor that it drives. Random devices rarely form such
/// a pair, so the margins of a limit would hardly be tested.
void add_limit_that_opens(heatmatch::Installation& yard, Dice& dice);

/// One record of an installation or of its parts, with its field table, so that a test can change
/// any field by name.
struct YardRecord {
    std::string name{};  //!< `store`, `wire`
    std::span<const heatmatch::Field> fields{};
    void* record = nullptr;
};

/// All records of an installation that margins may read.
[[nodiscard]] std::vector<YardRecord> records_of(heatmatch::Installation& yard);
