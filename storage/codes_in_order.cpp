#include "storage/codes_in_order.h"

#include "storage/statement.h"

namespace storage {

std::string nextCode(const Connection& connection, std::string_view latestStatement) {
    Statement query{connection, latestStatement};
    if (!query.run().next()) throw SqlFailure{"no latest code"};
    std::string code = query.text("latest");
    for (auto digit = code.rbegin(); digit + 1 != code.rend(); ++digit) {
        if (*digit != '9') {
            ++*digit;
            return code;
        }
        *digit = '0';
    }
    throw SqlFailure{"the codes after " + query.text("latest") + " are used up"};
}

}  // namespace storage
