#include "app/records/command_line.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cerrno>
#include <ostream>

#include "app/records/command_options.h"
#include "app/records/job_source.h"

namespace carriageway {
namespace {

std::string cli_name(const OptionRow& option) {
    const std::string name = std::string("--") + option.name;
    return option.letter != '\0' ? std::string("-") + option.letter + "," + name : name;
}

/// The parser, fed from the table. Nothing is judged here but that values have their options.
class Parser {
  public:
    explicit Parser(Given& given) : app_("", "carriageway") {
        for (const CommandRow& row : command_rows()) {
            const bool whole = *row.name == '\0';
            CLI::App& app = whole ? app_ : *app_.add_subcommand(row.name);
            app.set_help_flag("");
            app.allow_extras();
            for (const OptionRow& option : row.options) add(app, option, given);
            for (const OptionRow& option : common_options()) add(app, option, given);
        }
        app_.require_subcommand(0, 1);
    }

    /// Reads the arguments; what is no option stays in `given.operands`.
    void parse(const std::vector<std::string>& arguments, Given& given) {
        app_.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
        given.operands = app_.remaining();
        for (const CLI::App* chosen : app_.get_subcommands()) {
            const std::vector<std::string> more = chosen->remaining();
            given.operands.insert(given.operands.end(), more.begin(), more.end());
        }
    }

    /// The command that was given, known even when what follows it was not understood.
    const CommandRow& command() const {
        const std::vector<CLI::App*> chosen = app_.get_subcommands();
        for (const CommandRow& row : command_rows()) {
            if (!chosen.empty() && chosen.front()->get_name() == row.name) return row;
        }
        return command_rows().back();
    }

  private:
    static void add(CLI::App& app, const OptionRow& option, Given& given) {
        if (option.flag != nullptr) {
            bool& set = given.*option.flag;
            app.add_flag_callback(cli_name(option), [&set] { set = true; });
            return;
        }
        std::optional<std::string>& value = given.*option.value;
        app.add_option_function<std::string>(cli_name(option),
                                             [&value](const std::string& text) { value = text; })
            ->multi_option_policy(CLI::MultiOptionPolicy::TakeLast);
    }

    CLI::App app_;
};

/// What the arguments say of the language, found even when the rest of them can't be understood.
std::optional<std::string> named_language(const std::vector<std::string>& arguments) {
    const std::string name = "--lang";
    std::optional<std::string> found;
    for (std::size_t at = 0; at < arguments.size(); ++at) {
        if (arguments[at] == name && at + 1 < arguments.size()) found = arguments[at + 1];
        if (arguments[at].rfind(name + "=", 0) == 0) found = arguments[at].substr(name.size() + 1);
    }
    return found;
}

std::optional<Language> language_named(const std::string& name) {
    if (name == "en") return Language::english;
    if (name == "es") return Language::spanish;
    return std::nullopt;
}

std::optional<LengthUnit> unit_named(const std::string& name) {
    if (name == "mm") return LengthUnit::mm;
    if (name == "in") return LengthUnit::inch;
    return std::nullopt;
}

/// Which option lacks its value: the parser's message starts with its name.
int parser_misuse(const Console& console, const CLI::ParseError& error) {
    const std::string message = error.what();
    const std::string option = message.substr(0, message.find(':'));
    if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) != nullptr && option[0] == '-') {
        return console.misuse(say(console.language, Word::option_needs_value, {option}));
    }
    return console.misuse(say(console.language, Word::arguments_not_read, {message}));
}

/// Options that no command has are left among the operands by the parser.
std::optional<std::string> unknown_option(const Given& given) {
    for (const std::string& operand : given.operands) {
        if (operand.size() > 1 && operand[0] == '-') return operand.substr(0, operand.find('='));
    }
    return std::nullopt;
}

/// Everything about the arguments that needs no job. exit_fit: they are understood.
int judge_arguments(const Console& console, const CommandRow& command, const Given& given) {
    const auto bad = [&](const std::string& value, const char* option, const std::string& use) {
        return console.misuse(say(console.language, Word::option_bad_value, {value, option, use}));
    };
    if (given.language && !language_named(*given.language)) {
        return bad(*given.language, "--lang", "en, es");
    }
    if (given.units && !unit_named(*given.units)) return bad(*given.units, "--units", "mm, in");
    if (given.help || given.version) return exit_fit;
    const std::size_t most = command.operand == Word::count ? 0 : 1;
    if (!command.many && given.operands.size() > most) {
        return console.misuse(say(console.language, Word::operand_extra, {given.operands[most]}));
    }
    if (command.needs_operand && given.operands.empty()) {
        return console.misuse(
            say(console.language, Word::operand_missing, {console.text(command.operand)}));
    }
    if (command.needs_output && !given.output) {
        return console.misuse(say(console.language, Word::operand_missing,
                                  {"-o " + console.text(Word::operand_out)}));
    }
    return exit_fit;
}

/// The version alone on the first line, where scripts look for it.
std::string version_text(const Console& console) {
    std::string text = "carriageway " + console.services.version + "\n";
    if (!console.services.built_on.empty()) text += console.text(Word::about_built_on) + ":\n";
    for (const BuiltOn& one : console.services.built_on) text += "  " + built_on_line(one) + "\n";
    return text;
}

/// No command: what the window is to be opened on.
CommandOutcome open_window_on(const Console& console, const Given& given) {
    WindowRequest window;
    if (given.json) {
        const std::string command = console.text(Word::operand_command);
        return {console.misuse(say(console.language, Word::operand_missing, {command})), {}};
    }
    if (given.open && !given.operands.empty()) {
        return {
            console.misuse(say(console.language, Word::operand_extra, {given.operands.front()})),
            {}};
    }
    const std::vector<std::string>& back_ends = console.services.back_ends;
    if (given.back_end) {
        window.back_end = *given.back_end;
        if (std::find(back_ends.begin(), back_ends.end(), window.back_end) == back_ends.end()) {
            return {console.misuse(say(console.language, Word::option_bad_value,
                                       {window.back_end, "--backend", joined(back_ends)})),
                    {}};
        }
    }
    if (given.language) window.language = language_named(*given.language);
    if (given.units) window.unit = unit_named(*given.units);
    if (given.open || !given.operands.empty()) {
        std::optional<SourcedJob> sourced =
            job_from(console, given.open ? *given.open : given.operands.front());
        if (!sourced) return {exit_trouble, {}};
        window.id = sourced->id;
        if (!window.id) window.job = std::move(sourced->job);
        window.from_link = sourced->from_link;
    }
    return {exit_fit, std::move(window)};
}

CommandOutcome carry_out(Console& console, const std::vector<std::string>& arguments) {
    Given given;
    Parser parser(given);
    const auto end_of_options = std::find(arguments.begin(), arguments.end(), "--");
    try {
        parser.parse({arguments.begin(), end_of_options}, given);
    } catch (const CLI::ParseError& error) {
        console.command = parser.command().name;
        return {parser_misuse(console, error), {}};
    }
    const CommandRow& command = parser.command();
    console.command = command.name;
    const std::optional<std::string> unknown = unknown_option(given);
    // What stands behind "--" is no option, whatever it starts with.
    if (end_of_options != arguments.end()) {
        given.operands.insert(given.operands.end(), end_of_options + 1, arguments.end());
    }
    if (unknown) {
        return {console.misuse(say(console.language, Word::unknown_option, {*unknown})), {}};
    }
    console.json = given.json;
    const int status = judge_arguments(console, command, given);
    if (status != exit_fit) return {status, {}};
    if (given.units) console.unit = *unit_named(*given.units);
    if (given.help) {
        write_out(console, help_text(console, command));
        return {};
    }
    if (given.version) {
        write_out(console, version_text(console));
        return {};
    }
    if (command.run == nullptr) return open_window_on(console, given);
    return {command.run(console, given), {}};
}

} // namespace

CommandOutcome run_command_line(const std::vector<std::string>& arguments,
                                const CommandServices& services) {
    Console console{services, services.language, services.unit, false, {}};
    if (const std::optional<std::string> name = named_language(arguments)) {
        console.language = language_named(*name).value_or(services.language);
    }
    CommandOutcome outcome = carry_out(console, arguments);
    errno = 0;
    services.out.flush();
    if (!services.out) {
        const std::error_code error(errno != 0 ? errno : EIO, std::generic_category());
        const FileFault fault{FileFault::Kind::system, error, true};
        console.complain(console.text(Word::standard_output),
                         fault_sentence(console.language, fault));
        outcome.status = exit_trouble;
        outcome.window.reset();
    }
    return outcome;
}

} // namespace carriageway
