// Checks whether the plant's files are still those that the server uses. It never loads new ones while it serves: a
// price could change between two lines of a page.
#pragma once

#include <chrono>
#include <map>
#include <mutex>
#include <string>
#include <vector>

#include "host/pages/frame.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::web {

/// Any thread. `plant` must outlive it.
class PlantWatch {
public:
    explicit PlantWatch(const plant::Plant& plant) : plant_(plant) {}

    /// What refuse() said, then one for each file that is another now. The files are looked at once a second at most.
    [[nodiscard]] std::vector<pages::Notice> notices();

    /// New files were tried and are not fit: why not, told from now on.
    void refuse(const std::vector<std::string>& lines);

    /// What became of each such file, by its name: "changed at 10:41 UTC". As often.
    [[nodiscard]] std::map<std::string, std::string> changes();

private:
    [[nodiscard]] std::vector<pages::Notice> refusals();

    const plant::Plant& plant_;
    std::mutex mutex_;
    std::chrono::steady_clock::time_point looked_{};
    bool has_looked_ = false;
    std::vector<pages::Notice> refusals_;
    std::map<std::string, std::string> changes_;
};

}  // namespace flutebook::web
