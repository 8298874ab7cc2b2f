// Reads CSV that may be hostile: limits the length of a line first, then checks its bytes, then its quotes, then its
// fields.
#include "host/base/csv.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstring>
#include <filesystem>
#include <system_error>
#include <utility>

#include "host/base/characters.hpp"
#include "host/base/quoted_text.hpp"

namespace flutebook::base {

namespace {

// What is wrong with a line, for a message.
std::string fault_of_line(std::string_view line, std::size_t at) {
    const CharacterFault fault = character_at(line, at).fault;
    const bool is_text = fault == CharacterFault::control || fault == CharacterFault::invisible;
    return fmt::format("found {}; expected {}", fault_text(line, at),
                       is_text ? "a line of plain text" : "text in UTF-8");
}

std::string_view stripped(std::string_view field) {
    const auto first = field.find_first_not_of(' ');
    if (first == std::string_view::npos) return {};
    return field.substr(first, field.find_last_not_of(' ') - first + 1);
}

// A spreadsheet leaves lines of separators below its table.
bool is_blank(std::string_view text, char separator) {
    return std::all_of(text.begin(), text.end(), [&](char sign) { return sign == ' ' || sign == separator; });
}

}  // namespace

std::variant<CsvReader, std::string> CsvReader::open(const std::string& file) {
    std::error_code failure;
    const auto status = std::filesystem::status(file, failure);
    if (status.type() == std::filesystem::file_type::not_found) return "no such file";
    if (!std::filesystem::exists(status)) return "cannot be read: " + failure.message();
    if (std::filesystem::is_directory(status)) return "found a folder; expected a file of documents";
    if (!std::filesystem::is_regular_file(status)) return "found a pipe or device; expected a plain file";
    std::ifstream stream(file, std::ios::binary);
    if (!stream.is_open()) return "cannot be read: check its permissions";
    return CsvReader(std::move(stream));
}

CsvReader::CsvReader(std::ifstream stream) : stream_(std::move(stream)), buffer_(longest_line) {
    if (fill() && end_ >= 3 && std::memcmp(buffer_.data(), "\xEF\xBB\xBF", 3) == 0) begin_ = 3;
}

// Whether anything is left to read.
bool CsvReader::fill() {
    if (begin_ < end_) return true;
    stream_.read(buffer_.data(), static_cast<std::streamsize>(buffer_.size()));
    begin_ = 0;
    end_ = static_cast<std::size_t>(stream_.gcount());
    return end_ > 0;
}

CsvReader::Taken CsvReader::take_line() {
    text_.clear();
    if (!fill()) return Taken::end;
    ++line_.number;
    while (fill()) {
        const char* start = buffer_.data() + begin_;
        const auto* line_end = static_cast<const char*>(std::memchr(start, '\n', end_ - begin_));
        const auto length = line_end != nullptr ? static_cast<std::size_t>(line_end - start) : end_ - begin_;
        if (text_.size() + length > longest_line) return Taken::overlong;
        text_.append(start, length);
        begin_ += length + (line_end != nullptr ? 1 : 0);
        if (line_end != nullptr) break;
    }
    if (text_.ends_with('\r')) text_.pop_back();
    return Taken::line;
}

const CsvLine* CsvReader::next() {
    while (!is_over_) {
        const auto taken = take_line();
        line_.fields.clear();
        line_.fault.reset();
        line_.text = text_;
        is_over_ = taken != Taken::line;
        if (taken == Taken::end) break;
        if (taken == Taken::overlong) {
            line_.fault =
                fmt::format("found a line of more than {} KB; expected a row of a document", longest_line / 1024);
            return &line_;
        }
        if (const auto at = first_fault(text_)) {
            line_.fault = fault_of_line(text_, *at);
            is_over_ = text_[*at] == '\0';
            return &line_;
        }
        if (separator_ == 0 && text_.find_first_not_of(' ') != std::string::npos)
            separator_ = text_.find(';') != std::string::npos ? ';' : ',';
        if (is_blank(text_, separator_)) continue;
        split();
        return &line_;
    }
    return nullptr;
}

// Undoes the quotes of one field in place. Nothing where they are stray.
std::optional<CsvReader::Quoted> CsvReader::take_quoted(std::size_t opening) {
    std::size_t written = opening;
    for (std::size_t at = opening + 1; at < text_.size(); ++at) {
        if (text_[at] == '"') {
            ++at;
            if (at == text_.size() || text_[at] != '"') {
                const auto next = std::min(text_.find_first_not_of(' ', at), text_.size());
                if (next < text_.size() && text_[next] != separator_) return std::nullopt;
                return Quoted{written - opening, next};
            }
        }
        text_[written++] = text_[at];
    }
    return std::nullopt;
}

void CsvReader::split() {
    const auto refuse_line = [&](std::string why) {
        line_.fields.clear();
        line_.fault = std::move(why);
    };
    std::size_t at = 0;
    while (true) {
        if (line_.fields.size() == most_fields)
            return refuse_line(fmt::format("found more than {} fields; expected a row of a document", most_fields));
        const auto word = std::min(text_.find_first_not_of(' ', at), text_.size());
        if (word < text_.size() && text_[word] == '"') {
            const auto quoted = take_quoted(word);
            if (!quoted)
                return refuse_line(
                    "found a stray quote; expected quotes around a whole field, with each inner quote doubled");
            line_.fields.push_back(stripped(std::string_view(text_).substr(word, quoted->length)));
            at = quoted->next;
        } else {
            const auto end = std::min(text_.find(separator_, at), text_.size());
            const auto field = std::string_view(text_).substr(at, end - at);
            if (field.find('"') != std::string_view::npos)
                return refuse_line("found a quote within " + base::shown(stripped(field)) +
                                   "; expected quotes around a whole field, with each inner quote doubled");
            line_.fields.push_back(stripped(field));
            at = end;
        }
        if (at == text_.size()) return;
        ++at;  // the separator
    }
}

}  // namespace flutebook::base
