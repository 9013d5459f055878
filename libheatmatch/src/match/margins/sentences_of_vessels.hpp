#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// What this room says of metal that a fault makes live, and of steam; the answer lists it. A
/// margin fills {value} and {limit}.
namespace heatmatch::margins_sentences::of_vessels {

inline constexpr auto table = std::to_array<Template>({
    {"bonding.not_needed",
     "Up to {value}: below {limit} a fault to metal is no shock, so no bond is asked for here."},
    {"bonding.done",
     "Vessel, sheaths and frames are told to be bonded: at up to {value} a fault then has a way to "
     "earth. Test each bond."},
    {"bonding.open",
     "Not bonded: {metal}. After one fault that metal stands at up to {value}; above {limit} it "
     "can "
     "kill who touches it."},
    {"bonding.not_told",
     "Whether these are bonded is not told: {metal}. After one fault they may stand at up to "
     "{value}; above {limit} that can kill who touches them."},
    {"bonding.vessel", "the vessel"},
    {"bonding.sheaths", "the sheaths of the elements"},
    {"bonding.frames", "the frames of the panels"},
    {"pressure.dry", "Nothing in it makes steam."},
    {"pressure.vented",
     "It may reach {value} with nothing taken out and the thermostat welded; a way out for steam "
     "is told. Keep it open, and keep the fill covering the element."},
    {"pressure.closed_hot",
     "With nothing taken out and the thermostat welded it reaches {value}, steam or hot water from "
     "{limit} on, and it has no way out: a closed vessel bursts."},
    {"pressure.closed",
     "It stays at {value}, but it has no way out for steam or for water that expands: a closed "
     "vessel bursts. Fit a vent or a relief valve."},
    {"pressure.not_told",
     "It may reach {value} with nothing taken out; whether steam has a way out is not told. From "
     "{limit} on a closed vessel bursts."},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id, "value", "limit">(std::move(given)...);
}

}  // namespace heatmatch::margins_sentences::of_vessels
