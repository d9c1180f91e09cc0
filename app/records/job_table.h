// A job's heads as a table of values (CSV, RFC 4180), for a spreadsheet.
//
// A header, then a row a head in the order of stations. Fields are parted by commas; lines end with
// CR LF, the last one too; a field with a comma, a quotation mark, a line break or a space at an
// end stands in quotation marks, those within it doubled. UTF-8 without a byte order mark. The
// decimal mark is a point in every language.
//
// Numbers that are set at the press have two columns: what is planned, and what was really set,
// which is empty until it was ticked or noted on the walk. Stops are as read on the arm's ruler.
// What nobody has noted is empty. The numbers that are set once for the press stand in every row.
//
// A spreadsheet takes a field that begins with = + - @ or a control for a formula. Texts that
// people typed get an apostrophe before such a beginning, which spreadsheets show as text; numbers
// don't.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "app/text/measure.h"
#include "app/text/words.h"
#include "core/assess.h"

namespace carriageway {

/// The table of a job; `assessment` must be of it. Column names in the language, with their units.
std::string job_table(const Job& job, const Assessment& assessment, Language language,
                      LengthUnit unit);

/// A text as nothing but a text: with an apostrophe where a spreadsheet would take it for a
/// formula.
std::string plain_field(std::string_view text);

/// One line, CR LF included.
std::string csv_line(const std::vector<std::string>& fields);

} // namespace carriageway
