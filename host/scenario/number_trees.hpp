// The numbers of a plant and of a request by their paths: `papers.TL125.price`, `machines.FG1.setup.minutes`,
// `energy.power_price`, `request.margin`. A path is that of messages, without the file. What changes is the trees of
// the files, which are then read again: so every number can differ, and none without the checks of its file.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "host/base/place.hpp"
#include "host/base/yaml/node.hpp"
#include "host/contract/model.hpp"
#include "host/plant/plant.hpp"
#include "host/scenario/number_change.hpp"

namespace flutebook::scenario {

/// One number that a change moved: its path in full, and what is written there.
struct MovedNumber {
    std::string path, was, now;
};

/// Copies are of their own. Refers to the models, which outlive it.
class NumberTrees {
public:
    /// Of a plant, the models that it lists, and a request's file, under `request`.
    NumberTrees(const plant::Plant& plant, const std::vector<contract::Model>& models, base::Node request);

    /// Changes what the path names: a number, or by per cent each number of a list or table; keys and days stay. A
    /// value takes the place of every number of a setting or of a dated list: it counts whatever the request. A setting
    /// that is not given is moved from its default, a key that an entry may leave out can be given a value. `*` stands
    /// for every name at its place. Throws InputError (request) with one line where there is no such number, which says
    /// what there is.
    std::vector<MovedNumber> change(const NumberChange& change);

    [[nodiscard]] const plant::FileTrees& files() const { return files_; }
    [[nodiscard]] const base::Node& request() const { return request_; }

    /// The paths of all values and keys by their places.
    [[nodiscard]] std::map<std::string, std::string> paths_by_place() const;

private:
    struct Spot;
    struct Search;

    [[nodiscard]] std::vector<Spot> roots();
    [[nodiscard]] std::vector<Spot> children(const Spot& spot);
    void add_settings(const Spot& of_model, std::vector<Spot>& result);
    void find(const Spot& at, std::string_view rest, Search& search);
    void find_child(const Spot& at, const std::vector<Spot>& known, std::string_view rest, Search& search);
    void add_written(const Spot& spot, std::vector<Spot>& result);
    void move_written(const NumberChange& change, const Spot& spot, std::vector<MovedNumber>& moved);
    void write_new(const NumberChange& change, const Spot& spot, std::vector<MovedNumber>& moved);
    base::Node& made(const Spot& spot);

    plant::FileTrees files_;
    const std::vector<contract::Model>& models_;
    base::Node request_;
};

}  // namespace flutebook::scenario
