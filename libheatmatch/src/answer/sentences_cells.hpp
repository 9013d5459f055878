#pragma once

#include <array>

#include "heatmatch/base/sentence.hpp"

/// Cells, headings and words shared by several tables.
namespace heatmatch::answer_sentences {

inline constexpr auto cell_lines = std::to_array<Template>({
    {"cell.unknown", "?"},
    {"cell.none", "-"},
    {"cell.low_high", "{low}-{high}"},
    {"cell.panels", "{group} {panels}"},
    {"cell.elements", "{element} {bank}"},
    {"cell.elements_like", "{element} {bank} +{more}"},
    {"cell.pairing", "{array} into {element} {bank}"},
    {"cell.pairing_unlike", "{array} into {bank}"},
    {"cell.thousands", "{thousands}k"},
    {"cell.share", "{share} %"},
    {"cell.listed", "{list}"},
    {"cell.money", "{amount} {currency}"},
    {"cell.no_finding", "no finding"},
    {"cell.judged", "{severity}: {margin}"},
    {"cell.at_limit", "{value}/{limit}"},
    {"cell.part_limit", "{part}, {limit}"},

    {"head.share", "%"},
    {"head.place", "#"},
    {"head.circuit", "circuit"},
    {"circuits.all", "all"},
    {"head.panels", "panels"},
    {"head.elements", "elements"},
    {"head.daily", "kWh/day"},
    {"head.mean", "mean"},
    {"head.band", "band"},
    {"head.band_power", "band W"},
    {"head.share_of_most", "max%"},
    {"head.headroom_left", "head"},
    {"head.cold_volts", "cold V"},
    {"head.buy", "buy"},
    {"head.buy_money", "buy, {currency}"},
    {"head.sheath", "sheath"},
    {"head.severity", "severity"},
    {"head.margin", "margin"},
    {"head.subject", "subject"},
    {"head.headroom", "headroom"},
    {"head.says", "what it says"},
    {"head.source", "source"},
    {"head.low", "low"},
    {"head.typical", "typical"},
    {"head.high", "high"},
    {"head.judged", "judged"},
    {"head.limit", "limit"},

    {"month.jan", "Jan"},
    {"month.feb", "Feb"},
    {"month.mar", "Mar"},
    {"month.apr", "Apr"},
    {"month.may", "May"},
    {"month.jun", "Jun"},
    {"month.jul", "Jul"},
    {"month.aug", "Aug"},
    {"month.sep", "Sep"},
    {"month.oct", "Oct"},
    {"month.nov", "Nov"},
    {"month.dec", "Dec"},
});

}  // namespace heatmatch::answer_sentences
