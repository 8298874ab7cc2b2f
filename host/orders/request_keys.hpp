// The keys of a request, for a person to write one: what each says, in which unit, with an example. The help of `quote`
// prints them; the reader of requests takes these and no others.
#pragma once

#include <string>
#include <vector>

#include "host/plant/plant.hpp"

namespace flutebook::orders {

struct RequestKey {
    enum class Given { always, at_will };
    const char* key;
    Given given;          // whether every request must give it
    const char* says;     // what it is, for a reader of the trade
    const char* unit;     // of its numbers where they are bare; empty where it has none
    const char* example;  // as it stands behind the key
};

/// In the order in which people write them.
[[nodiscard]] const std::vector<RequestKey>& request_keys();

/// The keys that read_request() asks for, as its code has them.
[[nodiscard]] std::vector<std::string> keys_that_are_read(const plant::Plant& plant);

}  // namespace flutebook::orders
