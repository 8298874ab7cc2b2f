// The name of a file, stored once and shared by all places in that file.
#pragma once

#include <memory>
#include <string>
#include <utility>

namespace flutebook::base {

/// Copies share one text, which never changes. Stands wherever the text of a name is asked for. Any thread.
class FileName {
public:
    FileName() = default;
    FileName(std::string text) : text_(std::make_shared<const std::string>(std::move(text))) {}
    FileName(const char* text) : FileName(std::string(text)) {}

    [[nodiscard]] const std::string& text() const { return text_ ? *text_ : none; }
    operator const std::string&() const { return text(); }
    [[nodiscard]] bool empty() const { return text().empty(); }

    friend bool operator==(const FileName& left, const FileName& right) {
        return left.text_ == right.text_ || left.text() == right.text();
    }
    friend bool operator==(const FileName& left, const std::string& right) { return left.text() == right; }
    friend bool operator==(const FileName& left, const char* right) { return left.text() == right; }

private:
    inline static const std::string none;

    std::shared_ptr<const std::string> text_;  // null: empty
};

}  // namespace flutebook::base
