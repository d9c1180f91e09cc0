// carriageway link: a job as a link.
#include <algorithm>

#include "app/records/command_json.h"
#include "app/records/command_options.h"
#include "app/records/job_link.h"
#include "app/records/job_source.h"

namespace carriageway {
namespace {

/// Whether links can stand behind an address: http or https, and nothing that a terminal or a
/// message would break.
bool usable_base(const std::string& base) {
    const bool web = base.rfind("https://", 0) == 0 || base.rfind("http://", 0) == 0;
    return web && std::all_of(base.begin(), base.end(), [](char c) { return c > ' ' && c < '\x7F'; });
}

}  // namespace

int link_command(const Console& console, const Given& given) {
    if (given.base && !usable_base(*given.base)) {
        return console.misuse(say(console.language, Word::option_bad_value,
                                  {printable(*given.base), "--base", "https://..., http://..."}));
    }
    const std::string& name = given.operands.front();
    const std::optional<SourcedJob> sourced = job_from(console, name);
    if (!sourced) return exit_trouble;
    std::string link = job_link_fragment(sourced->job);
    if (link.empty()) {
        return console.complain(subject_of(console, name), console.text(Word::share_no_link));
    }
    if (given.base) link = given.base->substr(0, given.base->find('#')) + "#" + link;
    if (!console.json) {
        write_out(console, link + '\n');
        return exit_fit;
    }
    auto report = started_report();
    report["job"] = sourced->job.name;
    report["link"] = link;
    write_report(console.services.out, report);
    return exit_fit;
}

}  // namespace carriageway
