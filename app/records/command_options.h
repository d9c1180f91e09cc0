// What the command line understands: its commands and options, in one table that both the parser
// and the help are made from.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/records/console.h"

namespace carriageway {

/// The arguments as given, unjudged.
struct Given {
    std::vector<std::string> operands;
    std::optional<std::string> language, units;
    std::optional<std::string> output, place, head, size, scale, theme, search, back_end, open, base,
        width, into, job, alternatives, paper, layout;
    bool json = false;
    bool help = false;
    bool version = false;
    bool force = false;
    bool planned = false;
    bool fixed_flashes = false;
};

/// One option. Either `value` or `flag` is set.
struct OptionRow {
    char letter = '\0';  ///< of its short form; '\0': none
    const char* name = nullptr;
    Word argument = Word::count;  ///< what stands for its value in the help
    Word does = Word::count;
    std::optional<std::string> Given::*value = nullptr;
    bool Given::*flag = nullptr;
};

/// One command, or the program without one (its name is then empty).
struct CommandRow {
    const char* name = "";
    Word does = Word::count;
    Word operand = Word::count;  ///< Word::count: takes none
    bool many = false;           ///< operands may be repeated
    bool needs_operand = true;
    bool needs_output = false;
    bool judges = false;             ///< its exit status says whether the job is fit
    std::vector<OptionRow> options;  ///< its own; common_options() come on top
    int (*run)(const Console& console, const Given& given) = nullptr;
};

/// Options that every command takes.
const std::vector<OptionRow>& common_options();

/// The commands, then the program without one.
const std::vector<CommandRow>& command_rows();

/// The help of one command, or of the program.
std::string help_text(const Console& console, const CommandRow& command);

/// "a, b or c"-like lists of choices: "a, b, c".
std::string joined(const std::vector<std::string>& words);

// ---- the commands; each returns an exit status ----
int check_command(const Console& console, const Given& given);
int set_command(const Console& console, const Given& given);
int picture_command(const Console& console, const Given& given);
int import_command(const Console& console, const Given& given);
int export_command(const Console& console, const Given& given);
int list_command(const Console& console, const Given& given);
int link_command(const Console& console, const Given& given);
int register_command(const Console& console, const Given& given);
int separation_command(const Console& console, const Given& given);
int rate_command(const Console& console, const Given& given);
int stations_command(const Console& console, const Given& given);
int compare_command(const Console& console, const Given& given);
int sheet_command(const Console& console, const Given& given);

}  // namespace carriageway
