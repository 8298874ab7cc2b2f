// Taking changed plant files while the server serves: they are opened in a process apart, and where they are fit the
// server's own process begins anew with them. Where they are not, it goes on with those it has, and every page says
// why.
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

    /// What ends this process in favour of the next. Before anybody asks.
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
