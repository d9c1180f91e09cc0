#include "core/job_check.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

namespace carriageway {
namespace {

constexpr std::uint32_t most_ink = 0xFFFFFF;

bool is_number(int number) {
    return number >= 0 && static_cast<std::uint32_t>(number) <= most_number;
}

bool is_place(const Point& point) {
    return accepts(Field::image_offset_x, point.x) && accepts(Field::image_offset_y, point.y);
}

/// The first number of one owner that its field doesn't accept. `Numbers` gives a field's value.
template <typename Numbers>
std::optional<JobFault> number_fault(FieldOwner owner, HeadId head, Numbers numbers) {
    for (int i = 0; i < static_cast<int>(Field::count); ++i) {
        const auto field = static_cast<Field>(i);
        if (info_of(field).owner != owner) continue;
        if (!accepts(field, numbers(field))) return JobFault{Refusal::out_of_range, head, field};
    }
    return std::nullopt;
}

bool is_pitch(double mm_per_turn) {
    return std::isfinite(mm_per_turn) && mm_per_turn > 0.0 && mm_per_turn <= most_mm_per_turn;
}

bool is_adjuster(const Adjuster& adjuster) {
    return is_name(adjuster.name) && is_place({adjuster.x, adjuster.y}) &&
           is_pitch(adjuster.mm_per_turn) && adjuster.graduations >= 1 &&
           adjuster.graduations <= most_dial_marks;
}

bool is_level_screw(const LevelScrew& screw) {
    return is_name(screw.name) && is_place({screw.x, screw.y}) && is_pitch(screw.mm_per_turn);
}

/// Bytes of the UTF-8 character that starts at `at`; 0 where there is none (RFC 3629, 4: no
/// overlong forms, no surrogates, nothing above U+10FFFF).
std::size_t character_length(std::string_view text, std::size_t at) {
    const auto byte = [&text](std::size_t i) {
        return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
    };
    const auto follows = [&byte](std::size_t i, unsigned lo, unsigned hi) {
        return byte(i) >= lo && byte(i) <= hi;
    };
    const unsigned first = byte(at);
    if (first < 0x80U) return 1;
    if (first >= 0xC2U && first <= 0xDFU) return follows(at + 1, 0x80U, 0xBFU) ? 2 : 0;
    if (first >= 0xE0U && first <= 0xEFU) {
        const unsigned lo = first == 0xE0U ? 0xA0U : 0x80U;
        const unsigned hi = first == 0xEDU ? 0x9FU : 0xBFU;
        return follows(at + 1, lo, hi) && follows(at + 2, 0x80U, 0xBFU) ? 3 : 0;
    }
    if (first >= 0xF0U && first <= 0xF4U) {
        const unsigned lo = first == 0xF0U ? 0x90U : 0x80U;
        const unsigned hi = first == 0xF4U ? 0x8FU : 0xBFU;
        const bool whole = follows(at + 1, lo, hi) && follows(at + 2, 0x80U, 0xBFU) &&
                           follows(at + 3, 0x80U, 0xBFU);
        return whole ? 4 : 0;
    }
    return 0;
}

/// What is wrong with the place of one head among the others.
std::optional<Refusal> place_fault(const Job& job, std::size_t index) {
    const Head& head = job.heads[index];
    if (head.id == 0) return Refusal::id_taken;
    for (std::size_t i = 0; i < index; ++i) {
        if (job.heads[i].id == head.id) return Refusal::id_taken;
    }
    if (!has_station(job, head.station)) return Refusal::no_such_station;
    // Heads are kept in the order of their stations, so one that isn't beyond the last is wrong.
    if (index > 0 && job.heads[index - 1].station >= head.station) return Refusal::station_taken;
    if (use_of(job, head.station) != StationUse::open) return Refusal::station_taken;
    return std::nullopt;
}

}  // namespace

bool is_name(const std::string& text) {
    return text.size() <= static_cast<std::size_t>(longest_name) && is_utf8(text);
}

bool is_utf8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = character_length(text, at);
        if (length == 0) return false;
        at += length;
    }
    return true;
}

std::optional<JobFault> image_fault(const Image& image) {
    const std::pair<Field, double> numbers[] = {{Field::image_width, image.width},
                                                {Field::image_length, image.length},
                                                {Field::image_offset_x, image.offset_x},
                                                {Field::image_offset_y, image.offset_y},
                                                {Field::image_rotation, image.rotation}};
    for (const auto& [field, value] : numbers) {
        if (!accepts(field, value)) return JobFault{Refusal::out_of_range, 0, field};
    }
    if (image.outline.empty()) return std::nullopt;
    const JobFault not_an_outline{Refusal::not_an_outline, 0, Field::count};
    if (image.outline.size() > static_cast<std::size_t>(most_outline_corners))
        return not_an_outline;
    const bool near = std::all_of(image.outline.begin(), image.outline.end(), [](const Point& p) {
        return accepts(Field::image_offset_x, p.x) && accepts(Field::image_offset_y, p.y);
    });
    if (!near || !is_simple(image.outline)) return not_an_outline;
    return std::nullopt;
}

std::optional<JobFault> stops_fault(const Stops& stops) {
    if (!accepts(Field::operator_stop, stops.operator_side)) {
        return JobFault{Refusal::out_of_range, 0, Field::operator_stop};
    }
    if (!accepts(Field::machine_stop, stops.machine_side)) {
        return JobFault{Refusal::out_of_range, 0, Field::machine_stop};
    }
    if (!(stops.operator_side < stops.machine_side)) {
        return JobFault{Refusal::stops_crossed, 0, Field::operator_stop};
    }
    return std::nullopt;
}

std::optional<JobFault> head_fault(const Head& head) {
    if (!is_name(head.colour) || !is_name(head.notes.ink) || !is_name(head.notes.stencil)) {
        return JobFault{Refusal::name_too_long, head.id, Field::count};
    }
    if (head.ink > most_ink) return JobFault{Refusal::out_of_range, head.id, Field::count};
    const Job without;  // the numbers of a head don't depend on its job
    auto fault = number_fault(FieldOwner::head, head.id,
                              [&](Field field) { return number_of(without, &head, field); });
    if (!fault) fault = image_fault(head.image);
    if (!fault) fault = stops_fault(head.stops);
    if (!fault && !are_rounds(head.rounds)) fault = JobFault{Refusal::not_readings};
    if (fault) fault->head = head.id;
    return fault;
}

std::optional<JobFault> press_contradiction(const PressProfile& press) {
    const auto contradiction = [](Field field) { return JobFault{Refusal::not_a_press, 0, field}; };
    if (!(press.sensors.operator_offset < press.sensors.machine_offset)) {
        return contradiction(Field::operator_sensor);
    }
    if (!(press.carriage.range_lo < press.carriage.range_hi)) return contradiction(Field::range_lo);
    if (!(press.squeegee_gauge.lowest < press.squeegee_gauge.highest)) {
        return contradiction(Field::squeegee_lowest_mark);
    }
    if (!(press.flood_gauge.lowest < press.flood_gauge.highest)) {
        return contradiction(Field::flood_lowest_mark);
    }
    if (!(press.angles.least < press.angles.most)) return contradiction(Field::least_angle);
    if (!(press.height_points.operator_y < press.height_points.machine_y)) {
        return contradiction(Field::height_operator_y);
    }
    return std::nullopt;
}

bool are_rounds(const std::vector<MarkRound>& rounds) {
    const auto is_turn = [](double turns) { return std::abs(turns) <= most_turns; };
    return rounds.size() <= most_rounds &&
           std::all_of(rounds.begin(), rounds.end(), [&](const MarkRound& round) {
               return round.marks.size() <= most_marks_a_round && is_number(round.platen) &&
                      is_number(round.turn) && round.turned.size() <= most_adjusters &&
                      std::all_of(round.turned.begin(), round.turned.end(), is_turn) &&
                      std::all_of(round.marks.begin(), round.marks.end(),
                                  [](const MarkReading& mark) {
                                      return is_place(mark.nominal) && is_place(mark.measured);
                                  });
           });
}

bool are_height_readings(const std::vector<HeightReading>& readings) {
    return readings.size() <= most_height_readings &&
           std::all_of(readings.begin(), readings.end(), [](const HeightReading& reading) {
               return reading.platen >= 1 && reading.platen <= most_number && reading.head != 0 &&
                      is_place({reading.x, reading.y}) && std::abs(reading.height) <= most_height;
           });
}

bool has_station(const Job& job, int station) {
    return station >= 1 && station <= job.press.stations &&
           static_cast<std::size_t>(station) <= job.uses.size();
}

StationUse use_of(const Job& job, int station) {
    return job.uses[static_cast<std::size_t>(station - 1)];
}

std::optional<JobFault> fault_of(const PressProfile& press) {
    if (!is_name(press.name)) return JobFault{Refusal::name_too_long, 0, Field::count};
    const bool stations = press.stations >= 2 && press.stations <= most_stations;
    if (!stations) return JobFault{Refusal::not_a_press, 0, Field::count};
    const auto fault = number_fault(FieldOwner::press, 0, [&press](Field field) {
        return number_of(const_cast<PressProfile&>(press), field);  // only read
    });
    if (fault) return fault;
    if (!std::all_of(press.adjusters.begin(), press.adjusters.end(), is_adjuster)) {
        return JobFault{Refusal::not_a_press, 0, Field::count};
    }
    if (press.level_screws.size() > most_adjusters ||
        !std::all_of(press.level_screws.begin(), press.level_screws.end(), is_level_screw)) {
        return JobFault{Refusal::not_a_press, 0, Field::count};
    }
    const auto is_mesh = [](const MeshRow& row) { return trouble_with(row) == MeshRowTrouble::none; };
    if (press.meshes.size() > most_meshes ||
        !std::all_of(press.meshes.begin(), press.meshes.end(), is_mesh)) {
        return JobFault{Refusal::not_a_press, 0, Field::count};
    }
    if (press.rooms.size() > static_cast<std::size_t>(most_stations) || !are_checks(press.checks)) {
        return JobFault{Refusal::not_a_press, 0, Field::count};
    }
    return press_contradiction(press);
}

std::optional<JobFault> fault_of(const Job& job) {
    if (!is_name(job.name)) return JobFault{Refusal::name_too_long, 0, Field::count};
    if (auto fault = fault_of(job.press)) return fault;
    if (job.uses.size() != static_cast<std::size_t>(job.press.stations)) {
        return JobFault{Refusal::no_such_station, 0, Field::count};
    }
    const auto fault = number_fault(FieldOwner::job, 0,
                                    [&job](Field field) { return number_of(job, nullptr, field); });
    if (fault) return fault;
    if (!are_height_readings(job.height_readings)) return JobFault{Refusal::not_readings};
    if (!is_name(job.garment.name)) return JobFault{Refusal::name_too_long};
    if (!is_walk(job.walk) || !is_record(job.record)) return JobFault{Refusal::not_a_record};
    for (std::size_t i = 0; i < job.heads.size(); ++i) {
        if (const auto place = place_fault(job, i)) {
            return JobFault{*place, job.heads[i].id, Field::count};
        }
        if (auto head = head_fault(job.heads[i])) return head;
    }
    return std::nullopt;
}

}  // namespace carriageway
