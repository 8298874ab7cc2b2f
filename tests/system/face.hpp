// The program as people meet it: run on the demo plant, or on a copy of it that a test has changed.
#pragma once

#include <string>
#include <vector>

#include "tests/support/child.hpp"

namespace flutebook::fixture {

/// The folder of the demo plant.
[[nodiscard]] std::string demo_plant();

/// The file of a demo request, by its number. It is there, or the test fails.
[[nodiscard]] std::string demo_request(const std::string& number);
[[nodiscard]] std::vector<std::string> all_demo_requests();

/// `flutebook` with these words and no plant.
[[nodiscard]] Ended ask(const std::vector<std::string>& words);
/// `flutebook --plant PLANT` with these words.
[[nodiscard]] Ended ask_at(const std::string& plant, const std::vector<std::string>& words);
/// `flutebook --plant DEMO quote` with these words; files are `files`.
[[nodiscard]] Ended quote_demo(const std::vector<std::string>& files, const std::vector<std::string>& options = {});

/// A copy of the demo plant in a folder of its own, gone when it goes out of scope.
class PlantCopy {
public:
    PlantCopy();
    ~PlantCopy();
    PlantCopy(const PlantCopy&) = delete;
    PlantCopy& operator=(const PlantCopy&) = delete;

    [[nodiscard]] const std::string& folder() const { return folder_; }

    /// In one of its files; `from` is there, or the test fails.
    void replace(const std::string& file, const std::string& from, const std::string& to);
    /// Writes a file beside the plant's own; its path.
    std::string write(const std::string& file, const std::string& text);
    /// Lists houserule among the models, and lets it say what run waste is.
    void take_house_rule();
    /// Lays houserule's file into the plant's plugins folder, and lists it nowhere.
    void lay_house_rule() const;

private:
    std::string folder_;
};

/// A request for a plain box, at these quantities ("500, 1000").
[[nodiscard]] std::string plain_request(const std::string& number, const std::string& quantities);

}  // namespace flutebook::fixture
