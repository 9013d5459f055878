#include "heatmatch/parts/connector.hpp"

#include "common_fields.hpp"

namespace heatmatch {

std::span<const Field> connector_fields() {
    static const std::vector<Field> fields = with_common_fields<Connector>({
        bind<&Connector::family>({.name = "family",
                                  .kind = FieldKind::text,
                                  .required = true,
                                  .meaning = "kind of connector, for example ring terminal"}),
        bind<&Connector::limit_c>({.name = "limit_c",
                                   .kind = FieldKind::number,
                                   .unit = unit::celsius,
                                   .range = {.low = 40.0, .high = 1200.0},
                                   .required = true,
                                   .meaning = "highest temperature of the joint"}),
        bind<&Connector::voltage_rating_v>({.name = "voltage_rating_v",
                                            .kind = FieldKind::number,
                                            .unit = unit::volt,
                                            .range = {.low = 1.0, .high = 3000.0},
                                            .meaning = "rated voltage"}),
        bind<&Connector::current_rating_a>({.name = "current_rating_a",
                                            .kind = FieldKind::number,
                                            .unit = unit::ampere,
                                            .range = {.low = 0.1, .high = 1000.0},
                                            .meaning = "rated current"}),
        bind<&Connector::place>(
            {.name = "place", .kind = FieldKind::choice, .meaning = "place for which it is made"}),
    });
    return fields;
}

}  // namespace heatmatch
