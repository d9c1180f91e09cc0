#include "app/drawing/paper_sheet.h"

#include "app/drawing/paper_parts.h"

namespace carriageway {

namespace {

PaperFrame frame_of(const PaperJob& sheet) {
    PaperFrame frame;
    frame.left = sheet.job.name;
    frame.right = sheet.job.press.name;
    if (!sheet.request.date.empty())
        frame.right += (frame.right.empty() ? "" : " · ") + sheet.request.date;
    frame.foot = sheet.word(Word::paper_decides);
    return frame;
}

JobSheet made_sheet(const PaperRequest& request, bool whole) {
    JobSheet made;
    made.type = std::make_unique<PaperType>();
    const PaperJob sheet(request);
    PaperPages pages(request.width, request.height, frame_of(sheet), *made.type);
    front_part(sheet, pages);
    heads_part(sheet, pages);
    run_part(sheet, pages);
    if (whole && request.page_a_head)
        for (const Head& head : sheet.job.heads) head_page(sheet, head, pages);
    else if (whole) grid_pages(sheet, pages);
    made.pages = pages.finish();
    return made;
}

} // namespace

JobSheet job_sheet(const PaperRequest& request) { return made_sheet(request, true); }

JobSheet job_sheet_front(const PaperRequest& request) { return made_sheet(request, false); }

std::vector<std::string> unprintable_letters(const Job& job) {
    std::vector<std::string> found;
    for (const std::string* text : {&job.name, &job.press.name, &job.garment.name})
        add_unprintable(*text, found);
    for (const Head& head : job.heads)
        for (const std::string* text : {&head.colour, &head.notes.ink, &head.notes.stencil})
            add_unprintable(*text, found);
    for (const WalkMark& mark : job.walk) add_unprintable(mark.stamp.initials, found);
    for (const CheckItem& item : job.press.checks)
        if (item.list == CheckList::before_run) add_unprintable(item.text, found);
    return found;
}

} // namespace carriageway
