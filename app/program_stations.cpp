// Stations: the search for the best placement, a piece a frame, and colours dragged on the diagram.
#include "app/program.h"
#include "app/text/sentences.h"
#include "app/views/station_search.h"

namespace carriageway {

namespace {

/// Beginnings that are taken up a frame: some milliseconds' worth.
constexpr long steps_a_frame = 1500;

/// The station whose place on the screen is nearest to a point, 1 to the press's stations.
int nearest_station(const PressProfile& press, const Projection& projection, Vec at) {
    int nearest = 1;
    float least = 1e30f;
    for (int station = 1; station <= press.stations; ++station) {
        const HeadPlace place = place_of_station(press, station);
        const float apart = length(projection.to_screen(place.to_press({0.0, 0.0})) - at);
        if (apart < least) {
            least = apart;
            nearest = station;
        }
    }
    return nearest;
}

} // namespace

void Program::carry_out(const SearchStations&) {
    state_.day.search = std::make_shared<StationSearch>(session_.job());
}

void Program::carry_out(const StopSearch&) { state_.day.search.reset(); }

void Program::run_search() {
    if (!state_.day.search) return;
    StationSearch& search = *state_.day.search;
    // What was found was found for the job as it was.
    if (!(search.of == session_.job())) return state_.day.search.reset();
    if (state_.day.open && search.running()) search.study.run(steps_a_frame);
}

bool Program::searching() const {
    return state_.day.open && state_.day.search && state_.day.search->running();
}

void Program::carry_out(const UsePlacement& a) {
    if (!state_.day.search) return;
    const StationSearch& search = *state_.day.search;
    if (a.rank >= search.study.placements().size()) return;
    const std::optional<Edit> edit =
        placement_edit(session_.job(), search.asked, search.study.placements()[a.rank]);
    if (edit) apply_edit(*edit);
}

void Program::drag_colour(const HoldColour& hold, Vec at) {
    const Projection projection{state_.camera, layout_.diagram};
    state_.colour_drag =
        ColourDrag{hold.head, at, nearest_station(session_.job().press, projection, at)};
}

void Program::drop_colour(const HoldColour& hold) {
    if (!state_.colour_drag) return;
    const int station = state_.colour_drag->station;
    state_.colour_drag.reset();
    const Job& job = session_.job();
    const Head* head = find_head(job, hold.head);
    if (!head || head->station == station) return;
    const Language language = state_.looks.language;
    const std::string number = std::to_string(station);
    if (!station_room(job.press, station).print_head)
        return notice(say(language, Word::stations_drop_no_room, {number}), true);
    const StationUse use = job.uses[static_cast<std::size_t>(station - 1)];
    if (use != StationUse::open)
        return notice(say(language, Word::stations_drop_not,
                          {number, word(language, use_word(use))}),
                      true);
    apply_edit(Edit{MoveHead{hold.head, station}});
}

} // namespace carriageway
