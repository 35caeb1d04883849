/// What this machine remembers from one day to the next, outside the records.
#pragma once

#include <QString>

#include "apps/actions/laboratory.h"

namespace desktop {

/// The station somebody signed in at here last; empty before the first time.
QString rememberedStation(const actions::Laboratory& laboratory);
void rememberStation(const actions::Laboratory& laboratory, const QString& station);

}  // namespace desktop
