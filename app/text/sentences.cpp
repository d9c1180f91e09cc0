#include "app/text/sentences.h"

#include <array>
#include <cmath>

namespace carriageway {
namespace {

/// Stops nearer than this (mm) stand at the same place: below what any ruler shows.
constexpr double same_place = 0.005;

bool moves(double from, double to) {
    return std::abs(to - from) > same_place;
}

Direction way(double by) {
    return by > 0.0 ? Direction::toward_machine : Direction::toward_operator;
}

std::string separation_text(LengthUnit unit, const Stops& stops) {
    return format_length(separation(stops), unit);
}

}  // namespace

std::string head_title(Language language, const Head& head) {
    const std::string station = std::to_string(head.station);
    if (head.colour.empty()) return say(language, Word::head_title_plain, {station});
    return say(language, Word::head_title, {station, head.colour});
}

RemedyText stops_text(Language language, LengthUnit unit, const Ruler& ruler, const Stops& from,
                      const Stops& to) {
    const bool operator_moves = moves(from.operator_side, to.operator_side);
    const bool machine_moves = moves(from.machine_side, to.machine_side);
    if (!operator_moves && !machine_moves) return {};
    if (operator_moves && machine_moves) {
        return {say(language, Word::remedy_stops_apart, {separation_text(unit, to)}),
                say(language, Word::detail_both_stops,
                    {plain_ruler(ruler, from.operator_side), format_ruler(ruler, to.operator_side),
                     plain_ruler(ruler, from.machine_side), format_ruler(ruler, to.machine_side)})};
    }
    const double start = operator_moves ? from.operator_side : from.machine_side;
    const double end = operator_moves ? to.operator_side : to.machine_side;
    const Word detail = operator_moves ? Word::detail_operator_stop : Word::detail_machine_stop;
    return {say(language, Word::remedy_stop_move,
                {format_length(std::abs(end - start), unit),
                 word(language, direction_word(way(end - start)))}),
            say(language, detail, {plain_ruler(ruler, start), format_ruler(ruler, end)})};
}

std::string limit_text(Language language, LengthUnit unit, const Job& job, LimitKind kind) {
    const auto with = [&](Word with_wish, Word without, double wish) {
        if (!(wish > 0.0)) return spare_text(word(language, without));
        return say(language, with_wish, {format_length(wish, unit)});
    };
    const Allowances& allowances = job.press.allowances;
    const Sensors& sensors = job.press.sensors;
    switch (kind) {
        case LimitKind::squeegee_run_past:
            return with(Word::limit_squeegee_run_past, Word::limit_squeegee_image,
                        job.wishes.run_past);
        case LimitKind::flood_run_past:
            return with(Word::limit_flood_run_past, Word::limit_flood_image, job.wishes.run_past);
        case LimitKind::platen:
            return with(Word::limit_platen_inset, Word::limit_platen, allowances.platen_inset);
        case LimitKind::frame_squeegee:
            return with(Word::limit_frame_squeegee, Word::limit_frame_squeegee_bare,
                        allowances.frame_clearance);
        case LimitKind::frame_flood:
            return with(Word::limit_frame_flood, Word::limit_frame_flood_bare,
                        allowances.frame_clearance);
        case LimitKind::carriage_range:
            return spare_text(word(language, Word::limit_range));
        case LimitKind::separation:
            return say(
                language, Word::limit_separation,
                {format_length(least_separation(sensors) + sensors.separation_margin, unit)});
    }
    return {};
}

std::string conflict_text(Language language, LengthUnit unit, const Conflict& conflict) {
    const std::string by = format_length(conflict.by, unit);
    const std::string_view end = word(language, side_word(conflict.end));
    const std::string_view outer = word(language, limit_word(conflict.outer));
    if (!conflict.separation) {
        return say(language, Word::conflict_one_end,
                   {end, word(language, limit_word(conflict.inner)), by, outer});
    }
    const End other_end =
        conflict.end == End::operator_side ? End::machine_side : End::operator_side;
    return say(language, Word::conflict_separation,
               {by, outer, end, word(language, limit_word(conflict.other)),
                word(language, side_word(other_end))});
}

std::string change_text(Language language, LengthUnit unit, const Change& change) {
    const std::string length = format_length(std::abs(change.amount), unit);
    const std::string angle = format_angle(change.amount);
    switch (change.kind) {
        case ChangeKind::move_image:
            return say(language, Word::change_move_image,
                       {length, word(language, direction_word(way(change.amount)))});
        case ChangeKind::shorten_run_past:
            return say(language, Word::change_run_past, {length});
        case ChangeKind::squeegee_angle:
            return say(language, Word::change_squeegee_angle, {angle});
        case ChangeKind::flood_angle:
            return say(language, Word::change_flood_angle, {angle});
        case ChangeKind::longer_frame:
            return say(language, Word::change_longer_frame, {length});
        case ChangeKind::longer_platen:
            return say(language, Word::change_longer_platen, {length});
    }
    return {};
}

std::string least_of(Language language, LengthUnit unit, Field field) {
    const FieldInfo& info = info_of(field);
    return format_quantity(language, info.least, info.quantity, unit);
}

std::string most_of(Language language, LengthUnit unit, Field field) {
    const FieldInfo& info = info_of(field);
    return format_quantity(language, info.most, info.quantity, unit);
}

std::string refusal_text(Language language, LengthUnit unit, Refusal refusal, Field field,
                         int stations) {
    const auto plain = [&](Word key) { return std::string(word(language, key)); };
    switch (refusal) {
        case Refusal::no_such_head:
            return plain(Word::refusal_no_such_head);
        case Refusal::out_of_range:
            if (field == Field::count) return plain(Word::refusal_out_of_range);
            return say(language, Word::refusal_out_of_range_field,
                       {word(language, field_word(field)), least_of(language, unit, field),
                        most_of(language, unit, field)});
        case Refusal::name_too_long:
            return plain(Word::refusal_name_too_long);
        case Refusal::not_an_outline:
            return plain(Word::refusal_not_an_outline);
        case Refusal::station_taken:
            return plain(Word::refusal_station_taken);
        case Refusal::no_such_station:
            return say(language, Word::refusal_no_such_station, {std::to_string(stations)});
        case Refusal::id_taken:
            return plain(Word::refusal_id_taken);
        case Refusal::not_a_press:
            return plain(Word::refusal_not_a_press);
        case Refusal::stops_crossed:
            return plain(Word::refusal_stops_crossed);
        case Refusal::not_readings:
            return plain(Word::refusal_not_readings);
        case Refusal::not_a_record:
            return plain(Word::refusal_not_a_record);
        case Refusal::too_deep:
            return plain(Word::refusal_too_deep);
    }
    return {};
}

}  // namespace carriageway
