#include "plan_run.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "heatmatch/base/parallel.hpp"

namespace heatmatch {

PlanSearch::Run::Run(PlanSearch& search, CircuitLists& lists, const PlanRequirement& requirement,
                     const Progress& progress, Effort& effort)
    : search_(search),
      pool_(search.pool_),
      lists_(lists),
      requirement_(requirement),
      view_(pool_, lists, requirement),
      progress_(progress),
      effort_(effort) {
    budget_ = requirement.budget;
    if (lists.kwh_per_price() > 0.0) whole_budget_kwh_ = lists.kwh_per_price() * *budget_;
    counts_money_ = budget_.has_value();
    if (counts_money_) prepare_bills();
}

void PlanSearch::Run::prepare_bills() {
    LeastBill& bill = pool_.least_bill();
    for (std::size_t set = 0; set < pool_.sets(); ++set) {
        of_sets_.push_back(&bill.of_set(set, pool_.arrays(set)));
        least_price_.push_back(bill.at_least({of_sets_.back()}));
    }
}

bool PlanSearch::Run::is_beyond(Node& node) {
    if (!counts_money_ || node.count < 2) return false;
    std::vector<const PartNeeds*> needs;
    double each_alone = 0.0;
    for (std::size_t i = 0; i < node.count; ++i) {
        needs.push_back(of_sets_[node.sets[i]]);
        each_alone += least_price_[node.sets[i]];
    }
    const double together = pool_.least_bill().at_least(needs);
    node.shared_price = std::max(0.0, together - each_alone);
    return together > rounding * *budget_;
}

bool PlanSearch::Run::is_of_extent(const Node& node) const {
    if (requirement_.extent == PlanExtent::any) return true;
    const PanelCounts& panels = pool_.panels(node.sets[0]);
    const auto& groups = pool_.task().yard.panels;
    if (requirement_.extent == PlanExtent::one_group) {
        return node.count == 1 &&
               std::count_if(panels.begin(), panels.end(), [](int n) { return n > 0; }) == 1;
    }
    return node.count == 1 &&
           std::equal(panels.begin(), panels.end(), groups.begin(), groups.end(),
                      [](int n, const OwnedPanels& group) { return n == group.count; });
}

void PlanSearch::Run::fill() {
    for (Node node : search_.nodes_) {
        if (node.count > requirement_.circuits_max || !is_of_extent(node)) continue;
        if (is_beyond(node)) {
            ++outcome_->reasons["budget"];
            continue;
        }
        node.value = at_most(node);
        if (bound(node) >= near()) queue_.push_back(node);
    }
    if (lists_.kwh_per_price() == 0.0 && counts_money_) begun_ = queue_;
    std::make_heap(queue_.begin(), queue_.end(), less);
}

double PlanSearch::Run::fair_price() const {
    if (!counts_money_ || *budget_ <= 0.0) return 0.0;
    // The bound is convex in the price.
    double low = 0.0;
    double high = 2.0 * bound_at(0.0) / *budget_;
    constexpr int steps = 24;
    for (int step = 0; step < steps; ++step) {
        const double left = low + (high - low) / 3.0;
        const double right = high - (high - low) / 3.0;
        if (bound_at(left) <= bound_at(right)) {
            high = right;
        } else {
            low = left;
        }
    }
    return 0.5 * (low + high);
}

double PlanSearch::Run::bound_at(double kwh_per_price) const {
    std::vector<double> most(pool_.sets());
    for (std::size_t set = 0; set < most.size(); ++set) {
        most[set] = view_.most_at(set, kwh_per_price, least_price_[set]);
    }
    double highest = 0.0;
    for (const Node& node : begun_) {
        double sum = -kwh_per_price * node.shared_price;
        for (std::size_t i = 0; i < node.count; ++i) sum += most[node.sets[i]];
        highest = std::max(highest, sum);
    }
    return highest + kwh_per_price * *budget_;
}

void PlanSearch::Run::push(const Node& node) {
    queue_.push_back(node);
    std::push_heap(queue_.begin(), queue_.end(), less);
}

double PlanSearch::Run::at_most(const Node& node) const {
    double sum = -lists_.kwh_per_price() * node.shared_price;
    for (std::size_t i = 0; i < node.count; ++i) {
        sum += view_.at_most(node.sets[i], node.places[i]);
    }
    return sum;
}

double PlanSearch::Run::near() const {
    return outcome_->best ? std::max(requirement_.least_kwh, tie_of_plans * outcome_->best->kwh)
                          : requirement_.least_kwh;
}

bool PlanSearch::Run::enough(std::size_t until) {
    const double top = top_kwh();
    if (top < near()) return true;
    if (outcome_->best && top <= outcome_->best->kwh) {
        // The most heat is found: what may still come has a smaller bill.
        if (!effort_.ties_from) effort_.ties_from = checks();
        return checks() >= *effort_.ties_from + requirement_.most_ties || effort_.looked >= until;
    }
    if (checks() < requirement_.most_checks && effort_.looked < until) return false;
    stopped_ = true;
    return true;
}

std::size_t PlanSearch::Run::checks() const {
    return search_.effort() - effort_.begun;
}

void PlanSearch::Run::look_at(Node node) {
    const double now = at_most(node);
    if (!(now + whole_budget_kwh_ >= near())) return;
    const double slack = 1e-12 * std::fabs(node.value);
    if (now < node.value - slack) {
        node.value = now;
        push(node);
        return;
    }
    for (std::size_t i = 0; i < node.count; ++i) {
        if (view_.is_known(node.sets[i], node.places[i])) continue;
        prepare(node.sets[i]);
        view_.advance(node.sets[i]);
        node.value = at_most(node);
        if (bound(node) >= near()) push(node);
        return;
    }
    const std::size_t beyond = first_beyond(node);
    push_next(node, beyond == none_fails ? try_together(node) : beyond);
}

void PlanSearch::Run::prepare(std::size_t set) {
    const auto array = view_.next_array(set);
    if (!array) return;
    std::vector<std::size_t> arrays{*array};
    constexpr std::size_t near_front = 64;
    const std::size_t most =
        worker_count(pool_.task().options.threads, std::min(queue_.size(), near_front) + 1);
    for (std::size_t n = 0; n < std::min(queue_.size(), near_front); ++n) {
        if (arrays.size() >= most) break;
        const Node& node = queue_[n];
        for (std::size_t i = 0; i < node.count; ++i) {
            if (view_.is_known(node.sets[i], node.places[i])) continue;
            const auto other = view_.next_array(node.sets[i]);
            if (other && std::find(arrays.begin(), arrays.end(), *other) == arrays.end()) {
                arrays.push_back(*other);
            }
            break;
        }
    }
    pool_.task().energies->prepare(arrays);
}

void PlanSearch::Run::push_next(const Node& node, std::size_t failing) {
    const std::size_t end = std::min<std::size_t>(node.count, failing + 1);
    for (std::size_t i = node.from; i < end; ++i) {
        // Of equal sets the earlier one has the later circuit.
        const bool equal = i > 0 && node.sets[i] == node.sets[i - 1];
        Node more = node;
        ++more.places[i];
        more.from = static_cast<std::uint8_t>(i);
        pass_over(more, i);
        if (equal && more.places[i] > more.places[i - 1]) continue;
        more.value = at_most(more);
        if (bound(more) >= near()) push(more);
    }
}

void PlanSearch::Run::pass_over(Node& node, std::size_t place) const {
    if (!counts_money_) return;
    double others = node.shared_price;
    for (std::size_t i = 0; i < node.count; ++i) {
        if (i < place) others += view_.circuit(node.sets[i], node.places[i]).price;
        if (i > place) others += least_price_[node.sets[i]];
    }
    const std::size_t set = node.sets[place];
    while (view_.is_known(set, node.places[place]) &&
           view_.circuit(set, node.places[place]).price > rounding * *budget_ - others) {
        ++node.places[place];
    }
}

void PlanSearch::Run::search(PlanOutcome& outcome, std::size_t most_looks) {
    outcome_ = &outcome;
    tell_progress(progress_, 0.0);
    fill();
    const std::size_t until = effort_.looked + most_looks;
    while (!queue_.empty() && !enough(until)) {
        std::pop_heap(queue_.begin(), queue_.end(), less);
        const Node node = queue_.back();
        queue_.pop_back();
        look_at(node);
        tell();
    }
    finish();
}

void PlanSearch::Run::finish() {
    const double best_kwh = outcome_->best ? outcome_->best->kwh : 0.0;
    outcome_->proven = !stopped_ && search_.all_nodes_;
    double most_kwh = std::max(best_kwh, requirement_.least_kwh);
    if (stopped_) most_kwh = std::max(most_kwh, top_kwh());
    if (!search_.all_nodes_) {
        PanelCounts all;
        for (const OwnedPanels& owned : pool_.task().yard.panels) all.push_back(owned.count);
        most_kwh = std::max(most_kwh, pool_.task().energies->largest_kwh(all));
    }
    // Every pass has a bound of its own.
    outcome_->at_most_kwh = std::max(best_kwh, std::min(outcome_->at_most_kwh, most_kwh));
    if (view_.beyond_budget() > 0) outcome_->reasons["budget"] += view_.beyond_budget();
}

void PlanSearch::Run::tell() {
    constexpr std::size_t often = 64;
    if (++effort_.looked % often != 0) return;
    const double share =
        static_cast<double>(checks()) / static_cast<double>(requirement_.most_checks + 1);
    tell_progress(progress_, std::min(1.0, share));
}

PlanOutcome PlanSearch::best(const PlanRequirement& requirement, const Progress& progress) {
    PlanOutcome outcome{.at_most_kwh = std::numeric_limits<double>::infinity()};
    Effort spent{.begun = effort()};
    const bool money = requirement.budget.has_value();
    constexpr std::size_t few_looks = 5000;
    constexpr std::size_t most_looks = 1000000;
    double kwh_per_price = 0.0;
    bool stopped = false;
    {
        CircuitLists& lists = requirement.unlike_banks ? lists_ : equal_lists_;
        Run run(*this, lists, requirement, progress, spent);
        run.search(outcome, money ? few_looks : most_looks);
        stopped = run.stopped();
        if (stopped && money) kwh_per_price = run.fair_price();
        if (stopped && kwh_per_price == 0.0 && !outcome.best && requirement.grow) run.grow();
    }
    // A second pass at that price also where a tie was decided before the most heat was known.
    bool open = kwh_per_price > 0.0;
    for (int pass = 0; pass < 2 && open; ++pass) {
        CircuitLists priced(pool_, kwh_per_price, requirement.unlike_banks);
        Run run(*this, priced, requirement, progress, spent);
        run.search(outcome, most_looks);
        open = !run.stopped() && run.is_choice_open();
        if (run.stopped() && !outcome.best && requirement.grow) run.grow();
    }
    return outcome;
}

}  // namespace heatmatch
