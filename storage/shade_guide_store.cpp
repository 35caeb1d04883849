#include "storage/shade_guide_store.h"

#include "storage/statement.h"

namespace storage {
namespace {

domain::ShadeTab tabOf(const Statement& row) {
    domain::ShadeTab tab{.name = row.text("name"), .colour = {}};
    const auto colour = row.textIfAny("colour");
    if (!colour) return tab;
    tab.colour = domain::LabColour::parse(*colour);
    if (!tab.colour)
        throw SqlFailure{
            "the table shade_tab holds a colour that is none; expected L*, a* and b*, "
            "as \"" +
            std::string{domain::kLabExample} + '"'};
    return tab;
}

}  // namespace

domain::Result<std::vector<domain::ShadeGuide>> ShadeGuideStore::all() const try {
    std::vector<domain::ShadeGuide> guides;
    Statement rows{connection_, "shade_tab_all"};
    rows.run();
    while (rows.next()) {
        const std::string name = rows.text("guide");
        if (guides.empty() || guides.back().name != name)
            guides.push_back({.name = name, .source = rows.text("source"), .tabs = {}});
        guides.back().tabs.push_back(tabOf(rows));
    }
    return guides;
} catch (const SqlFailure& failure) {
    return failure.error();
}

domain::Result<domain::Done> ShadeGuideStore::put(Transaction& transaction,
                                                  const domain::ShadeGuide& guide) const try {
    Connection& records = transaction.connection();
    Statement{records, "shade_guide_put"}
        .bind({{"name", guide.name}, {"source", guide.source}})
        .run();
    Statement{records, "shade_tab_clear"}.bind("guide", guide.name).run();
    std::int64_t place = 0;
    for (const domain::ShadeTab& tab : guide.tabs)
        Statement{records, "shade_tab_insert"}
            .bind({{"guide", guide.name},
                   {"place", ++place},
                   {"name", tab.name},
                   {"colour", tab.colour ? Value{tab.colour->text()} : Value{}}})
            .run();
    return domain::Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
