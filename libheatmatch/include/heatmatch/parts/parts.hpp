#pragma once

#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "heatmatch/parts/alloy.hpp"
#include "heatmatch/parts/connector.hpp"
#include "heatmatch/parts/control.hpp"
#include "heatmatch/parts/cover.hpp"
#include "heatmatch/parts/element.hpp"
#include "heatmatch/parts/insulation.hpp"
#include "heatmatch/parts/medium.hpp"
#include "heatmatch/parts/panel.hpp"
#include "heatmatch/parts/sheath.hpp"
#include "heatmatch/parts/wire.hpp"

namespace heatmatch {

/// The kinds of parts, in the order of the alternatives of Part.
enum class PartKind {
    panel,
    element,
    wire,
    insulation,
    control,
    connector,
    medium,
    alloy,
    sheath,
    cover
};

/// Any part.
using Part = std::variant<Panel, Element, Wire, Insulation, Control, Connector, Medium, Alloy,
                          Sheath, Cover>;

/// A kind of part: its names and its field table.
struct PartKindInfo {
    PartKind kind = PartKind::panel;
    std::string_view name{};    //!< `panel`
    std::string_view plural{};  //!< `panels`, the key in JSON and the table in SQL
    std::span<const Field> fields{};
};

[[nodiscard]] std::span<const PartKindInfo> part_kinds();
[[nodiscard]] const PartKindInfo& part_kind(PartKind kind);
/// The kind of that name or plural. Throws InvalidInput naming the nearest known one.
[[nodiscard]] const PartKindInfo& part_kind(std::string_view name);
[[nodiscard]] const PartKindInfo& part_kind(const Part& part);

/// An empty part of that kind.
[[nodiscard]] Part make_part(PartKind kind);
[[nodiscard]] const std::string& part_id(const Part& part);
[[nodiscard]] const void* part_record(const Part& part);
[[nodiscard]] void* part_record(Part& part);
/// `panel "barn-pair"`, for messages.
[[nodiscard]] std::string part_title(const Part& part);

/// Checks all fields and the checks across fields. Throws InvalidInput.
void check_part(const Part& part);

/// A snapshot of all parts, by value; input of `match` and `operation`.
struct Parts {
    std::vector<Panel> panels{};
    std::vector<Element> elements{};
    std::vector<Wire> wires{};
    std::vector<Insulation> insulations{};
    std::vector<Control> controls{};
    std::vector<Connector> connectors{};
    std::vector<Medium> media{};
    std::vector<Alloy> alloys{};
    std::vector<Sheath> sheaths{};
    std::vector<Cover> covers{};

    /// Adds a part, or replaces the one of the same kind and id.
    void put(const Part& part);
    /// The part of that kind and id; empty if there is none.
    [[nodiscard]] std::optional<Part> find(PartKind kind, std::string_view id) const;
};

/// Calls `visit(list, kind)` for the list of each kind of a snapshot.
template <class P, class Visitor>
void for_each_list(P& parts, Visitor visit) {
    visit(parts.panels, PartKind::panel);
    visit(parts.elements, PartKind::element);
    visit(parts.wires, PartKind::wire);
    visit(parts.insulations, PartKind::insulation);
    visit(parts.controls, PartKind::control);
    visit(parts.connectors, PartKind::connector);
    visit(parts.media, PartKind::medium);
    visit(parts.alloys, PartKind::alloy);
    visit(parts.sheaths, PartKind::sheath);
    visit(parts.covers, PartKind::cover);
}

/// All parts of a snapshot, by kind.
[[nodiscard]] std::vector<Part> list_parts(const Parts& parts);

/// The part of that id. Throws NotFound naming the nearest known id.
[[nodiscard]] const Panel& find_panel(const Parts& parts, std::string_view id);
[[nodiscard]] const Element& find_element(const Parts& parts, std::string_view id);
[[nodiscard]] const Wire& find_wire(const Parts& parts, std::string_view id);
[[nodiscard]] const Insulation& find_insulation(const Parts& parts, std::string_view id);
[[nodiscard]] const Control& find_control(const Parts& parts, std::string_view id);
[[nodiscard]] const Connector& find_connector(const Parts& parts, std::string_view id);
[[nodiscard]] const Medium& find_medium(const Parts& parts, std::string_view id);
[[nodiscard]] const Alloy& find_alloy(const Parts& parts, std::string_view id);
[[nodiscard]] const Sheath& find_sheath(const Parts& parts, std::string_view id);
[[nodiscard]] const Cover& find_cover(const Parts& parts, std::string_view id);

}  // namespace heatmatch
