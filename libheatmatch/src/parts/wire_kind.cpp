#include "heatmatch/parts/wire_kind.hpp"

#include <algorithm>
#include <cctype>
#include <string>
#include <vector>

namespace heatmatch {

namespace {

/// Insulation with at least this limit and no type letters is made for hot places.
constexpr double hot_lead_c = 150.0;

struct TypeLetters {
    WireKind kind = WireKind::unknown;
    std::string_view words{};  //!< letters with a space before and after each
};

// In order of their use, widest first: a wire marked as several kinds is the first of them.
constexpr auto letters = std::to_array<TypeLetters>({
    {WireKind::metal_clad, " MC "},
    {WireKind::mineral, " MI "},
    {WireKind::pv_wire, " PV UL-4703 "},
    {WireKind::pv_cable, " H1Z2Z2-K "},
    {WireKind::building,
     " THW THW-2 THHW THWN THWN-2 TW RHW RHW-2 XHHW XHHW-2 XHWN XHWN-2 ZW MTW H07V-K H07V-U "
     "H07V-R H05V-K H05V2-K H07V2-K H07Z-K "},
    {WireKind::feeder_cable, " UF UF-B "},
    {WireKind::indoor_cable, " NM NM-B NMC NMC-B "},
    {WireKind::service, " USE USE-2 "},
    {WireKind::dry_building, " THHN XHH XHHN RHH FEP FEPB PFA SA Z "},
    {WireKind::cord,
     " S SO SOO SOW SOOW SJ SJO SJOO SJOW SJOOW SJT SJTW SJTOW SJTOOW ST STW STOW STOOW SE SEOW "
     "SEOOW SPT-1 SPT-2 HPN HSJ H07RN-F H05RR-F H05RN-F H05VV-F "},
    {WireKind::vehicle, " GPT SXL GXL TXL "},
    {WireKind::welding, " WELDING CLASS-K CLASS-M "},
    {WireKind::appliance, " UL-758 AWM SF-1 SF-2 SFF-1 SFF-2 SRML TF TFF TFN TFFN "},
    {WireKind::hot_lead, " PFAH TFE PTFE TGGT MG MGT SIF SIAF "},
});

constexpr auto places = std::to_array<WirePlaces>({
    {WireKind::building, true, false, false, false, "nec-300-3"},
    {WireKind::dry_building, true, false, false, false, "nec-310-10"},
    {WireKind::pv_wire, true, false, true, false, "nec-690-31"},
    {WireKind::pv_cable, true, false, true, false, "en-50618"},
    {WireKind::service, true, false, false, false, "nec-338-12"},
    {WireKind::indoor_cable, true, true, true, false, "nec-334"},
    {WireKind::feeder_cable, true, true, true, false, "nec-340"},
    {WireKind::cord, false, false, false, false, "nec-400-12"},
    {WireKind::welding, false, false, false, false, "welding-cable-use"},
    {WireKind::vehicle, false, false, false, false, "from-memory"},
    {WireKind::appliance, false, false, false, true, "ul-758"},
    {WireKind::hot_lead, false, false, false, true, "ul-758"},
    {WireKind::mineral, true, true, true, true, "nec-332"},
    {WireKind::metal_clad, true, true, true, false, "nec-690-31"},
    {WireKind::unknown, false, false, false, false, "from-memory"},
});

/// Upper case, separate words; `UL 758` and `class K` are one word.
std::vector<std::string> marks_of(const std::string& marking) {
    std::vector<std::string> marks{""};
    for (const char each : marking) {
        const auto letter = static_cast<unsigned char>(each);
        if (std::isalnum(letter) != 0 || each == '-') {
            marks.back() += static_cast<char>(std::toupper(letter));
        } else if (marks.back() != "UL" && marks.back() != "CLASS") {
            marks.emplace_back();
        } else {
            marks.back() += '-';
        }
    }
    return marks;
}

}  // namespace

WireKind wire_kind(const Wire& wire, const Insulation* insulation) {
    const std::vector<std::string> marks = marks_of(wire.marking);
    const auto has = [](const TypeLetters& type, const std::string& mark) {
        return !mark.empty() && type.words.find(' ' + mark + ' ') != std::string_view::npos;
    };
    for (const TypeLetters& type : letters) {
        if (std::any_of(marks.begin(), marks.end(),
                        [&](const std::string& mark) { return has(type, mark); }))
            return type.kind;
    }
    const bool hot = insulation != nullptr && insulation->limit_c >= hot_lead_c;
    return hot ? WireKind::hot_lead : WireKind::unknown;
}

const WirePlaces& places_of(WireKind kind) {
    const auto* const found = std::find_if(
        places.begin(), places.end(), [kind](const WirePlaces& each) { return each.kind == kind; });
    return found == places.end() ? places.back() : *found;
}

AmpacityGroup ampacity_group(WireKind kind) {
    if (kind == WireKind::pv_wire) return AmpacityGroup::pv_wire;
    if (kind == WireKind::pv_cable) return AmpacityGroup::pv_cable;
    if (kind == WireKind::cord) return AmpacityGroup::cord;
    const bool cable = kind == WireKind::indoor_cable || kind == WireKind::feeder_cable ||
                       kind == WireKind::metal_clad;
    return cable ? AmpacityGroup::cable : AmpacityGroup::single;
}

}  // namespace heatmatch
