// The archive's layout is that of PKWARE's APPNOTE, 4.3; the packed blanks are a block of fixed codes of RFC
// 1951, 3.2.6.
#include "tests/system/made_workbook.hpp"

#include <algorithm>

namespace flutebook::fixture {

namespace {

std::string little(std::uint64_t value, int bytes) {
    std::string result;
    for (int b = 0; b < bytes; ++b) result += static_cast<char>((value >> (8 * b)) & 0xFFU);
    return result;
}

std::uint32_t check_of(const std::string& text) {
    std::uint32_t check = 0xFFFFFFFFU;
    for (const char sign : text) {
        check ^= static_cast<unsigned char>(sign);
        for (int bit = 0; bit < 8; ++bit) check = (check >> 1U) ^ ((check & 1U) != 0 ? 0xEDB88320U : 0U);
    }
    return ~check;
}

class BitWriter {
public:
    // The highest bit first, as codes stand.
    void add_code(unsigned code, int bits) {
        for (int b = bits - 1; b >= 0; --b) add_bit((code >> b) & 1U);
    }
    void add_bit(unsigned bit) {
        if (used_ % 8 == 0) bytes_ += '\0';
        bytes_.back() = static_cast<char>(static_cast<unsigned char>(bytes_.back()) | (bit << (used_ % 8)));
        ++used_;
    }
    [[nodiscard]] const std::string& bytes() const { return bytes_; }

private:
    std::string bytes_;
    std::size_t used_ = 0;
};

std::string packed_blanks(std::uint64_t count) {
    BitWriter bits;
    bits.add_bit(1);  // the last block
    bits.add_bit(1);  // of fixed codes
    bits.add_bit(0);
    bits.add_code(0x30 + ' ', 8);
    for (std::uint64_t done = 1; done < count; done += 258) {
        bits.add_code(0xC5, 8);  // 258 bytes again,
        bits.add_code(0, 5);     // from one byte back
    }
    bits.add_code(0, 7);  // the end
    return bits.bytes();
}

const std::string relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

}  // namespace

MadeWorkbook::MadeWorkbook(const std::string& rows) {
    set("xl/workbook.xml", "<workbook xmlns:r=\"" + relations +
                               "\"><sheets><sheet name=\"One\" sheetId=\"1\" r:id=\"a\"/>"
                               "<sheet name=\"Two\" sheetId=\"2\" r:id=\"b\"/></sheets></workbook>");
    set("xl/_rels/workbook.xml.rels",
        "<Relationships><Relationship Id=\"a\" Type=\"" + relations +
            "/worksheet\" Target=\"worksheets/sheet1.xml\"/><Relationship Id=\"s\" Type=\"" + relations +
            "/sharedStrings\" Target=\"sharedStrings.xml\"/><Relationship Id=\"t\" Type=\"" + relations +
            "/styles\" Target=\"styles.xml\"/></Relationships>");
    set("xl/worksheets/sheet1.xml", "<worksheet><sheetData>" + rows + "</sheetData></worksheet>");
}

MadeWorkbook::Part& MadeWorkbook::part_of(const std::string& name) {
    const auto found = std::find_if(parts_.begin(), parts_.end(), [&](const Part& part) { return part.name == name; });
    if (found != parts_.end()) return *found;
    parts_.push_back({name, "", 0, 0, 0});
    return parts_.back();
}

void MadeWorkbook::set(const std::string& name, const std::string& text) {
    part_of(name) = {name, text, static_cast<std::uint32_t>(text.size()), check_of(text), 0};
}

void MadeWorkbook::set_bomb(const std::string& name, std::uint64_t bytes) {
    part_of(name) = {name, packed_blanks(bytes), 1000, 0, 8};
}

std::string MadeWorkbook::bytes() const {
    std::string result, directory;
    for (const Part& part : parts_) {
        const std::string common = little(20, 2) + little(flags_, 2) + little(part.method, 2) + little(0, 4) +
                                   little(part.check, 4) + little(part.packed.size(), 4) + little(part.unpacked, 4) +
                                   little(part.name.size(), 2) + little(0, 2);
        directory += "PK\x01\x02" + little(20, 2) + common + little(0, 10) + little(result.size(), 4) + part.name;
        result += "PK\x03\x04" + common + part.name + part.packed;
    }
    const std::size_t begin = result.size();
    result += directory;
    return result + "PK\x05\x06" + little(0, 4) + little(parts_.size(), 2) + little(parts_.size(), 2) +
           little(directory.size(), 4) + little(begin, 4) + little(0, 2);
}

std::string inline_row(int row, const std::vector<std::string>& texts) {
    std::string result = "<row r=\"" + std::to_string(row) + "\">";
    char column = 'A';
    for (const std::string& text : texts)
        result += std::string("<c r=\"") + column++ + std::to_string(row) + "\" t=\"inlineStr\"><is><t>" + text +
                  "</t></is></c>";
    return result + "</row>";
}

}  // namespace flutebook::fixture
