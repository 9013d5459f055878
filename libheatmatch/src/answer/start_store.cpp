#include "answer/start_draft.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace heatmatch {

using start_sentences::say;

namespace {

constexpr auto media = std::to_array<std::pair<std::string_view, std::string_view>>({
    {"sand", "dry-sand"},
    {"gravel", "dry-gravel"},
    {"basalt", "crushed-basalt"},
    {"water", "water"},
    {"soapstone", "soapstone"},
    {"concrete", "concrete"},
    {"firebrick", "fire-brick"},
    {"brick", "clay-brick"},
    {"bricks", "clay-brick"},
    {"soil", "garden-soil"},
    {"earth", "garden-soil"},
});
constexpr auto vessels = std::to_array<std::pair<std::string_view, StoreMaterial>>({
    {"steel", StoreMaterial::steel},
    {"drum", StoreMaterial::steel},
    {"barrel", StoreMaterial::steel},
    {"stainless", StoreMaterial::stainless_steel},
    {"galvanised", StoreMaterial::galvanised_steel},
    {"galvanized", StoreMaterial::galvanised_steel},
    {"aluminium", StoreMaterial::aluminium},
    {"aluminum", StoreMaterial::aluminium},
    {"copper", StoreMaterial::copper},
    {"masonry", StoreMaterial::masonry},
    {"block", StoreMaterial::masonry},
    {"wood", StoreMaterial::wood},
    {"wooden", StoreMaterial::wood},
    {"plywood", StoreMaterial::wood},
    {"plastic", StoreMaterial::polyethylene},
    {"polyethylene", StoreMaterial::polyethylene},
});
constexpr auto grounds = std::to_array<std::pair<std::string_view, StandsOn>>({
    {"concrete", StandsOn::concrete},
    {"slab", StandsOn::concrete},
    {"brick", StandsOn::concrete},
    {"soil", StandsOn::soil},
    {"earth", StandsOn::soil},
    {"ground", StandsOn::soil},
    {"gravel", StandsOn::soil},
    {"legs", StandsOn::metal_legs},
    {"wood", StandsOn::wood},
    {"wooden", StandsOn::wood},
    {"boards", StandsOn::wood},
});

/// The meaning of the last word of a list that is in an answer: wood and plastic come last.
template <class Kind, std::size_t N>
std::optional<Kind> meant(const std::array<std::pair<std::string_view, Kind>, N>& list,
                          const PlainAnswer& answer) {
    std::optional<Kind> found;
    for (const auto& [word, kind] : list) {
        if (answer.has_word(word)) found = kind;
    }
    return found;
}

std::optional<std::string> medium_of(const StartDraft& draft, const PlainAnswer& answer) {
    for (const Medium& medium : draft.parts.media) {
        if (answer.has_word(medium.id)) return medium.id;
    }
    for (const auto& [word, id] : media) {
        if (!answer.has_word(word)) continue;
        const bool sand = id == "dry-sand";
        if (sand && (answer.has_word("damp") || answer.has_word("wet"))) return "damp-sand";
        return std::string(id);
    }
    return std::nullopt;
}

/// Lengths of an answer [m]: with their unit, or all in that of the last one.
std::vector<double> lengths_of(const PlainAnswer& answer, UnitSystem system) {
    std::vector<double> lengths;
    const Unit* unit = nullptr;
    for (auto at = answer.amounts.rbegin(); at != answer.amounts.rend(); ++at) {
        if (at->has_unit && at->unit.dimension != Dimension::length) continue;
        if (at->has_unit) unit = &at->unit;
        const Unit usual = display_unit(unit::metre, system);
        lengths.insert(lengths.begin(), convert(at->value, unit ? *unit : usual, unit::metre));
    }
    return lengths;
}

Sentence size_refused(const char* name, double metres, UnitSystem system) {
    const Field& field = start_field(store_fields(), name);
    Sentence beyond = out_of_range(field, metres, say<"start.what_length">());
    constexpr double cm_per_m = 100.0;
    const bool as_cm = system == UnitSystem::si && field.range.holds(metres / cm_per_m);
    if (beyond.empty() || !as_cm) return beyond;
    return say<"start.write_unit">(with<"beyond">(std::move(beyond)),
                                   with<"example">(format_number(metres) + " cm"));
}

Amount metres_shown(double metres) {
    return {.value = metres, .unit = unit::metre, .digits = 3};
}

}  // namespace

Understanding answer_store(StartDraft& draft, const PlainAnswer& answer) {
    Store store{.notes = answer.note};
    const auto medium = medium_of(draft, answer);
    std::vector<double> sizes = lengths_of(answer, draft.system);
    const std::vector<double> volumes = answer.of(unit::cubic_metre);
    if (sizes.empty() && !volumes.empty()) {
        // A drum of that volume, half as high again as wide.
        const double across = std::cbrt(volumes.front() / (1.5 * std::numbers::pi / 4.0));
        sizes = {round_significant(across, 3), round_significant(1.5 * across, 3)};
    }
    if (!medium || (sizes.size() != 2 && sizes.size() != 3)) {
        return not_understood(draft, QuestionKind::store, answer);
    }
    store.medium = *medium;
    if (answer.has_word("dry")) store.moist = false;
    if (answer.has_word("damp") || answer.has_word("wet") || answer.has_word("moist")) {
        store.moist = true;
    }
    const std::string label = find_medium(draft.parts, *medium).label;
    store.vessel = meant(vessels, answer);
    const Sentence vessel =
        store.vessel ? say<"start.in_vessel">(with<"material">(std::string(word_of(*store.vessel))))
                     : Sentence{};
    Understanding read;
    if (sizes.size() == 2) {
        store.shape = StoreShape::cylinder;
        store.diameter_m = sizes[0];
        store.height_m = sizes[1];
        read.said = say<"start.is_cylinder">(
            with<"medium">(label), with<"diameter">(metres_shown(sizes[0])),
            with<"height">(metres_shown(sizes[1])), with<"vessel">(vessel));
    } else {
        store.shape = StoreShape::box;
        store.width_m = sizes[0];
        store.depth_m = sizes[1];
        store.height_m = sizes[2];
        read.said =
            say<"start.is_box">(with<"medium">(label), with<"width">(metres_shown(sizes[0])),
                                with<"depth">(metres_shown(sizes[1])),
                                with<"height">(metres_shown(sizes[2])), with<"vessel">(vessel));
    }
    for (const auto& [name, value] :
         {std::pair("diameter_m", store.diameter_m), std::pair("width_m", store.width_m),
          std::pair("depth_m", store.depth_m), std::pair("height_m", store.height_m)}) {
        Sentence beyond = value ? size_refused(name, *value, draft.system) : Sentence{};
        if (!beyond.empty()) return refused(std::move(beyond));
    }
    draft.made.store = std::move(store);
    return read;
}

Understanding answer_place(StartDraft& draft, const PlainAnswer& answer) {
    const bool outside = answer.has_word("outside") || answer.has_word("outdoors");
    const bool inside = answer.has_word("inside") || answer.has_word("in") ||
                        answer.has_word("greenhouse") || answer.has_word("shed") ||
                        answer.has_word("workshop");
    const auto on = meant(grounds, answer);
    if (!outside && !inside && !on) return not_understood(draft, QuestionKind::place, answer);
    if (draft.made.store) {
        if (outside || inside) {
            draft.made.store->stands = outside ? StorePlace::outside : StorePlace::in_space;
        }
        draft.made.store->stands_on = on;
    }
    const Sentence where = outside  ? say<"start.is_outside">()
                           : inside ? say<"start.is_inside">()
                                    : Sentence{};
    return {.said = say<"start.is_place">(
                with<"where">(where),
                with<"on">(on ? say<"start.on">(with<"what">(std::string(word_of(*on))))
                              : Sentence{}))};
}

Understanding answer_space(StartDraft& draft, const PlainAnswer& answer) {
    const std::vector<double> areas = answer.of(unit::square_metre);
    const std::vector<double> volumes = answer.of(unit::cubic_metre);
    if (areas.size() != 1 || volumes.size() > 1) {
        return not_understood(draft, QuestionKind::space, answer);
    }
    const Cover* cover = nullptr;
    std::vector<std::string> fitting;
    for (const Cover& one : draft.parts.covers) {
        const bool named = answer.has_word(one.id);
        std::string text = one.id + ' ' + one.label;
        for (char& c : text) c = static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
        const bool fits =
            !answer.words.empty() &&
            std::all_of(answer.words.begin(), answer.words.end(), [&text](const std::string& word) {
                return word == "of" || text.find(word) != std::string::npos;
            });
        if (!named && !fits) continue;
        if (named) fitting.clear();
        cover = &one;
        fitting.push_back(one.id);
        if (named) break;
    }
    if (fitting.size() != 1) {
        constexpr std::size_t most = 6;
        if (fitting.empty()) return not_understood(draft, QuestionKind::space, answer);
        Sentences names;
        for (std::size_t i = 0; i < std::min(most, fitting.size()); ++i) {
            names.push_back(sentence_of(Name{fitting[i]}));
        }
        return refused(say<"start.which_cover">(with<"text">(answer.text),
                                                with<"count">(static_cast<double>(fitting.size())),
                                                with<"names">(std::move(names))));
    }
    Space space{.covers = {{.cover = cover->id, .area_m2 = areas.front()}}};
    Sentence beyond = out_of_range(start_field(cover_area_fields(), "area_m2"), areas.front(),
                                   say<"start.what_area">());
    if (beyond.empty() && !volumes.empty()) {
        space.volume_m3 = volumes.front();
        beyond = out_of_range(start_field(space_fields(), "volume_m3"), volumes.front(),
                              say<"start.what_volume">());
    }
    if (!beyond.empty()) return refused(std::move(beyond));
    draft.made.space = std::move(space);
    const auto area = with<"area">(areas.front(), unit::square_metre);
    if (volumes.empty()) {
        return {.said = say<"start.is_space_open">(area, with<"cover">(cover->label))};
    }
    return {.said = say<"start.is_space">(area, with<"cover">(cover->label),
                                          with<"volume">(volumes.front(), unit::cubic_metre))};
}

Sentence out_of_range(const Field& field, double value, const Sentence& what) {
    if (std::isfinite(value) && field.range.holds(value)) return {};
    constexpr int digits = 4;
    return say<"start.out_of_range">(with<"what">(what),
                                     with<"low">(field.range.low, field.unit, digits),
                                     with<"high">(field.range.high, field.unit, digits),
                                     with<"value">(value, field.unit, digits));
}

}  // namespace heatmatch
