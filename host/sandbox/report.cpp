#include "host/sandbox/report.hpp"

#include <fmt/format.h>
#include <sys/mman.h>
#include <sys/random.h>
#include <sys/uio.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cerrno>
#include <cstring>
#include <system_error>

#include "host/base/characters.hpp"

namespace flutebook::sandbox {
namespace {

constexpr std::size_t mark_digits = 16;
constexpr std::size_t page_of_key = 4096;
using MarkText = std::array<char, mark_digits + 1>;  // with the space that follows it

// Safe in a signal handler, unlike a formatting library.
MarkText text_of_mark(std::uint64_t mark) {
    MarkText result{};
    for (std::size_t i = 0; i < mark_digits; ++i) result[i] = "0123456789abcdef"[(mark >> (60 - 4 * i)) & 15U];
    result[mark_digits] = ' ';
    return result;
}

void mix(std::array<std::uint64_t, 4>& v) {
    v[0] += v[1];
    v[1] = std::rotl(v[1], 13) ^ v[0];
    v[0] = std::rotl(v[0], 32);
    v[2] += v[3];
    v[3] = std::rotl(v[3], 16) ^ v[2];
    v[0] += v[3];
    v[3] = std::rotl(v[3], 21) ^ v[0];
    v[2] += v[1];
    v[1] = std::rotl(v[1], 17) ^ v[2];
    v[2] = std::rotl(v[2], 32);
}

// The text without what could change the line or the terminal that shows it.
std::string plain(std::string_view text) {
    std::string result;
    for (std::size_t at = 0; at < text.size();) {
        const base::Character character = base::character_at(text, at);
        if (character.fault == base::CharacterFault::none)
            result += text.substr(at, character.length);
        else
            result += character.fault == base::CharacterFault::encoding ? '?' : ' ';
        at += character.length;
    }
    return result;
}

// At most `most` bytes, and no half of a character.
std::string_view begin_of(std::string_view text, std::size_t most) {
    if (text.size() <= most) return text;
    while (most > 0 && (static_cast<unsigned char>(text[most]) & 0xC0U) == 0x80U) --most;
    return text.substr(0, most);
}

}  // namespace

ReportKey random_report_key() {
    ReportKey result{};
    if (::getrandom(&result, sizeof result, 0) != static_cast<ssize_t>(sizeof result))
        throw std::system_error(errno, std::generic_category(), "no random numbers for the report of a child process");
    return result;
}

std::uint64_t mark_of_line(const ReportKey& key, std::uint64_t number) {
    constexpr std::uint64_t length = std::uint64_t{sizeof number} << 56U;
    std::array<std::uint64_t, 4> v = {key.first ^ 0x736f6d6570736575U, key.second ^ 0x646f72616e646f6dU,
                                      key.first ^ 0x6c7967656e657261U, key.second ^ 0x7465646279746573U};
    for (const std::uint64_t word : {number, length}) {
        v[3] ^= word;
        mix(v);
        mix(v);
        v[0] ^= word;
    }
    v[2] ^= 0xffU;
    for (int round = 0; round < 4; ++round) mix(v);
    return v[0] ^ v[1] ^ v[2] ^ v[3];
}

struct ChildReport::Secret {
    ReportKey key;
    std::uint64_t next;
};

ChildReport::ChildReport(int descriptor) : descriptor_(descriptor) {
    void* page = ::mmap(nullptr, page_of_key, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
    if (page == MAP_FAILED) throw std::system_error(errno, std::generic_category(), "no memory for a report");
    secret_ = static_cast<Secret*>(page);
    std::size_t done = 0;
    while (done < sizeof(ReportKey)) {
        const ssize_t more =
            ::read(descriptor_, reinterpret_cast<char*>(&secret_->key) + done, sizeof(ReportKey) - done);
        if (more < 0 && errno == EINTR) continue;
        if (more <= 0) throw std::system_error(errno, std::generic_category(), "no key for a report");
        done += static_cast<std::size_t>(more);
    }
    ::mprotect(secret_, page_of_key, PROT_NONE);
}

ChildReport::~ChildReport() {
    ::munmap(secret_, page_of_key);
}

std::uint64_t ChildReport::next_mark() const {
    ::mprotect(secret_, page_of_key, PROT_READ | PROT_WRITE);
    const std::uint64_t result = mark_of_line(secret_->key, secret_->next++);
    ::mprotect(secret_, page_of_key, PROT_NONE);
    return result;
}

void ChildReport::say(std::string_view word, std::string_view text) const {
    const MarkText mark = text_of_mark(next_mark());
    std::string line(mark.begin(), mark.end());
    line += word;
    if (!text.empty()) line.append(" ").append(begin_of(plain(text), longest_line - line.size() - 2));
    line += '\n';
    std::size_t done = 0;
    while (done < line.size()) {
        const ssize_t more = ::write(descriptor_, line.data() + done, line.size() - done);
        if (more < 0 && errno == EINTR) continue;
        if (more < 0) return;
        done += static_cast<std::size_t>(more);
    }
}

void ChildReport::say_figure(std::string_view name, double value) const {
    say("figure", fmt::format("{} {}", name, value));
}

bool ChildReport::say_at_signal(std::span<const char* const> texts) const {
    MarkText mark = text_of_mark(next_mark());
    std::array<iovec, 10> pieces{};
    std::size_t count = 0;
    pieces[count++] = {mark.data(), mark.size()};
    for (const char* text : texts.first(std::min(texts.size(), pieces.size() - 2)))
        pieces[count++] = {const_cast<char*>(text), std::strlen(text)};
    char end = '\n';
    pieces[count++] = {&end, 1};
    return ::writev(descriptor_, pieces.data(), static_cast<int>(count)) > 0;
}

bool Listener::take_line() {
    std::string_view line = line_;
    if (key_) {
        const MarkText mark = text_of_mark(mark_of_line(*key_, number_++));
        if (!line.starts_with(std::string_view(mark.data(), mark.size()))) return false;
        line.remove_prefix(mark.size());
    }
    if (!base::is_plain_line(line)) return false;
    const std::size_t word = std::min(line.find(' '), line.size());
    take_({std::string(line.substr(0, word)), std::string(word < line.size() ? line.substr(word + 1) : "")});
    line_.clear();
    return true;
}

bool Listener::hear(std::string_view bytes) {
    bytes_ += bytes.size();
    is_valid_ = is_valid_ && bytes_ <= longest_report;
    while (is_valid_ && !bytes.empty()) {
        const std::size_t end = std::min(bytes.find('\n'), bytes.size());
        line_ += bytes.substr(0, end);
        is_valid_ = line_.size() <= longest_line;
        if (is_valid_ && end < bytes.size()) is_valid_ = take_line();
        bytes.remove_prefix(std::min(end + 1, bytes.size()));
    }
    return is_valid_;
}

}  // namespace flutebook::sandbox
