// Ranks the demo installation and prints the three best circuits: the smallest program that links
// the library.
#include <cstdio>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/match/rank/rank.hpp"
#include "heatmatch/text/installation_json.hpp"
#include "heatmatch/text/starter.hpp"
#include "heatmatch/text/text_file.hpp"

int main(int count, char** arguments) {
    try {
        const heatmatch::Installation installation =
            count > 1 ? heatmatch::installation_from_json(heatmatch::read_text_file(arguments[1]),
                                                          arguments[1])
                      : heatmatch::installation_from_json(heatmatch::demo_installation_json());
        const heatmatch::Ranking ranking =
            heatmatch::rank(heatmatch::Catalog::starter().parts(), installation, {.top = 3});
        for (const heatmatch::Candidate& candidate : ranking.candidates) {
            std::printf("%s: %.0f W, smallest headroom %.2f\n", candidate.circuit.title().c_str(),
                        candidate.mean_power_w(), candidate.smallest_headroom());
        }
    } catch (const heatmatch::Error& error) {
        std::fprintf(stderr, "%s\n", error.what());
        return 1;
    }
    return 0;
}
