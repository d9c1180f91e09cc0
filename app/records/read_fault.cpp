// What is wrong with a file, in words.
#include "app/records/exchange.h"
#include "app/text/words.h"

namespace carriageway {
namespace {

using Kind = ReadFault::Kind;

std::string file_unit(Language language, Quantity quantity) {
    switch (quantity) {
        case Quantity::length: return " mm";
        case Quantity::thread: return " µm";
        case Quantity::angle: return "°";
        case Quantity::speed: return " mm/s";
        case Quantity::acceleration: return " mm/s²";
        case Quantity::time: return " s";
        case Quantity::tension: return " N/cm";
        case Quantity::mesh_count: return " " + std::string(word(language, Word::unit_per_cm));
        case Quantity::marks: return " " + std::string(word(language, Word::unit_marks));
        case Quantity::pressure: return " kPa";
        case Quantity::temperature: return " °C";
        case Quantity::warming: return " °C/s";
        case Quantity::volume: return " cm³";
        case Quantity::turns: return " " + std::string(word(language, Word::unit_turns));
        case Quantity::jerk: return " mm/s³";
        case Quantity::hardness: return " Shore A";
        case Quantity::share:
        case Quantity::ratio:
        case Quantity::count: return {};
    }
    return {};
}

std::string place(Language language, const ReadFault& fault) {
    const std::string line = std::to_string(fault.line);
    if (fault.column > 0) {
        return say(language, Word::read_line_column, {line, std::to_string(fault.column)});
    }
    if (fault.path.empty()) {
        return fault.line > 0 ? say(language, Word::read_line, {line})
                              : std::string(word(language, Word::read_whole));
    }
    return fault.line > 0 ? say(language, Word::read_place, {fault.path, line}) : fault.path;
}

std::string_view shape_word(Language language, Shape shape) {
    switch (shape) {
        case Shape::object: return word(language, Word::shape_object);
        case Shape::list: return word(language, Word::shape_list);
        case Shape::number: return word(language, Word::shape_number);
        case Shape::whole_number: return word(language, Word::shape_whole_number);
        case Shape::text: return word(language, Word::shape_text);
        case Shape::truth: return word(language, Word::shape_truth);
        case Shape::colour: return word(language, Word::shape_colour);
        case Shape::none: break;
    }
    return {};
}

// Faults of the text itself.
std::string text_sentence(Language language, const ReadFault& fault, const std::string& at) {
    const std::string& found = fault.found;
    const std::string& expected = fault.expected;
    switch (fault.kind) {
        case Kind::empty: return std::string(word(language, Word::read_empty));
        case Kind::too_large: return say(language, Word::read_too_large, {found, expected});
        case Kind::wrong_encoding: return say(language, Word::read_wrong_encoding, {at, found});
        case Kind::syntax:
            if (found.empty()) return say(language, Word::read_cut_off, {at});
            if (expected.empty()) return say(language, Word::read_syntax, {at, found});
            return say(language, Word::read_syntax_expected, {at, found, expected});
        case Kind::trailing_text: return say(language, Word::read_trailing_text, {at, found});
        case Kind::too_deep: return say(language, Word::read_too_deep, {at, expected});
        case Kind::too_many_values: return say(language, Word::read_too_many_values, {at, expected});
        case Kind::duplicate_key: return say(language, Word::read_duplicate_key, {at});
        case Kind::not_finite: return say(language, Word::read_not_finite, {at, found});
        case Kind::wrong_document:
            if (found.empty()) return say(language, Word::read_wrong_document, {expected});
            return say(language, Word::read_other_document, {expected, found});
        case Kind::newer_version:
            return say(language, Word::read_newer_version, {fault.path, found, expected});
        case Kind::not_a_link: return std::string(word(language, Word::read_not_a_link));
        case Kind::newer_link: return say(language, Word::read_newer_link, {found, expected});
        case Kind::damaged_link: return std::string(word(language, Word::read_damaged_link));
        case Kind::link_too_large: return say(language, Word::read_link_too_large, {expected});
        default: break;
    }
    return {};
}

// Faults of a field. Numbers come with their unit.
std::string field_sentence(Language language, const ReadFault& fault, const std::string& at) {
    const std::string unit = fault.quantity ? file_unit(language, *fault.quantity) : std::string();
    const std::string found = fault.found + unit;
    const std::string expected = fault.expected + unit;
    switch (fault.kind) {
        case Kind::unknown_field:
            if (expected.empty()) return say(language, Word::read_unknown_field, {at, found});
            return say(language, Word::read_unknown_field_meant, {at, found, expected});
        case Kind::missing_field:
            if (expected.empty()) return say(language, Word::read_missing_field, {at});
            return say(language, Word::read_missing_choice, {at, expected});
        case Kind::wrong_type:
            return say(language, Word::read_found_expected,
                       {at, found, shape_word(language, fault.shape)});
        case Kind::out_of_range:
        case Kind::wrong_order:
            return say(language, Word::read_found_expected, {at, found, expected});
        case Kind::wrong_choice: return say(language, Word::read_wrong_choice, {at, found, expected});
        case Kind::wrong_length: return say(language, Word::read_wrong_length, {at, found, expected});
        case Kind::bad_text: return say(language, Word::read_long_text, {at, found, expected});
        case Kind::both_given: return say(language, Word::read_both_given, {at, expected});
        case Kind::taken:
            if (expected.empty()) return say(language, Word::read_taken, {at, found});
            return say(language, Word::read_taken_by_use, {at, found, expected});
        case Kind::not_an_outline: return say(language, Word::read_not_an_outline, {at});
        case Kind::repeated: return say(language, Word::read_repeated, {at, found});
        case Kind::out_of_order: return say(language, Word::read_out_of_order, {at, found, expected});
        case Kind::own_text: return say(language, Word::read_own_text, {at, found});
        case Kind::not_as_claimed: return say(language, Word::read_not_as_claimed, {at});
        default: break;
    }
    return say(language, Word::read_not_allowed, {at});
}

}  // namespace

std::string fault_sentence(Language language, const ReadFault& fault) {
    if (fault.kind == Kind::none) return {};
    const std::string at = place(language, fault);
    std::string sentence = text_sentence(language, fault, at);
    if (sentence.empty()) sentence = field_sentence(language, fault, at);
    // A path is a name and keeps its small letter.
    const bool starts_with_path = !fault.path.empty() && fault.column == 0;
    return starts_with_path ? sentence : capitalised(sentence);
}

}  // namespace carriageway
