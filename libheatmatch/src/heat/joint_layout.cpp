#include "heatmatch/heat/joint_layout.hpp"

#include "base/sentences.hpp"
#include "heat_input.hpp"
#include "leg_width.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using base_sentences::from_memory;
using heat_sentences::say;

namespace {

constexpr double default_leg_spacing_mm = 50.0;
constexpr double default_element_spacing_mm = 60.0;
constexpr int most_elements = 10000;
constexpr std::size_t most_legs = 1000;  // time for the layout grows with the square
constexpr double clearance_m = 0.02;     // below and above legs of unknown number, from memory

/// Legs that belong to one element, side by side.
struct Row {
    std::size_t bank = 0;
    int legs = 1;
    double leg_m = 0.0;     //!< between its legs
    double beside_m = 0.0;  //!< to the next element

    [[nodiscard]] double width_m() const { return (legs - 1) * leg_m; }
};

double to_next_m(const Row& row, const Row& next) {
    return row.bank == next.bank ? row.beside_m : std::max(row.beside_m, next.beside_m);
}

/// `columns` rows in a line, lines one behind the other, the whole centered; by bank.
std::vector<std::vector<LegLayout::Leg>> laid_out(std::span<const Row> rows, std::size_t banks,
                                                  std::size_t columns) {
    std::vector<std::vector<LegLayout::Leg>> legs(banks);
    const std::size_t lines = (rows.size() + columns - 1) / columns;
    double line_m = 0.0;
    for (const Row& row : rows) line_m = std::max(line_m, row.beside_m);
    for (std::size_t line = 0; line < lines; ++line) {
        const std::size_t first = line * columns;
        const std::size_t last = std::min(first + columns, rows.size());
        double width_m = 0.0;
        for (std::size_t i = first; i < last; ++i) {
            width_m += rows[i].width_m() + (i + 1 < last ? to_next_m(rows[i], rows[i + 1]) : 0.0);
        }
        double left_m = -0.5 * width_m;
        const double y_m =
            (static_cast<double>(line) - 0.5 * static_cast<double>(lines - 1)) * line_m;
        for (std::size_t i = first; i < last; ++i) {
            for (int j = 0; j < rows[i].legs; ++j) {
                legs[rows[i].bank].push_back({.x_m = left_m + j * rows[i].leg_m, .y_m = y_m});
            }
            left_m += rows[i].width_m() + (i + 1 < last ? to_next_m(rows[i], rows[i + 1]) : 0.0);
        }
    }
    return legs;
}

Amount in_mm(double metres) {
    return {1000.0 * metres, unit::millimetre, 4};
}

Sentence overlap_of(double apart_m, double thick_m) {
    if (apart_m >= thick_m) return {};
    return say<"heat.legs_overlap">(with<"apart">(in_mm(apart_m)), with<"thick">(in_mm(thick_m)));
}

bool all_stand(std::span<const LegLayout> layouts, const StoreShell& shell) {
    return std::all_of(layouts.begin(), layouts.end(),
                       [&](const LegLayout& each) { return each.may_stand(shell); });
}

bool all_lie(std::span<const LegLayout> layouts, const StoreShell& shell) {
    return std::all_of(layouts.begin(), layouts.end(),
                       [&](const LegLayout& each) { return each.may_lie(shell); });
}

bool all_fit(std::span<const LegLayout> layouts, const StoreShell& shell) {
    return all_stand(layouts, shell) || all_lie(layouts, shell);
}

double outer_m(std::span<const LegLayout> layouts) {
    double outer = 0.0;
    for (const LegLayout& each : layouts) outer = std::max(outer, each.outer_radius_m());
    return outer;
}

Sentence misfit_of(std::span<const LegLayout> layouts, const StoreShell& shell) {
    if (all_fit(layouts, shell)) return {};
    double length = 0.0;
    double count = 0.0;
    LegLayout::Leg half;
    for (const LegLayout& each : layouts) {
        length = std::max(length, each.leg_length_m);
        count += static_cast<double>(each.legs.size());
        const auto [x, y] = half_across(each.legs, each.radius_m);
        half = {std::max(half.x_m, x), std::max(half.y_m, y)};
    }
    if (length > shell.height_m && length > shell.length_m) {
        return say<"heat.legs_too_long">(with<"length">(in_mm(length)),
                                         with<"height">(in_mm(shell.height_m)),
                                         with<"width">(in_mm(shell.length_m)));
    }
    const Amount width = in_mm(shell.length_m);
    return say<"heat.legs_do_not_fit">(
        with<"count">(count), with<"length">(in_mm(length)), with<"across">(in_mm(2.0 * half.x_m)),
        with<"deep">(in_mm(2.0 * half.y_m)),
        with<"inside">(shell.round
                           ? say<"heat.round_inside">(with<"width">(width))
                           : say<"heat.box_inside">(with<"width">(width),
                                                    with<"depth">(in_mm(2.0 * shell.radius_m)))),
        with<"height">(in_mm(shell.height_m)));
}

void check_bank(const BankInStore& bank, const std::string& title) {
    const std::vector<std::string> missing = missing_lengths(bank.element);
    if (!missing.empty()) {
        throw InvalidInput({.part = title,
                            .field = missing.front(),
                            .value = "not given",
                            .allowed = "> 0 mm",
                            .remedy = say<"heat.measure_element">()});
    }
    constexpr auto used = std::to_array<std::string_view>(
        {"sheath_diameter_mm", "heated_length_mm", "legs", "leg_spacing_mm"});
    require_fields(element_fields(), &bank.element, title, used);
    if (bank.elements >= 1 && bank.elements <= most_elements) return;
    throw InvalidInput(
        {.part = title,
         .field = "elements",
         .value = std::to_string(bank.elements),
         .allowed = bank.elements < 1 ? "at least 1" : "at most " + std::to_string(most_elements),
         .remedy = say<"heat.how_many">()});
}

/// The layout of a bank without positions, and its rows.
struct Begun {
    LegLayout layout{};
    std::vector<Row> rows{};
};

Begun begin_bank(const BankInStore& bank, std::size_t index, bool alone, const Store& store,
                 const StoreShell& shell) {
    const Element& element = bank.element;
    const std::string title = "element \"" + element.id + '"';
    check_bank(bank, title);
    Begun begun;
    LegLayout& layout = begun.layout;
    layout.sheath_radius_m = *element.sheath_diameter_mm / 2000.0;
    layout.radius_m =
        std::max(layout.sheath_radius_m, store.spreader_diameter_mm.value_or(0.0) / 2000.0);
    const double heated_m = *element.heated_length_mm / 1000.0;
    int row = element.legs.value_or(1);
    if (!element.legs) {
        const double longest_m = std::max(shell.height_m, shell.length_m) - 2.0 * clearance_m;
        row = std::max(1, static_cast<int>(std::ceil(heated_m / std::max(longest_m, clearance_m))));
        layout.assumed.push_back({title, "legs", sentence_of(Amount{static_cast<double>(row)}),
                                  say<"heat.as_store_needs">()});
    }
    layout.leg_length_m = heated_m / row;
    const double leg_mm = element.leg_spacing_mm.value_or(default_leg_spacing_mm);
    if (row > 1 && !element.leg_spacing_mm) {
        layout.assumed.push_back({title, "leg_spacing_mm",
                                  sentence_of(Amount{leg_mm, unit::millimetre, 6}), from_memory()});
    }
    double beside_mm = store.element_spacing_mm.value_or(default_element_spacing_mm);
    if ((bank.elements > 1 || !alone) && !store.element_spacing_mm) {
        layout.assumed.push_back({"store", "element_spacing_mm",
                                  sentence_of(Amount{beside_mm, unit::millimetre, 6}),
                                  from_memory()});
    }
    int rows = bank.elements;
    if (!element.legs) {  // legs may be bent freely: single legs on a grid
        rows = bank.elements * row;
        beside_mm = std::min(leg_mm, beside_mm);
        row = 1;
    }
    const auto legs = static_cast<std::size_t>(rows) * static_cast<std::size_t>(row);
    if (legs > most_legs) {
        layout.misfit = say<"heat.too_many_legs">(with<"bundles">(rows), with<"row">(row),
                                                  with<"most">(static_cast<double>(most_legs)));
        return begun;
    }
    const double thick_m = 2.0 * layout.radius_m;
    if (row > 1) layout.misfit = overlap_of(leg_mm / 1000.0, thick_m);
    if (rows > 1 && layout.misfit.empty()) {
        layout.misfit = overlap_of(beside_mm / 1000.0, thick_m);
    }
    begun.rows.assign(
        static_cast<std::size_t>(rows),
        Row{.bank = index, .legs = row, .leg_m = leg_mm / 1000.0, .beside_m = beside_mm / 1000.0});
    return begun;
}

/// Positions of the rows: the narrowest arrangement that fits, else the narrowest.
void arrange(std::vector<LegLayout>& layouts, std::span<const Row> rows, const StoreShell& shell) {
    bool any_fits = false;
    for (std::size_t columns = 1; columns <= rows.size(); ++columns) {
        std::vector<LegLayout> tried = layouts;
        auto legs = laid_out(rows, layouts.size(), columns);
        for (std::size_t i = 0; i < tried.size(); ++i) tried[i].legs = std::move(legs[i]);
        const bool now_fits = all_fit(tried, shell);
        if (any_fits && !now_fits) continue;
        if (layouts.front().legs.empty() || now_fits != any_fits ||
            outer_m(tried) < outer_m(layouts) - 1e-9) {
            layouts = std::move(tried);
            any_fits = now_fits;
        }
    }
}

/// Neighbors in a line or in the next one may belong to different banks.
Sentence overlap_between(std::span<const LegLayout> layouts, std::span<const Row> rows) {
    Sentence overlap;
    for (std::size_t i = 0; i + 1 < rows.size() && overlap.empty(); ++i) {
        if (rows[i].bank == rows[i + 1].bank) continue;
        overlap = overlap_of(to_next_m(rows[i], rows[i + 1]),
                             layouts[rows[i].bank].radius_m + layouts[rows[i + 1].bank].radius_m);
    }
    return overlap;
}

Sentence first_misfit(std::span<const LegLayout> layouts) {
    const auto found = std::find_if(layouts.begin(), layouts.end(),
                                    [](const LegLayout& each) { return !each.misfit.empty(); });
    return found == layouts.end() ? Sentence{} : found->misfit;
}

/// Moves the arranged legs aside, as stated, and sets how they are placed.
void place(std::vector<LegLayout>& layouts, const Store& store, const StoreShell& shell) {
    const double aside_m = store.from_axis_mm.value_or(0.0) / 1000.0;
    for (LegLayout& each : layouts) each.aside_m = aside_m;
    const bool may_stand = all_stand(layouts, shell);
    const bool lie = all_lie(layouts, shell) && store.element_lies.value_or(!may_stand);
    double sideways_m = aside_m;
    for (LegLayout& each : layouts) {
        each.lies = lie;
        // Horizontal legs may be nearer to an end by this distance.
        if (lie) sideways_m = std::min(sideways_m, each.room_aside_m(shell, 0.0));
    }
    for (LegLayout& each : layouts) {
        for (LegLayout::Leg& leg : each.legs) leg.x_m += sideways_m;
        if (store.element_height_mm) each.low_m = *store.element_height_mm / 1000.0;
    }
}

}  // namespace

std::vector<LegLayout> joint_layout(std::span<const BankInStore> banks, const Store& store) {
    if (banks.empty()) {
        throw InvalidInput({.part = "store",
                            .field = "elements",
                            .value = "0",
                            .allowed = "at least 1",
                            .remedy = say<"heat.how_many">()});
    }
    const StoreShell shell = store_shell(store);
    constexpr auto spacings = std::to_array<std::string_view>(
        {"element_spacing_mm", "spreader_diameter_mm", "element_height_mm", "from_axis_mm"});
    require_fields(store_fields(), &store, "store", spacings);
    std::vector<LegLayout> layouts;
    std::vector<Row> rows;
    for (std::size_t i = 0; i < banks.size(); ++i) {
        Begun begun = begin_bank(banks[i], i, banks.size() == 1, store, shell);
        const bool laid = !begun.rows.empty();
        layouts.push_back(std::move(begun.layout));
        if (!laid) {
            return std::vector<LegLayout>(banks.size(), layouts.back());
        }
        rows.insert(rows.end(), begun.rows.begin(), begun.rows.end());
    }
    const Sentence apart = first_misfit(layouts);
    arrange(layouts, rows, shell);
    place(layouts, store, shell);
    Sentence misfit = apart.empty() ? overlap_between(layouts, rows) : apart;
    if (misfit.empty()) misfit = misfit_of(layouts, shell);
    for (LegLayout& each : layouts) {
        each.misfit = misfit;
        each.from_hottest_m = each.distances_m();
    }
    return layouts;
}

}  // namespace heatmatch
