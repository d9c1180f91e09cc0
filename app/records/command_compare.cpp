// carriageway compare: what two jobs have set differently.
//
// --json: {format, first, second, differences: [{station or null, kind, field or null, part or
// null, first, second, what, first_text, second_text}]}: kind as in core/job_changes.h; field is its
// key in a job file; part is what a text or a choice is of; first and second are in
// the core's unit, texts for texts, null where nothing is noted.
#include "app/records/command_json.h"
#include "app/records/command_options.h"
#include "app/records/job_source.h"
#include "app/records/text_table.h"
#include "app/text/difference_sentences.h"
#include "app/text/sentences.h"

namespace carriageway {
namespace {

using Json = nlohmann::ordered_json;

const char* kind_name(DifferenceKind kind) {
    switch (kind) {
        case DifferenceKind::number: return "number";
        case DifferenceKind::text: return "text";
        case DifferenceKind::choice: return "choice";
        case DifferenceKind::station: return "station";
        case DifferenceKind::use: return "use";
        case DifferenceKind::outline: return "outline";
        case DifferenceKind::head_only_in_a: return "head_only_in_first";
        case DifferenceKind::head_only_in_b: return "head_only_in_second";
    }
    return "";
}

/// What a text or a choice is of, by the name that core gives it.
Json part_name(const JobDifference& one) {
    switch (one.part) {
        case JobPart::colour: return "colour";
        case JobPart::ink: return "ink";
        case JobPart::print_stroke: return "print_stroke";
        case JobPart::winged: return "winged";
        case JobPart::height_stop: return "height_stop";
        case JobPart::blade_edge: return "blade_edge";
        case JobPart::image:
        case JobPart::outline: return "image";
        case JobPart::flash_after: return "flash_after";
        case JobPart::flash_together: return "flash_together";
        case JobPart::wet_on_wet: return "wet_on_wet";
        case JobPart::pinned: return "pinned";
        case JobPart::ink_note: return "ink_note";
        case JobPart::stencil_note: return "stencil_note";
        case JobPart::name: return "name";
        case JobPart::garment_kind: return "garment_kind";
        case JobPart::garment_name: return "garment_name";
        case JobPart::base_head: return "base_head";
        case JobPart::press: return "press";
        case JobPart::run_notes: return "run_notes";
        default: return nullptr;
    }
}

Json value_of(const JobDifference& one, const std::optional<double>& number,
              const std::string& text) {
    if (one.kind == DifferenceKind::text) return text;
    return number ? Json(rounded(*number)) : Json(nullptr);
}

Json differences_report(const Console& console, const Job& a, const Job& b,
                        const std::vector<JobDifference>& all) {
    Json list = Json::array();
    for (const JobDifference& one : all) {
        Json row;
        row["station"] = one.station != 0 ? Json(one.station) : Json(nullptr);
        row["kind"] = kind_name(one.kind);
        row["field"] = one.kind == DifferenceKind::number ? Json(info_of(one.field).key)
                                                          : Json(nullptr);
        row["part"] = part_name(one);
        row["first"] = value_of(one, one.a, one.text_a);
        row["second"] = value_of(one, one.b, one.text_b);
        const SaidDifference said = difference_text(console.language, console.unit, a, b, one);
        row["what"] = said.what;
        row["first_text"] = said.a;
        row["second_text"] = said.b;
        list.push_back(std::move(row));
    }
    return list;
}

std::string differences_text(const Console& console, const Job& a, const Job& b,
                             const std::vector<JobDifference>& all) {
    std::string out;
    for (std::size_t i = 0; i < all.size();) {
        out += (out.empty() ? "" : "\n") +
               printable(difference_owner(console.language, a, b, all[i])) + '\n';
        TextTable table;
        for (int column = 0; column < 4; ++column) table.column(false);
        const std::size_t first = i;
        for (; i < all.size() && same_owner(all[first], all[i]); ++i) {
            const SaidDifference said =
                difference_text(console.language, console.unit, a, b, all[i]);
            table.row({"", printable(said.what), printable(said.a), printable(said.b)});
        }
        out += table.text();
    }
    return out;
}

} // namespace

int compare_command(const Console& console, const Given& given) {
    if (given.operands.size() != 2) return console.misuse(console.text(Word::compare_two_needed));
    const std::optional<SourcedJob> first = job_from(console, given.operands[0]);
    if (!first) return exit_trouble;
    const std::optional<SourcedJob> second = job_from(console, given.operands[1]);
    if (!second) return exit_trouble;
    CompareBy by;
    by.as_set = !given.planned;
    const std::vector<JobDifference> all = job_changes(first->job, second->job, by);
    const int status = all.empty() ? exit_fit : exit_not_fit;
    if (console.json) {
        Json report = started_report();
        report["first"] = first->job.name;
        report["second"] = second->job.name;
        report["differences"] = differences_report(console, first->job, second->job, all);
        write_report(console.services.out, report);
        return status;
    }
    if (all.empty()) {
        write_out(console, console.text(Word::compare_same) + '\n');
        return status;
    }
    const std::string count = std::to_string(all.size());
    write_out(console, differences_text(console, first->job, second->job, all) + '\n' +
                           (all.size() == 1 ? console.text(Word::compare_count_one)
                                            : say(console.language, Word::compare_count, {count})) +
                           '\n');
    return status;
}

} // namespace carriageway
