// The sheet of a job as a PDF, for the command line and the screen alike. No window, no clock.
#pragma once

#include "app/drawing/paper_sheet.h"
#include "app/records/command_line.h"

namespace carriageway {

/// What is laid out for a request, with everything that it stands on.
struct SheetInput {
    Assessment assessment;
    PaperRequest paper;
};

/// Works out what a sheet says. `request` must outlive `input`.
void prepare_sheet(const SheetRequest& request, SheetInput& input);

/// The sheet as a PDF, or why there is none. The same request gives the same bytes.
DrawnSheet sheet_of(const SheetRequest& request);

/// Date of a moment as people write it, in the time zone of the machine: "2026-11-25"; 0: empty.
std::string date_text(Timestamp time);

} // namespace carriageway
