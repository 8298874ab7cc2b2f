#include "host/cli/offer_file.hpp"

#include <fmt/format.h>

#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"

namespace flutebook::cli {

OfferFile::OfferFile(const std::string& file, IfThere there, const plant::Plant& plant)
    : plant_(plant), words_(offers::read_offer_words(plant.folder)), file_(file, there) {}

void OfferFile::add(const answers::RequestAnswer& answer, const std::string& saved) {
    if (!offers::can_be_offered(answer)) return;
    offers_.push_back(offers::offer_report({plant_, answer, words_, saved, offers::conditions_of(plant_, answer)}));
}

void OfferFile::write() {
    if (offers_.empty())
        throw InputError(InputError::Whose::request,
                         {fmt::format("--offer: nothing to offer: found no quantity with a price; {} is not written",
                                      base::shown(file_.name()))});
    file_.write(offers::offer_page(plant_, words_, offers_));
}

}  // namespace flutebook::cli
