#include "demo.hpp"

#include <cstddef>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/answer/questions.hpp"
#include "heatmatch/answer/started.hpp"

using heatmatch::questions;
using heatmatch::UnitSystem;

TEST_CASE("every question is asked once, may stay open and has an example that is accepted") {
    for (const UnitSystem system : {UnitSystem::si, UnitSystem::us}) {
        const auto all = questions(system);
        REQUIRE(all.size() == heatmatch::question_words.size());
        for (std::size_t i = 0; i < all.size(); ++i) {
            CAPTURE(i);
            CHECK(static_cast<std::size_t>(all[i].kind) == i);
            CHECK(!all[i].ask.text(system).empty());
            CHECK(!all[i].unknown.text(system).empty());
            const auto of_example =
                heatmatch::understand(starter(), {}, {all[i].kind, all[i].example}, system);
            CAPTURE(all[i].example);
            CAPTURE(of_example.said.text(system));
            CHECK(of_example.accepted);
            CHECK(heatmatch::understand(starter(), {}, {all[i].kind, "?"}, system).accepted);
        }
    }
}

TEST_CASE("how to answer is said with the word that goes back") {
    CHECK(heatmatch::how_to_answer("back").text().find("\"back\"") != std::string::npos);
    CHECK(heatmatch::answer_like("44.1 N").text().find("44.1 N") != std::string::npos);
    CHECK(!heatmatch::ask_for_more().text().empty());
}
