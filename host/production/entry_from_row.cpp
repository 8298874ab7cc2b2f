#include "host/production/entry_from_row.hpp"

#include "host/production/kinds.hpp"

namespace flutebook::production {

Worth entry_from_row(const DocumentRow& row, const plant::Plant& plant, Book& book) {
    RowValidation examination(row, plant, book);
    switch (row.kind) {
        case Kind::paper:
            return paper_issue(examination);
        case Kind::corrugator_run:
            return corrugator_run(examination);
        case Kind::converter_run:
            return converter_run(examination);
        case Kind::weighed_scrap:
            return weighed_scrap(examination);
        case Kind::bale:
            return bale(examination);
        case Kind::ticket:
            return ticket(examination);
        case Kind::centre_cost:
            return centre_cost(examination);
        case Kind::count:
            break;
    }
    return count(examination);
}

}  // namespace flutebook::production
