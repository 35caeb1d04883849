/// Where papers are written, and what stands at their head.
#pragma once

#include <filesystem>

#include "apps/actions/access.h"
#include "apps/actions/laboratory.h"
#include "apps/actions/who.h"
#include "reports/paper_file.h"

namespace actions {

/// The letterhead, now, by this person; about no order yet.
domain::Result<reports::PaperHead> paperHead(const Laboratory& laboratory, const Who& who);

/// Never in the folder of the records but in its papers/. `isIssued`: once written it stays as it
/// is, as a statement or a letter that went out.
reports::PaperPlace paperPlace(const Laboratory& laboratory, bool isIssued);

/// papers/NAME.pdf in the laboratory's folder, which is made if it is not there. In the place of an
/// earlier print; an issued paper that says something else is written as NAME-2, NAME-3 ...
/// What cannot be noted in the access log is not written.
domain::Result<std::filesystem::path> writePaper(const Laboratory& laboratory,
                                                 const reports::Paper& paper,
                                                 const std::string& name, bool isIssued,
                                                 const Printed& printed, const Who& who);
/// As a file that a person names.
domain::Result<domain::Done> writePaperTo(const Laboratory& laboratory, const reports::Paper& paper,
                                          const std::filesystem::path& file, bool isIssued,
                                          const Printed& printed, const Who& who);

}  // namespace actions
