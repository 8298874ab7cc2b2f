// A metric plant that is the us demo plant: every quantity of its files and requests that is written in a us unit is
// converted by the factors of NIST Special Publication 811 (2008), Appendix B.8, apart from the product's own units.
#pragma once

#include <functional>
#include <string>
#include <vector>

namespace flutebook::fixture {

/// The folder of the us demo plant, and its requests.
[[nodiscard]] std::string us_plant();
[[nodiscard]] std::vector<std::string> us_requests();

/// `15 1/4 in` of a file becomes `387.35 mm`, `units: us` becomes `units: metric`, and comments are left out. Throws
/// where a number is followed by a word that is no unit it knows.
[[nodiscard]] std::string in_metric_units(const std::string& file);

/// The us demo plant with each file rewritten, in a folder of its own, gone when it goes out of scope.
class RewrittenPlant {
public:
    explicit RewrittenPlant(const std::function<std::string(const std::string&)>& rewrite);
    ~RewrittenPlant();
    RewrittenPlant(const RewrittenPlant&) = delete;
    RewrittenPlant& operator=(const RewrittenPlant&) = delete;

    [[nodiscard]] const std::string& folder() const { return folder_; }
    /// In the order of us_requests().
    [[nodiscard]] std::vector<std::string> requests() const;

private:
    std::string folder_;
};

}  // namespace flutebook::fixture
