// What the parts of the Rate place share.
#pragma once

#include "app/drawing/rate_layer.h"
#include "app/views/views.h"

namespace carriageway {

/// A job's rate as it is shown.
struct RateView {
    const Model* model = nullptr;
    JobPace pace;
    RateChart chart;  ///< without a rate: no rows
    RateScale scale;  ///< of the drawing; of nothing without a rate
    const Job& job() const { return *model->job; }
    LengthUnit units() const { return model->state->looks.units; }
};

/// What a tap on a station leads to: its head, or the number that its time comes from. Nothing for
/// one that takes no time.
std::optional<Action> station_action(const RateView& view, std::size_t place);

/// "2.69 s, waits 1.31 s".
std::string station_value(const RateView& view, std::size_t place, Language language);

/// The panel: rate, slowest station, what changes are worth, the run, and the numbers of it.
void rate_panel(const RateView& view, Rows& rows);

/// What changes are worth, station by station. Part of the panel.
void rate_worth_part(const RateView& view, Rows& rows);

/// A paragraph that is a thing to read.
void said_text(std::string_view name, std::string_view words, TypeStyle style, Role role,
               float gap, Rows& rows);

} // namespace carriageway
