#include "tests/sdk/example_plant.hpp"

#include <stdexcept>

#include "host/base/yaml/document.hpp"
#include "host/engine/costing/blocks.hpp"
#include "host/fields/map_reader.hpp"

namespace flutebook::sdk_test {

plant::Plant example_plant(const std::vector<std::pair<std::string, Pairs>>& models) {
    plant::Plant plant = sample_plant();
    for (const auto& [id, settings] : models) plant.models.push_back(fixture::model_entry(id, settings));
    return plant;
}

plant::ModelSettings listed(const std::string& yaml) {
    base::Diagnostics complaints;
    const auto document = base::parse_document(yaml, "plugins.yaml", complaints);
    fields::Reading reading{complaints, "EUR"};
    auto result = plant::read_listed_model(fields::Field(*document, "plugins.yaml", reading).entries().at(0));
    complaints.throw_if_any(InputError::Whose::plant);
    return result;
}

plant::Preference prefer(const std::string& name, const std::string& model) {
    return {name, model, {"plugins.yaml", 1, 1}};
}

orders::Request with(orders::Request request, const std::string& model, const Pairs& extras) {
    plant::ModelSettings settings{model, {"R-1.yaml", 12, 3}, {}};
    int line = 12;
    for (const auto& [name, text] : extras) settings.settings.push_back(written(name, text, ++line, "R-1.yaml"));
    request.extras.push_back(std::move(settings));
    return request;
}

Costed::Costed(const plant::Plant& plant, const orders::Request& request)
    : plant_(plant),
      request_(request),
      engine_(open(plant_)),
      source_(plant_, engine_, request_),
      costing_(engine_.cost_in_full(source_.rows().at(0))) {}

std::vector<engine::LineAmount> Costed::lines(const std::string& line) const {
    std::vector<engine::LineAmount> result;
    for (const engine::LineAmount& amount : costing().lines)
        if (engine_.graph().models[amount.model].lines[amount.line].name == line) result.push_back(amount);
    return result;
}

double Costed::provided(const std::string& model, const std::string& name, std::size_t index) const {
    const engine::Blocks& blocks = engine_.blocks();
    const engine::Columns columns = blocks.columns_of(source_.rows().at(0));
    const auto& models = blocks.graph().models;
    for (std::size_t m = 0; m < models.size(); ++m)
        for (std::size_t p = 0; p < models[m].provides.size(); ++p)
            if (models[m].id == model && models[m].provides[p].name == name)
                return columns.column(blocks.slots().models[m].provides[p], index)[0];
    throw std::logic_error(model + " does not provide " + name);
}

double Costed::power_kw(std::size_t step) const {
    const geometry::Candidate& candidate = *source_.rows().at(0).candidate;
    if (step == 0) return candidate.corrugator->power_kw;
    return step <= candidate.route->last_step() ? candidate.route->converters[step - 1]->power_kw : 0;
}

std::string Costed::refused() const {
    const auto outcome = engine_.cost(source_.rows(), 1).at(0);
    if (outcome.state != engine::Outcome::State::refused) return "";
    return engine_.graph().models[outcome.model].reasons[outcome.reason];
}

}  // namespace flutebook::sdk_test
