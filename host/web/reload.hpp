// Loads changed plant files while the server runs: a separate process opens them. If they have no errors, the server's
// process starts again with them; else it goes on with the old ones, and every page says why.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "host/web/plant_watch.hpp"

namespace flutebook::web {

/// Any thread.
class Reload {
public:
    /// `watch` must outlive it.
    Reload(std::string plant, PlantWatch& watch) : plant_(std::move(plant)), watch_(watch) {}

    /// Sets the function that replaces this process by the next. Call it before the first request.
    void hand_over_by(std::function<void()> act) { hand_over_ = std::move(act); }

    /// Opens the plant's files as they are now, and makes the server go on with them. Why it does not, line by line;
    /// empty where it does. Takes as long as a start.
    [[nodiscard]] std::vector<std::string> take_new_plant();

private:
    std::string plant_;
    PlantWatch& watch_;
    std::function<void()> hand_over_;
};

}  // namespace flutebook::web
