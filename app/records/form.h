// The form of a job file: which fields stand where, said once and filled in by whoever walks it.
//
// A form is walked along by describe functions (job_form.h). The one that reads fills values from
// a tree, the one that writes makes text of them, and a test makes a JSON Schema: so the three
// can't drift apart.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/fields.h"

namespace carriageway {

/// Which numbers a field takes.
struct NumberRange {
    double least = 0.0; ///< in the core's unit
    double most = 0.0;
    double factor = 1.0; ///< value in the core = value in the file · factor
    bool above_least = false; ///< the least itself is not accepted
    Quantity quantity = Quantity::length;
    std::optional<double> usual = {}; ///< may be left out; that it is this is written so
};

/// The same for whole numbers.
struct WholeRange {
    std::int64_t least = 0;
    std::int64_t most = 0;
    std::optional<std::int64_t> usual = {}; ///< may be left out; that it is this is written so
};

/// How many items a list has.
struct ListSize {
    std::size_t least = 0;
    std::size_t most = 0;
    bool on_one_line = false; ///< written so: its items are short, and no lists or objects
    bool optional = false; ///< may be left out; that it has no items is written so
};

/// How long a text may be.
struct TextSize {
    std::size_t most = longest_name; ///< bytes
    bool optional = false; ///< may be left out; that it is empty is written so
};

/// Words of a choice, in the order of the enum's values.
using Choices = std::vector<const char*>;

/// One of the ways to say a thing: the keys that belong to it and what describes them.
struct Way {
    std::vector<const char*> keys;
    std::function<void()> describe;
};

/// A walk along the fields. Keys are those of the object that is open; "" is the item itself while
/// a list is walked. Values are read or set, as the walk needs.
class Form {
  public:
    virtual ~Form() = default;

    virtual void object(const char* key, const std::function<void()>& members) = 0;
    /// One that may be left out; `there` says whether it is written, and is set when read.
    virtual void optional_object(const char* key, bool& there,
                                 const std::function<void()>& members) = 0;
    /// Exactly one of several ways; `chosen` is the index of the one that is written.
    virtual void one_of(const std::vector<Way>& ways, std::size_t chosen) = 0;

    virtual void number(const char* key, double& value, const NumberRange& range) = 0;
    virtual void whole(const char* key, std::int64_t& value, const WholeRange& range) = 0;
    virtual void truth(const char* key, bool& value) = 0;
    virtual void text(const char* key, std::string& value, const TextSize& size) = 0;
    virtual void colour(const char* key, std::uint32_t& value) = 0;
    virtual void choice(const char* key, std::size_t& index, const Choices& choices) = 0;
    /// Those that may be left out; that it is `usual` is written so.
    virtual void optional_truth(const char* key, bool& value, bool usual) = 0;
    virtual void optional_choice(const char* key, std::size_t& index, const Choices& choices,
                                 std::size_t usual) = 0;

    /// A list of `size` items; `resize` is called before `item` when read.
    virtual void list(const char* key, std::size_t size, const ListSize& allowed,
                      const std::function<void(std::size_t)>& resize,
                      const std::function<void(std::size_t)>& item) = 0;
};

/// The number in a file that reads back as exactly this value: value == number · factor. Where there
/// are several, the one that is shortest to write. Nothing where there is none: of all doubles in
/// radians, about one in ten is no double of degrees times the factor.
std::optional<double> number_in_file(double value, double factor);

/// A limit in the file's unit, for a message or a schema: the number that reads back as exactly the
/// limit, or the nearest within it.
double limit_in_file(double limit, double factor);

/// A number as JSON: shortest digits that read back as the same double, no locale, whole numbers
/// without a point.
std::string number_text(double value);

} // namespace carriageway
