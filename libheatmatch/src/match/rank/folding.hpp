#pragma once

#include "screen.hpp"

#include <optional>
#include <span>
#include <vector>

namespace heatmatch {

/// Pairings of one array that differ in their bank alone: those of one load are folded.
class Folding {
  public:
    explicit Folding(const ScreenContext& context, const PanelInService& panel)
        : context_(&context), panel_(&panel) {}

    void add(const Pairing& pairing) { all_.push_back({.pairing = pairing}); }
    /// Gives `take` every pairing that no other covers, with the number of those it covers, and
    /// forgets all of them.
    template <class Take>
    void finish(const Take& take) {
        if (all_.empty()) return;
        fold();
        for (const Member& member : all_) {
            if (!member.covered) take(member.pairing);
        }
        all_.clear();
    }

  private:
    struct Member {
        Pairing pairing{};
        bool covered = false;
        std::optional<Severity> worst{};
    };

    void fold();
    void fold_load(std::span<Member> load);
    /// Whether `a` is no worse than `b` in anything that folding compares.
    [[nodiscard]] bool no_worse(Member& a, Member& b) const;
    [[nodiscard]] Severity worst_of(Member& member) const;
    [[nodiscard]] int elements_of(const Pairing& pairing) const;

    const ScreenContext* context_;
    const PanelInService* panel_;
    std::vector<Member> all_{};
};

}  // namespace heatmatch
