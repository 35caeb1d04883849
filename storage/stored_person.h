/// A person's code as a row holds it.
#pragma once

#include "domain/base/id.h"
#include "storage/statement.h"

namespace storage {

/// Throws SqlFailure when the column `person` holds no code.
inline domain::PersonCode storedPerson(const Statement& row) {
    const std::string text = row.text("person");
    if (auto code = domain::PersonCode::parse(text)) return *code;
    throw SqlFailure{"the records are damaged: person holds \"" + text +
                     "\" where a person's code was expected"};
}

}  // namespace storage
