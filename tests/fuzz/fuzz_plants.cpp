// Mutated files of a plant through the real reader; what the reader takes, through the whole program, which costs the
// demo's requests on it as a process of its own.
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>

#include "host/base/characters.hpp"
#include "host/base/errors.hpp"
#include "host/plant/plant.hpp"
#include "tests/fuzz/fuzzer.hpp"
#include "tests/support/child.hpp"

using namespace flutebook;
using fuzz::CaseEnd;
using fuzz::WrongCase;

namespace {

namespace fs = std::filesystem;

// A folder that is gone with the program.
class ScratchPlant {
public:
    explicit ScratchPlant(const std::string& model) {
        std::string pattern = (fs::temp_directory_path() / "flutebook-fuzz-XXXXXX").string();
        if (::mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no folder for a plant");
        folder_ = pattern;
        fs::copy(model, folder_, fs::copy_options::recursive);
    }
    ~ScratchPlant() {
        std::error_code ignored;
        fs::remove_all(folder_, ignored);
    }
    ScratchPlant(const ScratchPlant&) = delete;
    ScratchPlant& operator=(const ScratchPlant&) = delete;

    [[nodiscard]] const std::string& folder() const { return folder_; }
    void write(const std::string& file, const std::string& text) const {
        std::ofstream(fs::path(folder_) / file, std::ios::binary) << text;
    }

private:
    std::string folder_;
};

class PlantFuzzer {
public:
    PlantFuzzer() : scratch_(FLUTEBOOK_SOURCE_DIR "/config/demo") {
        for (const std::string& name : plant::plant_file_names())
            texts_[name] = fuzz::read_file(scratch_.folder() + "/" + name);
        for (const auto& entry : fs::directory_iterator(scratch_.folder() + "/requests"))
            requests_.push_back(entry.path().string());
        std::sort(requests_.begin(), requests_.end());
    }

    [[nodiscard]] CaseEnd run_case(fuzz::Draws& draws) const {
        const std::string& name = draws.of(plant::plant_file_names());
        plant::FileTexts texts = texts_;
        texts[name] = fuzz::mutated(texts[name], draws);
        try {
            static_cast<void>(plant::read_plant(scratch_.folder(), texts));
        } catch (const InputError& error) {
            if (error.whose() != InputError::Whose::plant)
                throw WrongCase{"a plant's error that is told as a request's: " + error.lines().front(), texts[name]};
            if (const auto fault = fuzz::fault_of_refusal(error.lines(), {scratch_.folder()}))
                throw WrongCase{*fault, texts[name]};
            return CaseEnd::refused;
        }
        return quote_on(name, texts[name], draws);
    }

private:
    // The program itself, on the mutated file.
    [[nodiscard]] CaseEnd quote_on(const std::string& name, const std::string& text, fuzz::Draws& draws) const {
        scratch_.write(name, text);
        const fixture::Ended ended =
            fixture::run({{FLUTEBOOK_PROGRAM, "--plant", scratch_.folder(), "quote", draws.of(requests_), "--json"}});
        scratch_.write(name, texts_.at(name));
        if (ended.signal != 0 || ended.exit_code < 0 || ended.exit_code > 3)
            throw WrongCase{"the program ended with " + std::to_string(ended.exit_code) + ", signal " +
                                std::to_string(ended.signal) + ": " + ended.errors,
                            text};
        check(ended, text);
        return ended.exit_code == 0 ? CaseEnd::answered : CaseEnd::refused;
    }

    static bool begins_with_a_number(const std::string& line) {
        static const char* in_names = "abcdefghijklmnopqrstuvwxyz0123456789_-.";
        const auto past = line.find_first_not_of(in_names);
        return past != std::string::npos && line.compare(past, 2, ": ") == 0 && line.find('.') < past &&
               base::is_plain_line(line);
    }

    void check(const fixture::Ended& ended, const std::string& text) const {
        auto lines = fixture::lines_of(ended.errors);
        // What does not fit between models is placed by the number that one needs: "run.hours: ".
        lines.erase(std::remove_if(lines.begin(), lines.end(), begins_with_a_number), lines.end());
        const std::vector<std::string> places = {scratch_.folder(), FLUTEBOOK_PLUGIN_DIR,
                                                 fs::path(FLUTEBOOK_PLUGIN_DIR).parent_path().string(), "warning: "};
        if (!lines.empty())
            if (const auto fault = fuzz::fault_of_refusal(lines, places)) throw WrongCase{*fault, text};
        if (ended.exit_code == 2) throw WrongCase{"wrong usage, where a file was wrong: " + ended.errors, text};
        if (ended.exit_code == 0 && ended.output.empty()) throw WrongCase{"done, without an answer", text};
        if (ended.output.empty()) return;
        const std::vector<std::string> may_be_negative = {"lines", "contribution_per_thousand",
                                                          "price_less_cash_per_thousand", "profit", "profit_share"};
        if (const auto fault = fuzz::fault_of_document(ended.output, may_be_negative)) throw WrongCase{*fault, text};
    }

    ScratchPlant scratch_;
    plant::FileTexts texts_;
    std::vector<std::string> requests_;
};

}  // namespace

int main(int count, char** words) {
    const PlantFuzzer fuzzer;
    return fuzz::run_fuzzer(count, words, [&](fuzz::Draws& draws) { return fuzzer.run_case(draws); });
}
