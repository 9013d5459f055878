#pragma once

#include <array>

#include "heatmatch/base/sentence.hpp"

/// Licensed and live work: named with its hold point, without steps.
namespace heatmatch::answer_sentences {

inline constexpr auto hold_lines = std::to_array<Template>({
    {"hold.title", "licensed and live work: hold points"},
    {"hold.job", "job"},
    {"hold.point", "hold point"},
    {"hold.who", "by whom"},
    {"hold.signed", "checked, date"},
    {"hold.legend",
     "At a hold point work stops until that person has checked the job and signed. The owner does "
     "none of these jobs."},
    {"hold.permit", "permit and inspection"},
    {"hold.until_permit", "Do not build until permit questions are answered."},
    {"hold.by_authority", "local authority"},
    {"hold.bonding", "grounding (earthing) and bonding of frames, vessel and sheaths"},
    {"hold.until_bonding", "Do not energize until every bond is verified."},
    {"hold.insulation", "insulation test of panels, wires and elements to ground"},
    {"hold.until_insulation", "Do not energize until the result is recorded."},
    {"hold.limit", "overtemperature limit and the disconnect it opens"},
    {"hold.until_limit", "Do not energize until DC rating and action are verified."},
    {"hold.supply", "dual supply: any second source, AC or DC, on the same elements"},
    {"hold.until_supply", "Do not energize until separation of the supplies is verified."},
    {"hold.water", "pressurized water: vessel, relief valve, discharge"},
    {"hold.until_water", "Do not fill or heat until pressure protection is verified."},
    {"hold.live", "live DC work, up to {cold}: panels are live in any light"},
    {"hold.until_live", "Do not touch or connect until isolation is verified."},
    {"hold.plugs", "opening plugs, fuses or terminals in sun"},
    {"hold.until_plugs", "Do not open until zero current is verified."},
    {"hold.by_electrician", "licensed electrician"},
    {"hold.by_plumber", "licensed plumber"},
});

}  // namespace heatmatch::answer_sentences
