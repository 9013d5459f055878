#include "plan_task.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/circuit/unlike_bank.hpp"

namespace heatmatch {

namespace {

using plan_sentences::say;

[[noreturn]] void refuse_yard(const char* field, const char* allowed, Sentence remedy) {
    throw InvalidInput(ErrorDetail{.part = "installation",
                                   .field = field,
                                   .value = "(none)",
                                   .allowed = allowed,
                                   .remedy = std::move(remedy)});
}

void check_yard(const Installation& installation) {
    if (installation.panels.empty()) {
        refuse_yard("panels", "at least one entry",
                    say<"plan.list_panels">(with<"example">(
                        Name{R"({"group": "barn pair", "panel": "id", "count": 2})"})));
    }
    if (installation.elements.empty()) {
        refuse_yard("elements", "at least one entry",
                    say<"plan.list_elements">(with<"example">(Name{R"({"any": {}, "count": 4})"})));
    }
}

/// Elements that can not be bought, with the number that is owned.
std::map<std::string, int> limited_elements(const ScreenContext& banks,
                                            const Installation& installation) {
    std::map<std::string, int> limited;
    for (const Bank& bank : banks.banks) {
        int owned = 0;
        for (const AllowedElements& entry : installation.elements) {
            if (!entry.any && entry.element == bank.element.id) owned += entry.count;
        }
        const bool may_be_bought =
            std::any_of(installation.elements.begin(), installation.elements.end(),
                        [&](const AllowedElements& entry) {
                            return entry.any && may_buy(bank.element, *entry.any);
                        });
        if (!may_be_bought) limited[bank.element.id] = owned;
    }
    return limited;
}

/// Banks of unlike elements of a yard, at most: each takes as long to judge as ten of equal ones.
constexpr std::size_t most_unlike_banks = 100;

/// All banks of unlike elements that are owned, of as many elements as there are not too many of.
void add_unlike_banks(PlanTask& task) {
    for (std::size_t bank = 0; bank < task.banks.banks.size(); ++bank) {
        if (task.banks.banks[bank].hookup.count() == 1) {
            task.alone[task.banks.banks[bank].element.id] = bank;
        }
    }
    std::vector<OwnedElements> owned;
    for (const AllowedElements& entry : task.yard.elements) {
        if (entry.any || !task.alone.contains(entry.element)) continue;
        const auto same = std::find_if(owned.begin(), owned.end(), [&](const OwnedElements& known) {
            return known.element == entry.element;
        });
        if (same == owned.end()) {
            owned.push_back({.element = entry.element, .count = entry.count});
        } else {
            same->count += entry.count;
        }
    }
    task.most_in_unlike = std::min(most_planned_in_tree, task.options.max_bank);
    std::vector<Layout> layouts = unlike_banks(owned, task.most_in_unlike);
    while (layouts.size() > most_unlike_banks && task.most_in_unlike > 2) {
        layouts = unlike_banks(owned, --task.most_in_unlike);
    }
    for (const Layout& layout : layouts) {
        task.unlike.push_back(
            lay_bank(*task.parts, layout.text(), task.options.coil_temperature_c));
    }
}

}  // namespace

bool may_buy(const Element& element, const ElementFilter& filter) {
    const auto typical = element.price.typical();
    if (filter.price_max && (!typical || *typical > *filter.price_max)) return false;
    if (filter.rated_v_min && element.rated_v.value_or(0.0) < *filter.rated_v_min) return false;
    if (filter.rated_w_max && !(element.rated_w && *element.rated_w <= *filter.rated_w_max)) {
        return false;
    }
    const auto& families = filter.family;
    return families.empty() ||
           std::find(families.begin(), families.end(), element.family) != families.end();
}

std::unique_ptr<PlanTask> PlanTask::make(const Parts& catalog, const Installation& installation,
                                         const RankOptions& options) {
    check_rank_options(options);
    check_yard(installation);
    auto task = std::make_unique<PlanTask>();
    task->parts = std::make_shared<const Parts>(merged_parts(catalog, installation));
    check_installation(installation, *task->parts);
    task->options = options;
    task->one_plane =
        std::none_of(installation.panels.begin(), installation.panels.end(),
                     [](const OwnedPanels& owned) { return owned.tilt_deg || owned.azimuth_deg; });
    Sentences remarks;
    task->weather = options.weather
                        ? options.weather
                        : own_weather(installation, remarks,
                                      options.memory ? &options.memory->weather : nullptr);
    if (!task->weather) {
        refuse_yard("weather", "twelve months, or weather data", say<"plan.give_weather">());
    }
    task->judge = std::make_unique<PlanJudge>(task->parts, installation, options, task->weather);
    task->yard = task->judge->with({});
    if (options.volts_max) task->yard.goals.volts_max = options.volts_max;
    const std::vector<ExistingCircuit> existing = existing_circuits(installation);
    if (existing.size() > 1) task->pattern_of = existing.front().name;
    std::vector<FamilyGroup> groups;
    for (const OwnedPanels& owned : task->yard.panels) {
        const PanelInService panel = panel_in_service(owned, find_panel(*task->parts, owned.panel),
                                                      task->yard.site.record_low_c);
        groups.push_back({.count = owned.count, .v_mp = panel.panel.v_mp.value_or(0.0)});
    }
    task->family = array_family(groups);
    task->banks = screen_context(*task->parts, task->yard, task->options, nullptr);
    task->numbers.resize(task->banks.banks.size());
    for (const auto& of_hookup : task->banks.numbers) {
        for (const BankNumbers& numbers : of_hookup) task->numbers[numbers.bank] = &numbers;
    }
    if (options.element.empty() && !options.bank) add_unlike_banks(*task);
    task->most_elements = limited_elements(task->banks, task->yard);
    task->energies = std::make_unique<ArrayEnergies>(*task->parts, task->yard, task->options,
                                                     task->weather, task->family);
    return task;
}

ExistingCircuit PlanTask::circuit(std::size_t array, std::size_t bank) const {
    const FamilyArray& of = family.arrays[array];
    const Bank& fed = this->bank(bank);
    ExistingCircuit made;
    if (fed.unlike) {
        made.elements = fed.label();
    } else {
        made.element = fed.element.id;
        made.bank = fed.hookup.label();
    }
    if (const auto group = energies->only_group(of)) {
        const int parallel = static_cast<int>(of.strings.size());
        made.group = yard.panels[*group].group;
        made.panels = Hookup{.series = of.panels[*group] / parallel, .parallel = parallel}.label();
        return made;
    }
    Layout layout;
    for (const std::size_t index : of.strings) {
        Layout::Series& string = layout.strings.emplace_back();
        const PanelCounts& counts = family.strings[index].panels;
        for (std::size_t g = 0; g < counts.size(); ++g) {
            if (counts[g] > 0) string.push_back({.name = yard.panels[g].group, .count = counts[g]});
        }
    }
    made.array = layout.text();
    return made;
}

}  // namespace heatmatch
