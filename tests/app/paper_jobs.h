// Jobs that sheets are tried on.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include <catch2/catch_test_macros.hpp>

#include "app/records/embedded_demo.h"
#include "app/records/exchange.h"
#include "app/sheet_of.h"
#include "app/text/paper_sentences.h"
#include "core/walk.h"

namespace carriageway::test {

inline Job demo_for_paper() {
    const std::string text(reinterpret_cast<const char*>(embedded::demo_job),
                           embedded::demo_job_size);
    ReadJob read = read_job(text);
    REQUIRE(read);
    return *read.job;
}

/// With ticks, real values, a noted recipe and a list of which a step is ticked.
inline Job walked_job() {
    Job job = demo_for_paper();
    const Stamp stamp{1'700'000'000'000, "QZ"};
    const auto edit = [&](const Edit& what) { REQUIRE(apply(job, what)); };
    const Head second = job.heads[1];
    edit(*tick_all(job, job.heads[0].id, stamp));
    edit(Edit{really_set(job, second.id, Field::squeegee_gauge, 1.4, stamp)});
    edit(Edit{
        really_set(job, second.id, Field::machine_stop, second.stops.machine_side + 7.0, stamp)});
    edit(Edit{really_set(job, second.id, Field::print_speed, 537.0, stamp)});
    edit(Edit{really_set(job, second.id, Field::height_left, 4.25, stamp)});
    edit(Edit{really_set(job, 0, Field::flash_dwell, 5.5, stamp)});
    edit(Edit{SetBladeEdge{second.id, BladeEdge::double_bevel}});
    edit(Edit{SetNumber{second.id, Field::squeegee_hardness, 70.0}});
    edit(Edit{SetNumber{0, Field::flash_temperature, 160.0}});
    edit(Edit{SetNote{second.id, Note::ink, "plastisol, a tenth of softener"}});
    RunRecord record = job.record;
    record.ticks = {{checks_of(job.press).front().id, stamp}};
    edit(Edit{SetRecord{record}});
    return job;
}

/// So many heads on a press of most_stations.
inline Job many_heads(int count) {
    Job job = demo_for_paper();
    const std::vector<Head> from = job.heads;
    job.heads.clear();
    job.press.stations = most_stations;
    job.press.rooms.clear();
    job.press.arm_radius = 9000.0;
    job.uses.assign(static_cast<std::size_t>(most_stations), StationUse::open);
    if (count < most_stations) job.uses.back() = StationUse::flash;
    for (int i = 1; i <= count; ++i) {
        Head head = from[static_cast<std::size_t>(i) % from.size()];
        head.id = static_cast<HeadId>(i);
        head.station = i;
        job.heads.push_back(head);
    }
    return job;
}

/// `bytes` long: numbered words, and one that no line holds.
inline std::string long_text(const std::string& of, std::size_t bytes) {
    std::string text = of + std::string(70, 'w');
    for (int i = 1; text.size() + 10 < bytes; ++i) text += " " + of + std::to_string(i);
    return text;
}

/// Texts as long as they may be everywhere, and a list of its own.
inline Job wordy_job() {
    Job job = demo_for_paper();
    const auto most = static_cast<std::size_t>(longest_name);
    job.name = long_text("name", most);
    job.press.name = long_text("press", most);
    job.garment.name = long_text("garment", most);
    for (Head& head : job.heads) {
        const std::string number = std::to_string(head.station);
        head.colour = long_text("colour" + number + "-", most);
        head.notes.ink = long_text("ink" + number + "-", most);
        head.notes.stencil = long_text("stencil" + number + "-", most);
        head.squeegee.edge = BladeEdge::double_bevel;
    }
    job.press.checks.clear();
    for (std::uint32_t i = 1; i <= 60; ++i)
        job.press.checks.push_back(
            {i, i % 3 == 0 ? CheckList::tear_down : CheckList::before_run, CheckStep::own,
             long_text("step" + std::to_string(i) + "-", most), Caution::hot_surface});
    return job;
}

/// The smallest and the largest numbers that fields take, for widths of columns.
inline Job extreme_job(bool most) {
    Job job = demo_for_paper();
    for (Head& head : job.heads)
        for (const Field field : walk_fields(job, head.id)) {
            if (field == Field::operator_stop || field == Field::machine_stop) continue;
            const FieldInfo& info = info_of(field);
            number_of(job, &head, field) = most ? info.most : info.least;
        }
    return job;
}

inline std::vector<std::pair<std::string, Job>> paper_jobs() {
    Job empty = demo_for_paper();
    empty.heads.clear();
    return {{"the demonstration", demo_for_paper()}, {"walked", walked_job()},
            {"64 heads", many_heads(most_stations)}, {"long texts", wordy_job()},
            {"least numbers", extreme_job(false)},   {"most numbers", extreme_job(true)},
            {"no heads", empty}};
}

inline SheetRequest sheet_request(Language language, bool letter, bool heads) {
    SheetRequest request;
    request.job = demo_for_paper();
    request.letter = letter;
    request.page_a_head = heads;
    request.language = language;
    request.time = 1'700'000'000'000;
    return request;
}

} // namespace carriageway::test
