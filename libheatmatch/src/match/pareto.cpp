#include <algorithm>
#include <limits>
#include <numeric>
#include <set>

#include "heatmatch/match/rank.hpp"

namespace heatmatch {

std::vector<std::size_t> pareto_front(const std::vector<Trade>& trades) {
    std::vector<std::size_t> order(trades.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&trades](std::size_t a, std::size_t b) {
        const Trade& x = trades[a];
        const Trade& y = trades[b];
        if (x.power_w != y.power_w) return x.power_w > y.power_w;
        if (x.headroom != y.headroom) return x.headroom > y.headroom;
        return x.price < y.price;
    });
    // Sweeping by falling power, `stairs` keeps (price, headroom) of those seen: headroom rises
    // with price, and a newcomer is beaten exactly by the last stair that is not dearer.
    std::set<std::pair<double, double>> stairs;
    std::vector<std::size_t> front;
    for (std::size_t index : order) {
        const Trade& trade = trades[index];
        auto above = stairs.upper_bound({trade.price, std::numeric_limits<double>::infinity()});
        if (above != stairs.begin() && std::prev(above)->second >= trade.headroom) continue;
        while (above != stairs.end() && above->second <= trade.headroom)
            above = stairs.erase(above);
        if (above != stairs.begin() && std::prev(above)->first == trade.price) {
            stairs.erase(std::prev(above));
        }
        stairs.insert({trade.price, trade.headroom});
        front.push_back(index);
    }
    return front;
}

}  // namespace heatmatch
