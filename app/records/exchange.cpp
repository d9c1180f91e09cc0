#include "app/records/exchange.h"

#include "app/records/document.h"
#include "app/records/expected_text.h"
#include "app/records/job_form.h"
#include "app/records/record_fault.h"

namespace carriageway {
namespace {

using Kind = ReadFault::Kind;

// ---- what core finds, at its place in the text ----

struct OrderedPair {
    Field lesser;
    Field greater;
};

// Numbers that must stand in order, as core's fault_of() checks them.
constexpr OrderedPair ordered[] = {
    {Field::operator_sensor, Field::machine_sensor},
    {Field::range_lo, Field::range_hi},
    {Field::squeegee_lowest_mark, Field::squeegee_highest_mark},
    {Field::flood_lowest_mark, Field::flood_highest_mark},
    {Field::least_angle, Field::most_angle},
    {Field::height_operator_y, Field::height_machine_y},
    {Field::operator_stop, Field::machine_stop},
};

std::string in_file(const Job& job, const Head* head, Field field) {
    const double factor = file_factor(info_of(field).quantity);
    const double value = number_of(job, head, field);
    return number_text(number_in_file(value, factor).value_or(value / factor));
}

std::optional<ReadFault> order_fault(const Job& job, const Head* head, std::size_t index,
                                     Field field) {
    for (const OrderedPair& pair : ordered) {
        if (pair.lesser != field) continue;
        if (number_of(job, head, pair.lesser) < number_of(job, head, pair.greater)) continue;
        ReadFault fault;
        fault.kind = Kind::wrong_order;
        fault.path = path_of(field, index);
        fault.found = in_file(job, head, field);
        fault.expected = "< " + in_file(job, head, pair.greater);
        fault.quantity = info_of(field).quantity;
        return fault;
    }
    return std::nullopt;
}

ReadFault fault_at(Kind kind, std::string path, std::string found, std::string expected) {
    ReadFault fault;
    fault.kind = kind;
    fault.path = std::move(path);
    fault.found = std::move(found);
    fault.expected = std::move(expected);
    return fault;
}

// What one head's id and station have against those before it, and the press.
std::optional<ReadFault> place_fault(const Job& job, std::size_t index) {
    const Head& head = job.heads[index];
    const std::string path = "heads[" + std::to_string(index) + "]";
    const std::string station = std::to_string(head.station);
    for (std::size_t i = 0; i < index; ++i) {
        if (job.heads[i].id == head.id) {
            return fault_at(Kind::taken, path + ".id", std::to_string(head.id), {});
        }
        if (job.heads[i].station == head.station) {
            return fault_at(Kind::taken, path + ".station", station, {});
        }
    }
    if (head.station > job.press.stations) {
        return fault_at(Kind::out_of_range, path + ".station", station,
                        range_text(WholeRange{1, job.press.stations}));
    }
    if (index > 0 && head.station < job.heads[index - 1].station) {
        return fault_at(Kind::wrong_order, path + ".station", station,
                        "> " + std::to_string(job.heads[index - 1].station));
    }
    const StationUse use = job.uses[static_cast<std::size_t>(head.station - 1)];
    if (use != StationUse::open) {
        return fault_at(Kind::taken, path + ".station", station, station_use_key(use));
    }
    return std::nullopt;
}

}  // namespace

std::optional<ReadFault> fault_of_whole(const Job& job) {
    if (job.uses.size() != static_cast<std::size_t>(job.press.stations)) {
        return fault_at(Kind::wrong_length, "stations", std::to_string(job.uses.size()),
                        std::to_string(job.press.stations));
    }
    for (std::size_t i = 0; i < job.heads.size(); ++i) {
        if (auto fault = place_fault(job, i)) return fault;
    }
    const auto found = fault_of(job);
    if (!found) return std::nullopt;
    if (auto fault = record_fault(job)) return fault;

    const Head* head = find_head(job, found->head);
    const auto index = head == nullptr ? 0 : static_cast<std::size_t>(head - job.heads.data());
    const std::string head_path = "heads[" + std::to_string(index) + "]";
    if (found->field != Field::count) {
        if (auto fault = order_fault(job, head, index, found->field)) return fault;
    }
    if (found->refusal == Refusal::not_an_outline) {
        return fault_at(Kind::not_an_outline, head_path + ".image.outline_mm", "[\u2026]", {});
    }
    ReadFault fault;
    fault.kind = Kind::not_allowed;
    fault.refusal = found->refusal;
    if (found->field != Field::count) {
        fault.path = path_of(found->field, index);
        fault.found = in_file(job, head, found->field);
        fault.quantity = info_of(found->field).quantity;
    } else if (head != nullptr) {
        fault.path = head_path;
    }
    return fault;
}

ReadJob read_job(std::string_view text) {
    Job job;
    ReadJob read;
    read.fault = read_document(text, job_key, job_format, job, describe_job, fault_of_whole);
    if (read.fault.kind == Kind::none) read.job = std::move(job);
    return read;
}

ReadPress read_press(std::string_view text) {
    PressProfile press;
    ReadPress read;
    const auto check = [](const PressProfile& profile) {
        Job job;
        job.press = profile;
        job.uses.resize(static_cast<std::size_t>(profile.stations));
        auto fault = fault_of_whole(job);
        constexpr std::string_view inside_a_job = "press.";
        if (fault && fault->path.compare(0, inside_a_job.size(), inside_a_job) == 0) {
            fault->path.erase(0, inside_a_job.size());
        }
        return fault;
    };
    read.fault = read_document(text, press_key, job_format, press, describe_press, check);
    if (read.fault.kind == Kind::none) read.press = std::move(press);
    return read;
}

ReadEdit read_edit(std::string_view text) {
    Edit edit;
    ReadEdit read;
    const auto no_check = [](const Edit&) { return std::optional<ReadFault>(); };
    read.fault = read_document(text, edit_key, job_format, edit, describe_edit, no_check);
    if (read.fault.kind == Kind::none) read.edit = std::move(edit);
    return read;
}

std::string write_job(const Job& job) {
    return write_document(job_key, job_format, job, describe_job, true);
}

std::string write_job_compact(const Job& job) {
    std::string text = write_document(job_key, job_format, job, describe_job, false);
    text.pop_back();  // the line feed
    return text;
}

std::string write_press(const PressProfile& press) {
    return write_document(press_key, job_format, press, describe_press, true);
}

std::string write_edit(const Edit& edit) {
    return write_document(edit_key, job_format, edit, describe_edit, false);
}

}  // namespace carriageway
