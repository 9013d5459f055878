#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences on duties of codes, listed in answer/sentence_tables.cpp.
namespace heatmatch::candidate_sentences::of_duties {

inline constexpr auto table = std::to_array<Template>({
    {"duty.step_wet", "shock where wet, ground faults"},
    {"duty.step_dry", "shock where dry"},
    {"duty.step_arc", "arc faults"},

    {"duty.guard_nec",
     "From {volts}, live parts are guarded by an enclosure, a barrier or height."},
    {"duty.guard_iec",
     "Live parts above {dry} in dry places and above {wet} in all others are insulated or "
     "enclosed."},
    {"duty.earth_nec",
     "Above {volts} or {amperes}, a ground fault in any conductor is detected and "
     "indicated, and the faulted circuit is disconnected."},
    {"duty.earth_iec",
     "An insulation monitor reports the first earth fault. Instead, a pole may be "
     "earthed through a device that opens by itself, where the panel maker requires "
     "it."},
    {"duty.arc",
     "From {volts} between any two conductors, a device listed for PV detects and "
     "interrupts an arc."},
    {"duty.shutdown",
     "On or in a building, wires that leave the array fall to {outside} soon after a "
     "switch within reach opens. Within the array they fall to {within}, or a listed "
     "system is used."},
    {"duty.disconnect_nec",
     "A disconnect within reach simultaneously opens all conductors that are not solidly grounded. "
     "It is rated for this voltage and current, and can be locked open."},
    {"duty.disconnect_iec",
     "A switch-disconnector rated for this DC voltage and current opens all live "
     "conductors."},
    {"duty.bond", "Exposed metal of frames and enclosures is bonded at any voltage."},
    {"duty.inside",
     "Above {volts} or {amperes}, PV wires inside a building lie in metal: a raceway, "
     "metal-clad cable or an enclosure."},
    {"duty.insulation",
     "The DC side has double or reinforced insulation. Up to {most}, an "
     "extra-low-voltage system is permitted instead."},
    {"duty.labels_nec",
     "Labels: the disconnect with its name, its open and closed positions, and the "
     "maximum voltage. Also a warning where both sides stay live, and the source on "
     "each raceway and box."},
    {"duty.labels_iec",
     "Labels: the isolator with its name, and at each access that parts stay live after "
     "isolation."},
    {"duty.listing",
     "Panels, combiners, controls and disconnects are listed, or field-evaluated and "
     "labeled, for PV."},

    {"duty.not_due_volts", "Does not apply here: the cold voltage of the circuit is {cold}."},
    {"duty.not_due_place", "Does not apply here: panels and wires are stated to be off buildings."},
    {"duty.not_due_outside", "Does not apply here: no wire is stated to lie inside."},
    {"duty.not_due_earthed",
     "Does not apply here: one pole is solidly grounded, few strings, nothing on or in a "
     "building."},
    {"duty.not_due_in_metal",
     "Does not apply here: nothing is on or in a building. Every wire lies in metal or in the "
     "ground."},
    {"duty.perhaps", "Whether it applies is not stated; until then it counts as applying."},

    {"duty.finds_and_opens",
     "\"{device}\" detects such faults and \"{breaker}\" opens. Whether they are "
     "listed for it is not checked."},
    {"duty.finds", "\"{device}\" reports such faults. How it is wired is not checked."},
    {"duty.finds_only",
     "\"{device}\" detects such faults, but is not known to open this circuit: {why}"},
    {"duty.finds_half",
     "\"{device}\" opens at a fault of the ungrounded pole. It detects no fault of the "
     "grounded pole."},
    {"duty.earth_fuse",
     "\"{device}\" is in the connection to earth. Whether the panel maker requires "
     "that is not stated."},
    {"duty.finds_none", "No described device detects such faults."},
    {"duty.in_catalog", "These controls of the catalog detect them: {controls}."},
    {"duty.not_in_catalog", "No control of the catalog detects them."},
    {"duty.by_hand",
     "\"{device}\" opens by hand. Whether it is within reach and can be locked is not "
     "checked."},
    {"duty.not_by_hand", "The nearest is \"{device}\": {why}"},
    {"duty.none_by_hand", "No described device opens DC by hand."},
    {"duty.opens_unsupplied",
     "\"{device}\" opens when its supply is lost. Whether it is at the array, and "
     "listed for this, is not stated."},
    {"duty.none_shuts_down", "No described device is known to do it."},
    {"duty.covers", "Every live part is stated to be enclosed. This is not checked."},
    {"duty.no_covers", "Live parts are stated not to be enclosed."},
    {"duty.covers_bare", "The element is bare wire: the fill and the vessel are live with it."},
    {"duty.covers_untold", "Whether every live part is enclosed is not stated."},
    {"duty.insulation_untold",
     "Covers are stated, but not every wire is known to be insulated for this voltage."},
    {"duty.bonded", "Frames, vessel and sheaths are stated to be bonded. This is not tested."},
    {"duty.not_bonded", "These are stated not to be bonded: {fields}."},
    {"duty.bonds_untold", "Not stated: {fields}."},
    {"duty.in_metal", "Every such wire is stated to lie in metal. This is not checked."},
    {"duty.not_in_metal", "Not in metal: {runs}."},
    {"duty.metal_untold", "Whether these lie in metal is not stated: {runs}."},
    {"duty.insulation_class", "No record gives the insulation class of wires and joints."},
    {"duty.look", "No record includes labels: check on site."},
    {"duty.read_listing", "No record gives the listing of a part: read its marking."},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::candidate_sentences::of_duties
