#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "heatmatch/base/units.hpp"
#include "heatmatch/match/plan/unlocks.hpp"

namespace heatmatch {

using plan_sentences::say;

Sentences unlock_lines(std::span<const Unlock> unlocks, const std::string& currency) {
    if (unlocks.empty()) {
        return {say<"unlock.none">(
            with<"least">(Amount{.value = 100.0 * least_unlocked_share, .unit = unit::percent}))};
    }
    Sentences lines;
    std::vector<std::pair<double, std::size_t>> by_money;
    for (std::size_t i = 0; i < unlocks.size(); ++i) {
        lines.push_back(say<"unlock.numbered">(with<"number">(static_cast<double>(i + 1)),
                                               with<"said">(unlocks[i].said)));
        const double price = unlocks[i].price_per_kwh();
        if (std::isfinite(price)) by_money.emplace_back(price, i + 1);
    }
    if (by_money.size() < 2) return lines;
    std::sort(by_money.begin(), by_money.end());
    std::string order;
    for (const auto& [price, number] : by_money) {
        if (!order.empty()) order += ", ";
        order += "(" + std::to_string(number) + ") " + format_number(price, 2);
    }
    lines.push_back(say<"unlock.by_money">(with<"currency">(Name{currency}),
                                           with<"order">(Name{std::move(order)})));
    return lines;
}

}  // namespace heatmatch
