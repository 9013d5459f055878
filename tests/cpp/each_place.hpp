#pragma once

#include <cstddef>
#include <vector>

#include <doctest/doctest.h>

/// The worst one first, in the middle and last.
template <class Thing, class Check>
void in_each_place(const Thing& worst, const Thing& harmless, const Check& check) {
    for (std::size_t place = 0; place < 3; ++place) {
        CAPTURE(place);
        std::vector<Thing> all(3, harmless);
        all[place] = worst;
        check(all);
    }
}
