/// The shade guides a laboratory has entered, each as it was entered last.
#pragma once

#include <vector>

#include "domain/materials/shade_guide.h"
#include "storage/transaction.h"

namespace storage {

class ShadeGuideStore {
public:
    explicit ShadeGuideStore(Connection& connection) : connection_{connection} {}

    /// In the order of their names. Does not hold the shipped guide unless it was entered anew.
    domain::Result<std::vector<domain::ShadeGuide>> all() const;
    /// Takes the place of the guide of that name.
    domain::Result<domain::Done> put(Transaction& transaction,
                                     const domain::ShadeGuide& guide) const;

private:
    Connection& connection_;
};

}  // namespace storage
