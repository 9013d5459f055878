#include "heatmatch/parts/parts.hpp"

#include "base/sentences.hpp"

#include <algorithm>
#include <array>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/suggestion.hpp"

namespace heatmatch {

namespace {

/// Makes an empty part of each alternative, by index.
template <std::size_t... I>
Part make_by_index(std::size_t index, std::index_sequence<I...>) {
    Part part;
    ((I == index ? void(part.emplace<I>()) : void()), ...);
    return part;
}

/// Sort key of parts of a kind; empty where there is none.
template <class P>
std::string_view family_of(const P& part) {
    if constexpr (std::is_same_v<P, Panel>) {
        if (part.technology) return word_of(*part.technology);
    }
    if constexpr (std::is_same_v<P, Medium>) {
        if (part.form) return word_of(*part.form);
    }
    if constexpr (std::is_same_v<P, Wire>) return part.insulation;
    if constexpr (requires { std::string_view(part.family); }) return part.family;
    return {};
}

template <class P>
const P& find_in(const std::vector<P>& parts, std::string_view id, PartKind kind) {
    // A catalog sorts its parts by id; parts added to it may be in any order.
    const auto near =
        std::lower_bound(parts.begin(), parts.end(), id,
                         [](const P& part, std::string_view wanted) { return part.id < wanted; });
    if (near != parts.end() && near->id == id) return *near;
    const auto found =
        std::find_if(parts.begin(), parts.end(), [id](const P& part) { return part.id == id; });
    if (found != parts.end()) return *found;
    std::vector<KnownName> known;
    known.reserve(parts.size());
    for (const P& part : parts) {
        known.push_back({.name = part.id, .label = part.label, .family = family_of(part)});
    }
    const std::string name(part_kind(kind).name);
    const std::string wrong = name + ' ' + quote(id, 80);
    ErrorDetail detail{.part = wrong, .field = "id", .value = quote(id, 80)};
    if (known.empty()) {
        throw NotFound("no " + wrong + " in the catalog: it holds none", detail);
    }
    detail.remedy = suggestion(id, known);
    throw NotFound("no " + wrong + " in the catalog; " + detail.remedy.text(), detail);
}

void check_price(const Price& price, const std::string& title) {
    if (!price.low || !price.high || *price.low <= *price.high) return;
    throw InvalidInput(ErrorDetail{.part = title,
                                   .field = "price_low",
                                   .value = format_number(*price.low),
                                   .allowed = "<= price_high = " + format_number(*price.high),
                                   .remedy = base_sentences::say<"base.exchange">()});
}

void check_source_of(const Provenance& provenance, std::span<const Field> fields,
                     const std::string& title) {
    for (const auto& [name, source] : provenance.source_of) {
        if (find_field(fields, name) != nullptr) continue;
        throw InvalidInput(ErrorDetail{.part = title,
                                       .field = "source_of." + name,
                                       .allowed = "the name of a field",
                                       .remedy = suggestion(name, fields)});
    }
}

struct CrossChecker {
    void operator()(const Panel& part) const { check_panel(part); }
    void operator()(const Element& part) const { check_element(part); }
    void operator()(const Wire& part) const { check_wire(part); }
    void operator()(const Control& part) const { check_control(part); }
    void operator()(const Medium& part) const { check_medium(part); }
    void operator()(const Sheath& part) const { check_sheath(part); }
    void operator()(const Cover& part) const { check_cover(part); }
    template <class Other>
    void operator()(const Other&) const {}
};

}  // namespace

std::span<const PartKindInfo> part_kinds() {
    static const auto kinds = std::to_array<PartKindInfo>({
        {PartKind::panel, "panel", "panels", panel_fields()},
        {PartKind::element, "element", "elements", element_fields()},
        {PartKind::wire, "wire", "wires", wire_fields()},
        {PartKind::insulation, "insulation", "insulations", insulation_fields()},
        {PartKind::control, "control", "controls", control_fields()},
        {PartKind::connector, "connector", "connectors", connector_fields()},
        {PartKind::medium, "medium", "media", medium_fields()},
        {PartKind::alloy, "alloy", "alloys", alloy_fields()},
        {PartKind::sheath, "sheath", "sheaths", sheath_fields()},
        {PartKind::cover, "cover", "covers", cover_fields()},
    });
    return kinds;
}

const PartKindInfo& part_kind(PartKind kind) {
    return part_kinds()[static_cast<std::size_t>(kind)];
}

const PartKindInfo& part_kind(std::string_view name) {
    std::vector<std::string_view> known;
    for (const PartKindInfo& info : part_kinds()) {
        if (info.name == name || info.plural == name) return info;
        known.push_back(info.name);
    }
    throw InvalidInput(ErrorDetail{.field = "kind",
                                   .value = quote(name),
                                   .allowed = "a kind of part",
                                   .remedy = suggestion(name, known)});
}

const PartKindInfo& part_kind(const Part& part) {
    return part_kinds()[part.index()];
}

Part make_part(PartKind kind) {
    return make_by_index(static_cast<std::size_t>(kind),
                         std::make_index_sequence<std::variant_size_v<Part>>{});
}

const std::string& part_id(const Part& part) {
    return std::visit([](const auto& record) -> const std::string& { return record.id; }, part);
}

const void* part_record(const Part& part) {
    return std::visit([](const auto& record) -> const void* { return &record; }, part);
}

void* part_record(Part& part) {
    return std::visit([](auto& record) -> void* { return &record; }, part);
}

std::string part_title(const Part& part) {
    return std::string(part_kind(part).name) + ' ' + quote(part_id(part), 80);
}

void check_part(const Part& part) {
    check_record(part_kind(part).fields, part_record(part), part_title(part));
    std::visit(
        [&part](const auto& record) {
            check_price(record.price, part_title(part));
            check_source_of(record.provenance, part_kind(part).fields, part_title(part));
        },
        part);
    std::visit(CrossChecker{}, part);
}

void Parts::put(const Part& part) {
    for_each_list(*this, [&part](auto& list, PartKind kind) {
        if (static_cast<std::size_t>(kind) != part.index()) return;
        using P = typename std::decay_t<decltype(list)>::value_type;
        const P& given = std::get<P>(part);
        const auto held = std::find_if(list.begin(), list.end(),
                                       [&given](const P& other) { return other.id == given.id; });
        if (held == list.end()) {
            list.push_back(given);
        } else {
            *held = given;
        }
    });
}

std::optional<Part> Parts::find(PartKind kind, std::string_view id) const {
    std::optional<Part> found;
    for_each_list(*this, [&](const auto& list, PartKind listed) {
        if (listed != kind) return;
        const auto held = std::find_if(list.begin(), list.end(),
                                       [id](const auto& part) { return part.id == id; });
        if (held != list.end()) found = *held;
    });
    return found;
}

std::vector<Part> list_parts(const Parts& parts) {
    std::vector<Part> all;
    for_each_list(parts, [&all](const auto& list, PartKind) {
        all.insert(all.end(), list.begin(), list.end());
    });
    return all;
}

const Panel& find_panel(const Parts& parts, std::string_view id) {
    return find_in(parts.panels, id, PartKind::panel);
}
const Element& find_element(const Parts& parts, std::string_view id) {
    return find_in(parts.elements, id, PartKind::element);
}
const Wire& find_wire(const Parts& parts, std::string_view id) {
    return find_in(parts.wires, id, PartKind::wire);
}
const Insulation& find_insulation(const Parts& parts, std::string_view id) {
    return find_in(parts.insulations, id, PartKind::insulation);
}
const Control& find_control(const Parts& parts, std::string_view id) {
    return find_in(parts.controls, id, PartKind::control);
}
const Connector& find_connector(const Parts& parts, std::string_view id) {
    return find_in(parts.connectors, id, PartKind::connector);
}
const Medium& find_medium(const Parts& parts, std::string_view id) {
    return find_in(parts.media, id, PartKind::medium);
}
const Alloy& find_alloy(const Parts& parts, std::string_view id) {
    return find_in(parts.alloys, id, PartKind::alloy);
}
const Sheath& find_sheath(const Parts& parts, std::string_view id) {
    return find_in(parts.sheaths, id, PartKind::sheath);
}
const Cover& find_cover(const Parts& parts, std::string_view id) {
    return find_in(parts.covers, id, PartKind::cover);
}

}  // namespace heatmatch
