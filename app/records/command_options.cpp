#include "app/records/command_options.h"

#include <algorithm>

#include "app/records/mark_file.h"

namespace carriageway {
namespace {

OptionRow valued(char letter, const char* name, Word argument, Word does,
                 std::optional<std::string> Given::*value) {
    return {letter, name, argument, does, value, nullptr};
}
OptionRow flag(char letter, const char* name, Word does, bool Given::*set) {
    return {letter, name, Word::count, does, nullptr, set};
}

std::vector<CommandRow> made_rows() {
    const OptionRow output =
        valued('o', "output", Word::operand_out, Word::option_output, &Given::output);
    const OptionRow force = flag('\0', "force", Word::option_force, &Given::force);
    const auto text = [](const char* name, Word argument, Word does,
                         std::optional<std::string> Given::*value) {
        return valued('\0', name, argument, does, value);
    };
    return {
        {"check", Word::does_check, Word::operand_job, false, true, false, true, {}, check_command},
        {"rate", Word::does_rate, Word::operand_job, false, true, false, false, {}, rate_command},
        {"set",
         Word::does_set,
         Word::operand_job,
         false,
         true,
         true,
         true,
         {output, force},
         set_command},
        {"picture",
         Word::does_picture,
         Word::operand_job,
         false,
         true,
         true,
         false,
         {output, force, text("place", Word::operand_name, Word::option_place, &Given::place),
          text("head", Word::operand_number, Word::option_head, &Given::head),
          text("size", Word::operand_size, Word::option_size, &Given::size),
          text("scale", Word::operand_number, Word::option_scale, &Given::scale),
          text("theme", Word::operand_name, Word::option_theme, &Given::theme)},
         picture_command},
        {"import",
         Word::does_import,
         Word::operand_file,
         true,
         true,
         false,
         false,
         {},
         import_command},
        {"export",
         Word::does_export,
         Word::operand_name,
         false,
         true,
         true,
         false,
         {output, force},
         export_command},
        {"list",
         Word::does_list,
         Word::count,
         false,
         false,
         false,
         false,
         {text("search", Word::operand_text, Word::option_search, &Given::search)},
         list_command},
        {"link",
         Word::does_link,
         Word::operand_job,
         false,
         true,
         false,
         false,
         {text("base", Word::operand_address, Word::option_base, &Given::base)},
         link_command},
        {"stations",
         Word::does_stations,
         Word::operand_job,
         false,
         true,
         false,
         false,
         {text("alternatives", Word::operand_number, Word::option_alternatives,
               &Given::alternatives),
          flag('\0', "fixed-flashes", Word::option_fixed_flashes, &Given::fixed_flashes)},
         stations_command},
        {"sheet",
         Word::does_sheet,
         Word::operand_job,
         false,
         true,
         true,
         true,
         {valued('o', "output", Word::operand_out, Word::option_sheet_output, &Given::output), force,
          text("paper", Word::operand_name, Word::option_paper, &Given::paper),
          text("layout", Word::operand_name, Word::option_layout, &Given::layout),
          text("base", Word::operand_address, Word::option_base, &Given::base)},
         sheet_command},
        {"compare",
         Word::does_compare,
         Word::operand_two_jobs,
         true,
         true,
         false,
         false,
         {flag('\0', "planned", Word::option_planned, &Given::planned)},
         compare_command},
        {"register",
         Word::does_register,
         Word::operand_marks,
         false,
         true,
         false,
         false,
         {text("job", Word::operand_job, Word::option_register_job, &Given::job),
          text("head", Word::operand_number, Word::option_register_head, &Given::head)},
         register_command},
        {"separation",
         Word::does_separation,
         Word::operand_picture,
         true,
         true,
         false,
         false,
         {text("width", Word::operand_length, Word::option_width, &Given::width),
          text("into", Word::operand_job, Word::option_into, &Given::into),
          text("head", Word::operand_number, Word::option_into_head, &Given::head), output, force},
         separation_command},
        {"",
         Word::command_summary,
         Word::operand_job,
         false,
         false,
         false,
         false,
         {text("open", Word::operand_job, Word::option_open, &Given::open),
          text("backend", Word::operand_name, Word::option_back_end, &Given::back_end)},
         nullptr},
    };
}

// ---- help ----

struct HelpLine {
    std::string left;
    std::string right;
};

std::string choices_of(const Console& console, const OptionRow& option) {
    if (option.value == &Given::place) return joined(console.services.places);
    if (option.value == &Given::back_end) return joined(console.services.back_ends);
    return {};
}

HelpLine option_line(const Console& console, const OptionRow& option) {
    std::string left = option.letter != '\0' ? std::string("-") + option.letter + ", " : "    ";
    left += std::string("--") + option.name;
    if (option.argument != Word::count) left += " " + console.text(option.argument);
    return {left, say(console.language, option.does, {choices_of(console, option)})};
}

std::string operand_text(const Console& console, const CommandRow& command) {
    if (command.operand == Word::count) return {};
    std::string text = console.text(command.operand);
    if (command.many) text += "...";
    return command.needs_operand ? text : "[" + text + "]";
}

std::string usage_of(const Console& console, const CommandRow& command) {
    std::string usage = "carriageway";
    if (*command.name != '\0') usage += std::string(" ") + command.name;
    if (command.needs_output) usage += " -o " + console.text(Word::operand_out);
    usage += " [" + console.text(Word::operand_option) + "]...";
    const std::string operand = operand_text(console, command);
    return operand.empty() ? usage : usage + " " + operand;
}

/// Lines in two columns.
std::string laid_out(const std::vector<HelpLine>& lines) {
    std::size_t widest = 0;
    for (const HelpLine& line : lines)
        widest = std::max(widest, characters_in(line.left));
    std::string out;
    for (const HelpLine& line : lines) {
        out += "  " + line.left + std::string(widest - characters_in(line.left) + 2, ' ') +
               line.right + '\n';
    }
    return out;
}

std::string command_lines(const Console& console) {
    std::vector<HelpLine> lines;
    for (const CommandRow& row : command_rows()) {
        if (*row.name == '\0') continue;
        std::string left = row.name;
        const std::string operand = operand_text(console, row);
        if (!operand.empty()) left += " " + operand;
        if (row.needs_output) left += " -o " + console.text(Word::operand_out);
        lines.push_back({left, console.text(row.does)});
    }
    return "\n" + console.text(Word::heading_commands) + "\n" + laid_out(lines);
}

}  // namespace

const std::vector<OptionRow>& common_options() {
    static const std::vector<OptionRow> rows{
        flag('\0', "json", Word::option_json, &Given::json),
        valued('\0', "lang", Word::operand_name, Word::option_language, &Given::language),
        valued('\0', "units", Word::operand_name, Word::option_units, &Given::units),
        flag('h', "help", Word::option_help, &Given::help),
        flag('\0', "version", Word::option_version, &Given::version),
    };
    return rows;
}

const std::vector<CommandRow>& command_rows() {
    static const std::vector<CommandRow> rows = made_rows();
    return rows;
}

std::string joined(const std::vector<std::string>& words) {
    std::string out;
    for (const std::string& one : words)
        out += (out.empty() ? "" : ", ") + one;
    return out;
}

std::string help_text(const Console& console, const CommandRow& command) {
    const bool whole = *command.name == '\0';
    std::string out = say(console.language, Word::usage, {usage_of(console, command)}) + '\n';
    if (whole) {
        const std::string other = "carriageway " + console.text(Word::operand_command) + " [" +
                                  console.text(Word::operand_option) + "]...";
        out += "  " + say(console.language, Word::usage_or, {other}) + '\n';
    }
    out += capitalised(console.text(command.does));
    if (out.back() != '.') out += '.';
    out += '\n';
    const std::string job = console.text(Word::operand_job);
    if (whole) out += say(console.language, Word::command_without, {job}) + '\n';
    if (whole) out += command_lines(console);
    std::vector<HelpLine> lines;
    for (const OptionRow& option : command.options)
        lines.push_back(option_line(console, option));
    for (const OptionRow& option : common_options())
        lines.push_back(option_line(console, option));
    out += "\n" + console.text(Word::heading_options) + "\n" + laid_out(lines);
    out += '\n';
    if (command.operand == Word::operand_job) {
        out += say(console.language, Word::command_job_is, {job}) + '\n';
    }
    Word status = whole || command.judges ? Word::command_status : Word::command_status_done;
    if (command.operand == Word::operand_marks) {
        out += say(console.language, Word::command_marks_are,
                   {console.text(command.operand), mark_columns, print_columns}) +
               '\n';
        status = Word::command_status_register;
    }
    if (command.run == rate_command) status = Word::command_status_rate;
    if (command.run == stations_command) status = Word::command_status_stations;
    if (command.run == compare_command) status = Word::command_status_compare;
    return out + console.text(status) + '\n';
}

}  // namespace carriageway
