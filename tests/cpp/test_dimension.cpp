#include <set>
#include <string_view>

#include <doctest/doctest.h>

#include "heatmatch/base/dimension.hpp"

using heatmatch::Dimension;

TEST_CASE("every dimension has a name of its own") {
    std::set<std::string_view> names;
    const int last = static_cast<int>(Dimension::air_changes);
    for (int d = 0; d <= last; ++d) {
        const std::string_view name = heatmatch::describe(static_cast<Dimension>(d));
        CHECK(name != "a number");
        names.insert(name);
    }
    CHECK(names.size() == static_cast<std::size_t>(last) + 1);
}
