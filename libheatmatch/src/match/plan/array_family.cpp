#include "heatmatch/match/plan/array_family.hpp"

#include <algorithm>
#include <utility>

namespace heatmatch {

namespace {

/// Makes the arrays of one extent, until there are too many.
class FamilyMaker {
  public:
    FamilyMaker(std::span<const FamilyGroup> groups, FamilyExtent extent, std::size_t most)
        : groups_(groups), most_(most), left_(groups.size()), used_(groups.size(), 0) {
        family_.extent = extent;
        for (std::size_t g = 0; g < groups.size(); ++g) left_[g] = std::max(0, groups[g].count);
    }

    /// Whether all arrays have been made.
    bool make() {
        if (!make_strings()) return false;
        for (std::size_t first = 0; first < family_.strings.size(); ++first) {
            if (!add(first, first)) return false;
        }
        return true;
    }

    [[nodiscard]] ArrayFamily take() { return std::move(family_); }

  private:
    [[nodiscard]] bool limited() const { return family_.extent != FamilyExtent::equal_panels; }

    bool make_strings() {
        if (family_.extent == FamilyExtent::equal_panels) {
            for (std::size_t g = 0; g < groups_.size(); ++g) {
                for (int n = 1; n <= left_[g]; ++n) {
                    FamilyString string{.panels = PanelCounts(groups_.size(), 0)};
                    string.panels[g] = n;
                    string.v_mp = n * groups_[g].v_mp;
                    family_.strings.push_back(std::move(string));
                }
            }
        } else {
            PanelCounts panels(groups_.size(), 0);
            while (next(panels)) {
                FamilyString string{.panels = panels};
                for (std::size_t g = 0; g < groups_.size(); ++g) {
                    string.v_mp += panels[g] * groups_[g].v_mp;
                }
                family_.strings.push_back(std::move(string));
                if (family_.strings.size() > most_) return false;
            }
        }
        std::stable_sort(
            family_.strings.begin(), family_.strings.end(),
            [](const FamilyString& a, const FamilyString& b) { return a.v_mp < b.v_mp; });
        return true;
    }

    /// The next choice of panels, as the digits of a number; false after the last.
    bool next(PanelCounts& panels) const {
        for (std::size_t g = 0; g < panels.size(); ++g) {
            if (panels[g] < left_[g]) {
                ++panels[g];
                return true;
            }
            panels[g] = 0;
        }
        return false;
    }

    /// Adds a string to the array, keeps the result, and continues with strings of like voltage
    /// that are not before it in the list.
    bool add(std::size_t first, std::size_t string) {
        const PanelCounts& panels = family_.strings[string].panels;
        if (!fits_in(panels, left_)) return true;
        for (std::size_t g = 0; g < left_.size(); ++g) {
            left_[g] -= panels[g];
            used_[g] += panels[g];
        }
        strings_.push_back(string);
        family_.arrays.push_back({.strings = strings_, .panels = used_});
        bool all = !limited() || family_.arrays.size() <= most_;
        const std::size_t end =
            family_.extent == FamilyExtent::unlike_strings ? family_.strings.size() : string + 1;
        constexpr double rounding = 1e-9;
        const double most_v = family_.strings[first].v_mp * (1.0 + like_voltage + rounding);
        for (std::size_t more = string; all && more < end; ++more) {
            if (family_.strings[more].v_mp > most_v) break;
            all = add(first, more);
        }
        strings_.pop_back();
        for (std::size_t g = 0; g < left_.size(); ++g) {
            left_[g] += family_.strings[string].panels[g];
            used_[g] -= family_.strings[string].panels[g];
        }
        return all;
    }

    std::span<const FamilyGroup> groups_;
    std::size_t most_;
    PanelCounts left_;
    PanelCounts used_;
    std::vector<std::size_t> strings_{};
    ArrayFamily family_{};
};

}  // namespace

bool fits_in(const PanelCounts& used, const PanelCounts& counts) {
    return std::equal(used.begin(), used.end(), counts.begin(), counts.end(),
                      [](int need, int have) { return need <= have; });
}

ArrayFamily array_family(std::span<const FamilyGroup> groups, std::size_t most,
                         FamilyExtent widest) {
    for (const FamilyExtent extent :
         {FamilyExtent::unlike_strings, FamilyExtent::equal_strings, FamilyExtent::equal_panels}) {
        if (extent < widest) continue;
        FamilyMaker maker(groups, extent, most);
        if (maker.make()) return maker.take();
    }
    return {};
}

}  // namespace heatmatch
