#include "app/records/record_fault.h"

#include <cmath>
#include <set>

#include "app/records/expected_text.h"
#include "app/records/form_parts.h"
#include "app/records/json_piece.h"

namespace carriageway {
namespace {

using Kind = ReadFault::Kind;

ReadFault fault_at(Kind kind, std::string path, std::string found, std::string expected = {}) {
    ReadFault fault;
    fault.kind = kind;
    fault.path = std::move(path);
    fault.found = std::move(found);
    fault.expected = std::move(expected);
    return fault;
}

std::string entry(const char* list, std::size_t index) {
    return std::string(list) + "[" + std::to_string(index) + "]";
}

/// The first entry whose id, which `id` gives, an earlier one has already; `key` holds it.
template <typename Items, typename Id>
std::optional<ReadFault> repeated_id(const Items& items, const char* list, const char* key, Id id) {
    std::set<std::uint32_t> seen;
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (seen.insert(id(items[i])).second) continue;
        return fault_at(Kind::repeated, entry(list, i) + "." + key, std::to_string(id(items[i])));
    }
    return std::nullopt;
}

std::optional<ReadFault> checks_fault(const std::vector<CheckItem>& checks) {
    constexpr const char* list = "press.checks";
    for (std::size_t i = 0; i < checks.size(); ++i) {
        const CheckItem& item = checks[i];
        if ((item.step == CheckStep::own) == !item.text.empty()) continue;
        return fault_at(Kind::own_text, entry(list, i) + ".text", shortened(in_quotes(item.text)));
    }
    return repeated_id(checks, list, "id", [](const CheckItem& item) { return item.id; });
}

std::string named(const WalkMark& mark) {
    return std::to_string(mark.head) + " " + info_of(mark.field).key;
}

/// What was really set, outside the limits of its number; `path` is that of "real".
ReadFault real_fault(Field field, double real, const std::string& path) {
    const FieldInfo& info = info_of(field);
    const bool angle = info.quantity == Quantity::angle;
    if (std::isnan(real)) { // given in a way that isn't this number's
        return fault_at(Kind::missing_field, path + (angle ? ".value_deg" : ".value"), {},
                        angle ? "value_deg | value_rad" : "value");
    }
    const NumberRange range = range_of(field);
    const std::optional<double> in_file = number_in_file(real, range.factor);
    const char* key = !angle ? ".value" : in_file ? ".value_deg" : ".value_rad";
    ReadFault fault =
        fault_at(Kind::out_of_range, path + key, number_text(in_file.value_or(real / range.factor)),
                 range_text(range));
    if (info.quantity == Quantity::count && real != std::round(real)) {
        fault.kind = Kind::wrong_type;
        fault.shape = Shape::whole_number;
    }
    fault.quantity = info.quantity;
    return fault;
}

/// What one mark has against the number that it is about.
std::optional<ReadFault> mark_fault(const WalkMark& mark, const std::string& path) {
    const bool of_head = info_of(mark.field).owner == FieldOwner::head;
    if (of_head != (mark.head != 0)) {
        return fault_at(Kind::out_of_range, path + ".head", std::to_string(mark.head),
                        of_head ? range_text(WholeRange{1, most_head_id}) : "0");
    }
    if (!mark.real || accepts(mark.field, *mark.real)) return std::nullopt;
    return real_fault(mark.field, *mark.real, path + ".real");
}

std::optional<ReadFault> walk_fault(const std::vector<WalkMark>& walk) {
    for (std::size_t i = 0; i < walk.size(); ++i) {
        const std::string path = entry("walk", i);
        if (auto fault = mark_fault(walk[i], path)) return fault;
        if (i == 0 || walk_before(walk[i - 1], walk[i])) continue;
        const bool twice = !walk_before(walk[i], walk[i - 1]);
        return twice ? fault_at(Kind::repeated, path, named(walk[i]))
                     : fault_at(Kind::out_of_order, path, named(walk[i]), named(walk[i - 1]));
    }
    return std::nullopt;
}

std::optional<ReadFault> counts_fault(const std::vector<PieceCount>& counts) {
    for (std::size_t i = 0; i < counts.size(); ++i) {
        if (counts[i].spoiled <= counts[i].printed) continue;
        const NumberRange range{0.0, counts[i].printed, 1.0, false, Quantity::count};
        return fault_at(Kind::out_of_range, entry("record.counts", i) + ".spoiled",
                        number_text(counts[i].spoiled), range_text(range));
    }
    return std::nullopt;
}

} // namespace

std::optional<ReadFault> record_fault(const Job& job) {
    if (auto fault = checks_fault(job.press.checks)) return fault;
    if (auto fault = walk_fault(job.walk)) return fault;
    if (auto fault = counts_fault(job.record.counts)) return fault;
    return repeated_id(job.record.ticks, "record.ticks", "item",
                       [](const CheckTick& tick) { return tick.item; });
}

} // namespace carriageway
