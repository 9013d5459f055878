#include "dice.hpp"
#include "refusal.hpp"
#include "two_circuits.hpp"
#include "unlike_circuits.hpp"
#include "within.hpp"

#include <algorithm>
#include <map>
#include <set>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/margins/element_margins.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"

using heatmatch::Candidate;
using heatmatch::Margin;
using heatmatch::Severity;

namespace {

const Margin* judged_margin(const Candidate& candidate, const std::string& name,
                            const std::string& subject) {
    const auto& margins = candidate.margins();
    const auto found = std::find_if(margins.begin(), margins.end(), [&](const Margin& margin) {
        return margin.name == name && margin.subject == subject;
    });
    return found == margins.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("elements in one string have no survivors, in branches they do") {
    const Candidate string = unlike_candidate("rod-a + rod-b");
    for (const char* rod : {"element \"rod-a\"", "element \"rod-b\""}) {
        CHECK(judged_margin(string, "survivor sheath", rod)->severity == Severity::none);
        CHECK_FALSE(judged_margin(string, "survivor sheath", rod)->value);
    }
    const Candidate branches = unlike_candidate("rod-a | rod-c");
    const Margin* left = judged_margin(branches, "survivor sheath", "element \"rod-c\"");
    REQUIRE(left != nullptr);
    REQUIRE(left->value);
    CHECK(*judged_margin(branches, "survivor power", "element \"rod-c\"")->value ==
          branches.bright.elements[1].with_open_w[0]);
}
