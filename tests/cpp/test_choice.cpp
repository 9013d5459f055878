#include "refusal.hpp"

#include <set>
#include <string>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/match/candidate/bill.hpp"
#include "heatmatch/match/candidate/code_duties.hpp"
#include "heatmatch/match/candidate/wire_check.hpp"
#include "heatmatch/match/rank/alternative.hpp"
#include "heatmatch/operation/calibration/store_log.hpp"
#include "heatmatch/operation/days/day.hpp"
#include "heatmatch/operation/diagnosis/diagnosis.hpp"
#include "heatmatch/parts/parts.hpp"
#include "heatmatch/setting/installation.hpp"
#include "heatmatch/solar/datasheet_fit.hpp"
#include "heatmatch/solar/plane_irradiance.hpp"
#include "heatmatch/solar/vector_width.hpp"

namespace {

/// How the compiler spells a number of an enum: `heatmatch::Plating::tin`, or a cast of it where no
/// enumerator has it.
template <class Kind, Kind number>
std::string_view spelled() {
    std::string_view text = __PRETTY_FUNCTION__;
    text.remove_prefix(text.rfind("number = ") + 9);
    return text.substr(0, text.find_first_of(";]"));
}

template <class Kind, int... Number>
std::vector<std::string> enumerators(std::integer_sequence<int, Number...>) {
    std::vector<std::string> names;
    for (const std::string_view text : {spelled<Kind, static_cast<Kind>(Number)>()...}) {
        if (text.front() == '(') break;
        names.emplace_back(text.substr(text.rfind(':') + 1));
    }
    return names;
}

/// A word as an enumerator is written: `open_air` for `open air`.
std::string written(std::string_view word) {
    std::string name;
    for (const char c : word) {
        const bool kept = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        const bool capital = c >= 'A' && c <= 'Z';
        name += kept ? c : capital ? static_cast<char>(c - 'A' + 'a') : '_';
    }
    return name;
}

template <heatmatch::Choice Kind>
void check_words() {
    constexpr int more_than_any = 64;
    const auto words = words_of(Kind{});
    const auto names = enumerators<Kind>(std::make_integer_sequence<int, more_than_any>{});
    CAPTURE(names.front());
    REQUIRE(names.size() == words.size());
    std::set<std::string_view> different(words.begin(), words.end());
    CHECK(different.size() == words.size());
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto kind = static_cast<Kind>(i);
        CHECK(names[i] == written(words[i]));
        CHECK(heatmatch::word_of(kind) == words[i]);
        CHECK((heatmatch::find_choice<Kind>(words[i]) == kind));
        CHECK((heatmatch::read_choice<Kind>(words[i], "part", "field") == kind));
    }
    CHECK(heatmatch::word_of(static_cast<Kind>(words.size())).empty());
    CHECK(heatmatch::word_of(static_cast<Kind>(-1)).empty());
    CHECK(heatmatch::word_of(std::optional<Kind>{}).empty());
    CHECK_FALSE(heatmatch::find_choice<Kind>("").has_value());
}

template <heatmatch::Choice... Kinds>
void check_choices() {
    (check_words<Kinds>(), ...);
}

}  // namespace

TEST_CASE("every choice has a word for each enumerator, in their order") {
    using namespace heatmatch;
    check_choices<Technology, ConductorMetal, Plating, ResetKind, FailureKind, OperatedKind,
                  DetectedFault, ConnectorPlace, MediumForm, SourceKind>();
    check_choices<StoreShape, StorePlace, heatmatch::StandsOn, StoreTerminals, StoreMaterial,
                  Carried, SurroundingsKind, Duty, SensedPlace, WiringCode, LayingMethod,
                  ArrayPlace, Earthing>();
    check_choices<Answer, AlternativeKind, BillState, DutyMeans, Severity, WirePart, FitMode,
                  ResistanceBasis, ConductivityEnd, VectorWidth>();
    check_choices<SwitchCase, SwitchAction, BedModel, ProbePlace, FaultKind, UnitSystem,
                  SkyModel>();
}

TEST_CASE("a word that no choice has is refused with the nearest") {
    const std::string message = refusal_of([] {
        static_cast<void>(
            heatmatch::read_choice<heatmatch::SurroundingsKind>("Bed", "run \"tail\"", "kind"));
    });
    CHECK(message ==
          "run \"tail\": kind = \"Bed\" must be open air, sunlit, conduit, bed, cavity or buried; "
          "did "
          "you mean \"bed\"?");
}

TEST_CASE("a number that no enumerator has is refused where the record is checked") {
    heatmatch::Surroundings around{.kind = static_cast<heatmatch::SurroundingsKind>(7)};
    CHECK(
        holds(refusal_of([&] {
                  heatmatch::check_record(heatmatch::surroundings_fields(), &around, "run");
              }),
              "run: kind = \"choice 7\" must be open air, sunlit, conduit, bed, cavity or buried"));
    heatmatch::Store store{.medium = "sand", .shape = heatmatch::StoreShape::box};
    store.stands = static_cast<heatmatch::StorePlace>(-2);
    CHECK(holds(
        refusal_of([&] { heatmatch::check_record(heatmatch::store_fields(), &store, "store"); }),
        "store: stands = \"choice -2\" must be in space or outside"));
}
