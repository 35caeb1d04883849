#include "reports/lot_table.h"

namespace reports {

Block lotBlock(const std::vector<LotLine>& lots) {
    if (lots.empty())
        return Paragraph{.text = "No lot is recorded for this device.", .quiet = false};
    Table table{.columns = {"Part", "Material", "Maker", "Lot", "Composition or certificate"},
                .shares = {0.15, 0.22, 0.20, 0.15, 0.28}};
    for (const LotLine& line : lots)
        table.rows.push_back(
            {line.part, line.material, line.maker, line.lot, line.composition.value_or("\u2013")});
    return table;
}

}  // namespace reports
