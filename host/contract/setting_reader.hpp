// Reads the values that a file gives for one setting and checks them against its declaration: unit, range, choices,
// keys and steps. Every error and every unusual value is kept with file, line and column.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/base/diagnostics.hpp"
#include "host/base/place.hpp"
#include "host/contract/model.hpp"
#include "host/contract/setting_values.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::contract {

/// The setting of the same model whose choices are the keys of a setting that varies by choice; null for others.
[[nodiscard]] const Setting* choice_setting(const Model& model, const Setting& setting);

/// The default; for a setting without one, the number in its range that is nearest to 0.
[[nodiscard]] double value_if_not_given(const Setting& setting);

/// "0 to 10 money/kWh", "0 to 1".
[[nodiscard]] std::string range_text(const Setting& setting);

/// ", did you mean 'x'?", or the whole list where nothing is near.
[[nodiscard]] std::string suggestion(const std::string& word, const std::vector<std::string>& known);

/// Whether every table of a plant's codes could be read. Where one could not, no unknown key is complained of.
enum class PlantCodes : char { all_known, some_unknown };

class SettingReader {
public:
    /// Of a plant, whose currency and prices say what an amount of money is.
    explicit SettingReader(const plant::Plant& plant, PlantCodes codes = PlantCodes::all_known);

    /// What plugins.yaml gives for a setting that does not vary by request.
    [[nodiscard]] SettingValues read(const plant::Plant& plant, const Model& model, const Setting& setting,
                                     const plant::GivenSetting& given, const std::string& path);

    /// What a request gives for a setting that varies by request.
    [[nodiscard]] SteppedValue read(const Model& model, const Setting& setting, const plant::GivenSetting& given,
                                    const std::string& path);

    /// The values of a setting that is not given: its default everywhere. The host fills what must be given and is not
    /// with a number in its range; nobody takes that.
    [[nodiscard]] static SettingValues values_if_not_given(const plant::Plant& plant, const Model& model,
                                                           const Setting& setting);

    void complain(const base::Place& place, const std::string& path, const std::string& what) {
        faults_.add(place, path, what);
    }

    [[nodiscard]] const base::Diagnostics& faults() const { return faults_; }
    [[nodiscard]] std::vector<UnusualValue> take_unusual() { return std::move(unusual_); }

private:
    // One setting being read.
    struct Subject;

    std::optional<double> number(const Subject& subject, const fields::GivenText& given, const std::string& path);
    std::optional<double> choice(const Subject& subject, const fields::GivenText& given, const std::string& path);
    void complain_of_nothing(const Setting& setting, const base::Place& place, const std::string& path);
    void hold_against_usual(const Setting& setting, double number, const base::Place& place, const std::string& path);
    SteppedValue stepped(const Subject& subject, const plant::GivenValue& given, const base::Place& place,
                         const std::string& path);
    SteppedValue steps(const Subject& subject, const plant::GivenTable& given, const base::Place& place,
                       const std::string& path);
    std::optional<double> step_key(const Name& need, const plant::GivenCell& cell, const std::vector<ValueStep>& before,
                                   const std::string& path);
    SettingTable table(const Subject& subject, const plant::GivenValue& given, const base::Place& place,
                       const std::string& path);
    void put_cells(SettingTable& result, const Subject& subject, const plant::GivenTable& cells,
                   const std::string& path);
    void refuse_gaps(const Subject& subject, const plant::GivenTable& cells, const base::Place& place,
                     const std::string& path);

    fields::UnitWords words_;
    double money_scale_;  // of usual ranges
    PlantCodes codes_;
    base::Diagnostics faults_;
    std::vector<UnusualValue> unusual_;
};

}  // namespace flutebook::contract
