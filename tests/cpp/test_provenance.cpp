#include <doctest/doctest.h>

#include "heatmatch/base/provenance.hpp"

using heatmatch::Price;

TEST_CASE("a typical price is the middle of its ends, or the one there is") {
    CHECK(*Price{.low = 20.0, .high = 50.0}.typical() == 35.0);
    CHECK(*Price{.low = 20.0}.typical() == 20.0);
    CHECK(*Price{.high = 50.0}.typical() == 50.0);
    CHECK_FALSE(Price{}.typical());
}
