// A small plant as files in a temporary folder, to be changed by a word or two and read again.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::fixture {

/// Complaints, one a line, with the files named as if one stood in the folder.
using Lines = std::vector<std::string>;

/// A folder of its own that lives as long as this.
class PlantFolder {
public:
    PlantFolder();
    ~PlantFolder();
    PlantFolder(const PlantFolder&) = delete;
    PlantFolder& operator=(const PlantFolder&) = delete;

    [[nodiscard]] std::string path(const std::string& file) const { return (folder_ / file).string(); }
    [[nodiscard]] std::string path() const { return folder_.string(); }

    void write(const std::string& file, const std::string& text) const;
    void remove(const std::string& file) const { std::filesystem::remove(folder_ / file); }
    /// Replaces the one place where `old_text` stands in a file; fails the test if there is not exactly one.
    void change(const std::string& file, const std::string& old_text, const std::string& new_text) const;

    [[nodiscard]] plant::Plant read() const { return plant::read_plant(path()); }
    /// Reads r.yaml, the folder's request.
    [[nodiscard]] orders::Request read_request() const { return orders::read_request(read(), path("r.yaml")); }

    /// What read_plant() complains of; empty where it does not. Fails the test where the error is not the plant's.
    [[nodiscard]] Lines complaints() const;
    /// The same of r.yaml, whose plant must be fit.
    [[nodiscard]] Lines request_complaints() const;

private:
    [[nodiscard]] Lines named_from_within(const Lines& lines) const;

    std::filesystem::path folder_;
};

/// What the plant's files are complained of after one change.
[[nodiscard]] Lines complaints_after(const std::string& file, const std::string& old_text, const std::string& new_text);
/// What the request is complained of after one change.
[[nodiscard]] Lines request_complaints_after(const std::string& old_text, const std::string& new_text);

}  // namespace flutebook::fixture
