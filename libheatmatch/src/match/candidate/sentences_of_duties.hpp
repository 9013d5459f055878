#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// What this room says of duties of codes; the answer lists it.
namespace heatmatch::candidate_sentences::of_duties {

inline constexpr auto table = std::to_array<Template>({
    {"duty.step_wet", "shock where wet, earth faults"},
    {"duty.step_dry", "shock where dry"},
    {"duty.step_arc", "arc faults"},

    {"duty.guard_nec",
     "From {volts} on live parts are guarded by an enclosure, a barrier or height."},
    {"duty.guard_iec",
     "Live parts above {dry} in dry places and above {wet} in all others are insulated or "
     "enclosed."},
    {"duty.earth_nec",
     "Above {volts} or {amperes} an earth fault in any conductor is found, indicated, and the "
     "faulted circuit disconnected."},
    {"duty.earth_iec",
     "An insulation monitor reports the first earth fault. A pole that is earthed through a device "
     "that opens by itself may do instead, where the maker of the panels asks for it."},
    {"duty.arc",
     "From {volts} on, between any two conductors, a device that is listed for panels finds an arc "
     "and interrupts it."},
    {"duty.shutdown",
     "On or in a building, wires that leave the array fall to {outside} soon after a switch within "
     "reach is opened; within the array to {within}, or by a listed system."},
    {"duty.disconnect_nec",
     "A switch within reach opens all conductors that are not solidly earthed together, at these "
     "volts and amperes, and can be locked open."},
    {"duty.disconnect_iec",
     "A switch-disconnector rated for these direct volts and amperes opens all live conductors."},
    {"duty.bond", "Exposed metal of frames and enclosures is bonded, whatever the volts."},
    {"duty.inside",
     "Above {volts} or {amperes} wires of panels inside a building lie in metal: a raceway, "
     "metal-clad cable or an enclosure."},
    {"duty.insulation",
     "The direct-current side has double or reinforced insulation. An extra-low-voltage system may "
     "do instead up to {most}."},
    {"duty.labels_nec",
     "Labels: the disconnect with its name, open and closed, and the highest volts; a warning "
     "where both sides stay live; the source on each raceway and box."},
    {"duty.labels_iec",
     "Labels: the isolator with its name, and at each access that parts stay live after "
     "isolation."},
    {"duty.listing",
     "Panels, combiners, controls and disconnects are listed, or field-evaluated and labelled, for "
     "panels."},

    {"duty.not_due_volts", "Not due here: the circuit stands at {cold}."},
    {"duty.not_due_place", "Not due here: panels and wires are stated to be off buildings."},
    {"duty.not_due_outside", "Not due here: no wire is stated to lie inside."},
    {"duty.not_due_earthed",
     "Not due here: one pole is solidly earthed, few strings, nothing on or in a building."},
    {"duty.not_due_in_metal",
     "Not due here: nothing is on or in a building, and every wire lies in metal or in the "
     "ground."},
    {"duty.perhaps", "Whether it is due is not stated; until then it counts as due."},

    {"duty.finds_and_opens",
     "\"{device}\" finds such faults and \"{breaker}\" opens. Nobody checked that they are listed "
     "for it."},
    {"duty.finds", "\"{device}\" reports such faults. Nobody checked how it is wired."},
    {"duty.finds_only",
     "\"{device}\" finds such faults, but is not known to open this circuit: {why}"},
    {"duty.finds_half",
     "\"{device}\" blows at a fault of the pole that is not earthed. It finds none of the earthed "
     "pole."},
    {"duty.earth_fuse",
     "\"{device}\" stands in the connection to earth. Whether the maker of the panels asks for "
     "that nobody stated."},
    {"duty.finds_none", "No device that is described finds such faults."},
    {"duty.in_catalog", "Of the catalog these find them: {controls}."},
    {"duty.not_in_catalog", "No control of the catalog finds them."},
    {"duty.by_hand",
     "\"{device}\" opens by hand. Nobody checked that it is within reach and can be locked."},
    {"duty.not_by_hand", "The nearest is \"{device}\": {why}"},
    {"duty.none_by_hand", "No device that is described opens direct current by hand."},
    {"duty.opens_unsupplied",
     "\"{device}\" opens when its supply is lost. Whether it sits at the array, and is listed for "
     "it, nobody stated."},
    {"duty.none_shuts_down", "No device that is described is known to do it."},
    {"duty.covers", "Every live part is stated to be enclosed. Nobody looked."},
    {"duty.no_covers", "It is stated that live parts are not enclosed."},
    {"duty.covers_bare", "The element is bare wire: the fill and the vessel are live with it."},
    {"duty.covers_untold", "Whether every live part is enclosed nobody stated."},
    {"duty.insulation_untold",
     "Covers are stated, but not every wire is known to be insulated for these volts."},
    {"duty.bonded", "Frames, vessel and sheaths are stated to be bonded. Nobody tested it."},
    {"duty.not_bonded", "It is stated that these are not bonded: {fields}."},
    {"duty.bonds_untold", "Nobody stated: {fields}."},
    {"duty.in_metal", "Every such wire is stated to lie in metal. Nobody looked."},
    {"duty.not_in_metal", "Not in metal: {runs}."},
    {"duty.metal_untold", "Nobody stated whether these lie in metal: {runs}."},
    {"duty.insulation_class", "No record tells the class of insulation of wires and joints."},
    {"duty.look", "No record has labels: look."},
    {"duty.read_listing", "No record tells what a part is listed for: read its marking."},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::candidate_sentences::of_duties
