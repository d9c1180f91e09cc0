// Writing along a form.
#pragma once

#include <string>

#include "app/records/form.h"

namespace carriageway {

/// Makes JSON text of what is walked, member by member in the order of the walk. What is walked is
/// one object, opened and closed by the writer itself.
class FormWriter : public Form {
  public:
    /// `pretty`: one member a line, two spaces a level; otherwise all on one line.
    explicit FormWriter(bool pretty);

    void object(const char* key, const std::function<void()>& members) override;
    void optional_object(const char* key, bool& there,
                         const std::function<void()>& members) override;
    void one_of(const std::vector<Way>& ways, std::size_t chosen) override;
    void number(const char* key, double& value, const NumberRange& range) override;
    void whole(const char* key, std::int64_t& value, const WholeRange& range) override;
    void truth(const char* key, bool& value) override;
    void text(const char* key, std::string& value, const TextSize& size) override;
    void colour(const char* key, std::uint32_t& value) override;
    void choice(const char* key, std::size_t& index, const Choices& choices) override;
    void optional_truth(const char* key, bool& value, bool usual) override;
    void optional_choice(const char* key, std::size_t& index, const Choices& choices,
                         std::size_t usual) override;
    void list(const char* key, std::size_t size, const ListSize& allowed,
              const std::function<void(std::size_t)>& resize,
              const std::function<void(std::size_t)>& item) override;

    /// The text, with a line feed at its end; the writer is done with.
    std::string finish();

  private:
    void begin(const char* key);
    void scalar(const char* key, const std::string& json);
    void open(const char* key, char bracket);
    void close(char bracket);
    void new_line();

    std::string out_;
    bool pretty_;
    bool first_ = true; ///< in the object or list that is open
    int level_ = 0;
    bool on_one_line_ = false; ///< inside a short list, which holds no other list or object
};

} // namespace carriageway
