#include <algorithm>
#include <set>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/shown_word.hpp"
#include "heatmatch/match/candidate/code_duties.hpp"
#include "heatmatch/operation/days/day.hpp"
#include "heatmatch/operation/diagnosis/diagnosis.hpp"
#include "heatmatch/parts/control.hpp"
#include "heatmatch/parts/store_material.hpp"
#include "heatmatch/parts/wire.hpp"
#include "heatmatch/parts/wire_kind.hpp"
#include "heatmatch/setting/device.hpp"

using heatmatch::shown_choice;
using heatmatch::shown_word;
using heatmatch::shown_words;
using heatmatch::ShownWord;

namespace {

template <heatmatch::Choice... Kinds>
std::set<std::string_view> words_of_choices() {
    std::set<std::string_view> all;
    (all.insert(words_of(Kinds{}).begin(), words_of(Kinds{}).end()), ...);
    return all;
}

}  // namespace

TEST_CASE("each word that is shown otherwise is the word of a choice") {
    using namespace heatmatch;
    const auto all = words_of_choices<StoreMaterial, ConductorMetal, WireKind, Duty, DetectedFault,
                                      SwitchCase, WiringCode, DutyMeans, FaultKind>();
    for (const ShownWord& known : shown_words()) {
        CAPTURE(known.word);
        CHECK(all.contains(known.word));
        CHECK_FALSE(all.contains(known.shown));
        CHECK(known.shown != known.word);
    }
}

TEST_CASE("words without another form are shown as they are") {
    CHECK(shown_choice(heatmatch::Duty::breaks_dc) == "interrupts DC");
    CHECK(shown_choice(heatmatch::Duty::senses_only) == "senses only");
    CHECK(shown_choice(std::optional<heatmatch::StoreMaterial>{}).empty());
    CHECK(shown_word("silicone") == "silicone");
}
