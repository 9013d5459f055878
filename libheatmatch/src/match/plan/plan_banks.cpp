#include "heatmatch/match/plan/plan_banks.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <utility>

namespace heatmatch {

namespace {

/// Number of elements of each kind.
using ElementCounts = std::vector<int>;

int total_of(const ElementCounts& counts) {
    int total = 0;
    for (const int count : counts) total += count;
    return total;
}

/// The next choice of elements, as the digits of a number; false after the last.
bool next_choice(ElementCounts& choice, const ElementCounts& most) {
    for (std::size_t i = 0; i < choice.size(); ++i) {
        if (choice[i] < most[i]) {
            ++choice[i];
            return true;
        }
        choice[i] = 0;
    }
    return false;
}

/// Networks of some elements, by their text: those joined in series, and those in parallel.
struct Networks {
    std::map<std::string, Layout> series{};
    std::map<std::string, Layout> parallel{};
};

/// Makes all networks of up to a few elements from those of fewer.
class NetworkMaker {
  public:
    explicit NetworkMaker(std::span<const OwnedElements> owned) : owned_(owned) {}

    const Networks& of(const ElementCounts& counts) {
        const auto known = made_.find(counts);
        if (known != made_.end()) return known->second;
        Networks networks;
        join(counts, {}, true, networks.series);
        join(counts, {}, false, networks.parallel);
        return made_.emplace(counts, std::move(networks)).first->second;
    }

  private:
    /// Joins what is left of the elements to `children`, in every way. The texts of the children
    /// rise, so that each set of children is found in one order.
    void join(const ElementCounts& left, const std::map<std::string, std::pair<int, Layout>>& parts,
              bool in_series, std::map<std::string, Layout>& found) {
        if (total_of(left) == 0) {
            int children = 0;
            for (const auto& [text, part] : parts) children += part.first;
            if (children < 2) return;
            Layout layout = in_series ? in_one_string(parts) : side_by_side(parts);
            std::string text = layout.text();
            found.emplace(std::move(text), std::move(layout));
            return;
        }
        ElementCounts child(left.size(), 0);
        while (next_choice(child, left)) {
            if (total_of(child) == total_of(left) && parts.empty()) continue;
            for (const auto& [text, layout] : children_of(child, in_series)) {
                if (!parts.empty() && text < parts.rbegin()->first) continue;
                auto more = parts;
                auto& entry = more[text];
                ++entry.first;
                entry.second = layout;
                ElementCounts rest = left;
                for (std::size_t i = 0; i < rest.size(); ++i) rest[i] -= child[i];
                join(rest, more, in_series, found);
            }
        }
    }

    /// One element, or networks of the other kind of joint.
    std::map<std::string, Layout> children_of(const ElementCounts& counts, bool in_series) {
        if (total_of(counts) > 1) return in_series ? of(counts).parallel : of(counts).series;
        const auto one = std::find(counts.begin(), counts.end(), 1) - counts.begin();
        const Layout layout{.strings = {{{.name = owned_[static_cast<std::size_t>(one)].element}}}};
        return {{layout.text(), layout}};
    }

    static Layout in_one_string(const std::map<std::string, std::pair<int, Layout>>& parts) {
        Layout::Series string;
        for (const auto& [text, part] : parts) {
            const auto& [count, layout] = part;
            const bool single = layout.strings.size() == 1;
            Layout::Item item =
                single ? layout.strings.front().front() : Layout::Item{.bracketed = {layout}};
            item.count = count;
            string.push_back(std::move(item));
        }
        return {.strings = {std::move(string)}};
    }

    static Layout side_by_side(const std::map<std::string, std::pair<int, Layout>>& parts) {
        Layout joined;
        for (const auto& [text, part] : parts) {
            const auto& [count, layout] = part;
            joined.strings.insert(joined.strings.end(), static_cast<std::size_t>(count),
                                  layout.strings.front());
        }
        return joined;
    }

    std::span<const OwnedElements> owned_;
    std::map<ElementCounts, Networks> made_{};
};

}  // namespace

std::vector<Layout> unlike_banks(std::span<const OwnedElements> owned, int most) {
    ElementCounts all;
    for (const OwnedElements& each : owned) all.push_back(std::max(0, std::min(each.count, most)));
    NetworkMaker maker(owned);
    std::vector<Layout> banks;
    ElementCounts choice(all.size(), 0);
    while (next_choice(choice, all)) {
        const auto kinds = std::count_if(choice.begin(), choice.end(), [](int n) { return n > 0; });
        if (kinds < 2 || total_of(choice) > most) continue;
        const Networks& networks = maker.of(choice);
        for (const auto& [text, layout] : networks.series) banks.push_back(layout);
        for (const auto& [text, layout] : networks.parallel) banks.push_back(layout);
    }
    return banks;
}

}  // namespace heatmatch
