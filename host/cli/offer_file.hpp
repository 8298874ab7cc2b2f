// `--offer FILE`: the customer's sheets of what was quoted, in one file.
#pragma once

#include <string>
#include <vector>

#include "host/command_line/whole_file.hpp"
#include "host/offers/offer_report.hpp"

namespace flutebook::cli {

inline constexpr const char* offer_help = "write the customer's sheet to this file, .html";

/// Not thread-safe. The plant must outlive it.
class OfferFile {
public:
    /// Reads the words and makes the file, so that what is wrong with either is told before any work is done: throws
    /// InputError.
    OfferFile(const std::string& file, IfThere there, const plant::Plant& plant);

    /// Takes an answer, with its blanks drawn; one without a price is left out. `saved` is the quote's number in the
    /// ledger; empty: none. Throws InputError (plant) where a word is missing.
    void add(const answers::RequestAnswer& answer, const std::string& saved);

    /// Writes what was taken. Throws InputError (request) where that is nothing, or the file cannot be written.
    void write();

private:
    const plant::Plant& plant_;
    offers::OfferWords words_;
    WholeFile file_;
    std::vector<render::Report> offers_;
};

}  // namespace flutebook::cli
