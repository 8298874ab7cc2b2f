// The one place that knows the libraries that unpack a workbook and read its parts. A part is read piece by piece; what
// it unpacks to is counted as it comes, since what the file says of its size is the writer's word. Nothing is thrown
// through the XML library: what stops the reading is kept and told afterwards.
#include <expat.h>
#include <fmt/format.h>
#include <zip.h>

#include <algorithm>
#include <array>
#include <cstring>
#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <utility>

#include "host/base/errors.hpp"
#include "host/lists/list_source.hpp"
#include "host/lists/sheet_rows.hpp"
#include "host/lists/workbook_parts.hpp"

namespace flutebook::lists {

namespace {

constexpr std::uint64_t most_unpacked = std::uint64_t{512} << 20U;      // bytes of a sheet
constexpr std::uint64_t most_of_small_part = std::uint64_t{64} << 20U;  // of any other part
constexpr zip_int64_t most_parts = 10000;
constexpr std::size_t piece_bytes = std::size_t{64} << 10U;
constexpr int deepest_element = 64;

[[noreturn]] void refuse_file(const std::string& file, const std::string& what) {
    throw InputError(InputError::Whose::request, {fmt::format("{}: {}", file, what)});
}

struct CloseArchive {
    void operator()(zip_t* archive) const { zip_discard(archive); }
};
struct ClosePart {
    void operator()(zip_file_t* part) const { zip_fclose(part); }
};
struct FreeParser {
    void operator()(XML_Parser parser) const { XML_ParserFree(parser); }
};
using Archive = std::unique_ptr<zip_t, CloseArchive>;

// One part of the archive, read as XML into a handler.
class PartReader {
public:
    // `handler` must outlive this.
    PartReader(zip_t* archive, zip_int64_t index, std::string where, std::uint64_t limit, PartHandler& handler)
        : where_(std::move(where)), limit_(limit), handler_(handler), parser_(XML_ParserCreate(nullptr)) {
        zip_stat_t stat{};
        if (zip_stat_index(archive, static_cast<zip_uint64_t>(index), 0, &stat) == 0) size_ = stat.size;
        if (size_ > limit_) refuse_size();
        part_.reset(zip_fopen_index(archive, static_cast<zip_uint64_t>(index), 0));
        if (!part_) refuse_file(where_, "cannot be unpacked: it is damaged; save it again");
        XML_SetUserData(parser_.get(), this);
        XML_SetElementHandler(parser_.get(), &PartReader::begin_element, &PartReader::end_element);
        XML_SetCharacterDataHandler(parser_.get(), &PartReader::characters);
        XML_SetStartDoctypeDeclHandler(parser_.get(), &PartReader::document_type);
    }

    // Reads a piece more; false at the end.
    bool read() {
        if (is_over_) return false;
        const zip_int64_t length = zip_fread(part_.get(), piece_.data(), piece_.size());
        if (length < 0) refuse_file(where_, "cannot be unpacked: it is damaged or incomplete; save it again");
        read_ += static_cast<std::uint64_t>(length);
        if (read_ > limit_) refuse_size();
        const auto status = XML_Parse(parser_.get(), piece_.data(), static_cast<int>(length), length == 0 ? 1 : 0);
        if (!fault_.empty()) refuse_file(where_, fault_);
        if (status != XML_STATUS_OK)
            refuse_file(where_, fmt::format("is not a readable workbook: {}; save it again",
                                            XML_ErrorString(XML_GetErrorCode(parser_.get()))));
        is_over_ = length == 0;
        return !is_over_;
    }

    [[nodiscard]] double share_read() const {
        return size_ == 0 ? 0 : std::min(static_cast<double>(read_) / static_cast<double>(size_), 1.0);
    }

private:
    [[noreturn]] void refuse_size() const {
        refuse_file(where_, fmt::format("unpacks to more than {} MB, which no list needs; leave out what is no row of "
                                        "the list, or write it as .csv",
                                        limit_ >> 20U));
    }

    void stop(const char* fault) {
        if (fault_.empty()) fault_ = fault;
        XML_StopParser(parser_.get(), XML_FALSE);
    }

    static std::string_view local(const char* name) {
        const char* colon = std::strrchr(name, ':');
        return colon == nullptr ? name : colon + 1;
    }

    static void begin_element(void* self, const char* name, const char** attributes) {
        auto& reader = *static_cast<PartReader*>(self);
        if (++reader.depth_ > deepest_element) return reader.stop("nests deeper than a workbook does; save it again");
        PartAttributes list;
        for (std::size_t a = 0; attributes[a] != nullptr; a += 2)
            list.emplace_back(local(attributes[a]), attributes[a + 1]);
        reader.handler_.begin(local(name), list);
    }

    static void end_element(void* self, const char* name) {
        auto& reader = *static_cast<PartReader*>(self);
        --reader.depth_;
        reader.handler_.end(local(name));
    }

    static void characters(void* self, const char* text, int length) {
        static_cast<PartReader*>(self)->handler_.text({text, static_cast<std::size_t>(length)});
    }

    // Entities are declared in one; no workbook has one.
    static void document_type(void* self, const char*, const char*, const char*, int) {
        static_cast<PartReader*>(self)->stop("declares a document type, which no workbook does; save it again");
    }

    std::string where_;
    std::uint64_t limit_, size_ = 0, read_ = 0;
    PartHandler& handler_;
    std::unique_ptr<zip_file_t, ClosePart> part_;
    std::unique_ptr<std::remove_pointer_t<XML_Parser>, FreeParser> parser_;
    std::array<char, piece_bytes> piece_{};
    int depth_ = 0;
    bool is_over_ = false;
    std::string fault_;
};

// The file, opened and looked over: no part is read yet.
class WorkbookArchive {
public:
    explicit WorkbookArchive(std::string file) : file_(std::move(file)) {
        refuse_other_kinds();
        int error = 0;
        archive_.reset(zip_open(file_.c_str(), ZIP_RDONLY, &error));
        if (!archive_)
            refuse_file(file_, "is not a complete .xlsx workbook: it is damaged or incomplete; save it again");
        look_over();
    }

    // Nothing where the workbook lacks it.
    [[nodiscard]] std::unique_ptr<PartReader> open(const std::string& part, std::uint64_t limit,
                                                   PartHandler& handler) const {
        const zip_int64_t index = zip_name_locate(archive_.get(), part.c_str(), ZIP_FL_NOCASE);
        if (index < 0) return nullptr;
        return std::make_unique<PartReader>(archive_.get(), index, file_, limit, handler);
    }

    void read(const std::string& part, PartHandler& handler) const {
        const auto reader = open(part, most_of_small_part, handler);
        while (reader && reader->read()) {
        }
    }

    [[nodiscard]] const std::string& file() const { return file_; }

private:
    // Another kind of file is known by its first bytes.
    void refuse_other_kinds() const {
        const std::unique_ptr<std::FILE, int (*)(std::FILE*)> stream(std::fopen(file_.c_str(), "rb"), &std::fclose);
        if (!stream) refuse_file(file_, "cannot be read; check its name and its permissions");
        std::array<unsigned char, 8> bytes{};
        const std::size_t length = std::fread(bytes.data(), 1, bytes.size(), stream.get());
        constexpr std::array<unsigned char, 8> compound{0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1};
        if (length == bytes.size() && bytes == compound)
            refuse_file(file_,
                        "is encrypted, or a workbook of the old kind (.xls); save it as .xlsx without a password");
        if (length < 2 || bytes[0] != 'P' || bytes[1] != 'K')
            refuse_file(file_, "is not an .xlsx workbook; save it as .xlsx, or as .csv");
    }

    void look_over() const {
        const zip_int64_t parts = zip_get_num_entries(archive_.get(), 0);
        if (parts > most_parts) refuse_file(file_, "has more parts than a workbook has; save it again");
        for (zip_int64_t p = 0; p < parts; ++p) {
            zip_stat_t stat{};
            if (zip_stat_index(archive_.get(), static_cast<zip_uint64_t>(p), 0, &stat) != 0 || stat.name == nullptr)
                refuse_file(file_, "is not a complete .xlsx workbook: it is damaged; save it again");
            if (stat.encryption_method != ZIP_EM_NONE) refuse_file(file_, "is encrypted; save it without a password");
            const std::string_view name = stat.name;
            if (name.ends_with("vbaProject.bin")) refuse_file(file_, "has macros; save it as .xlsx without them");
        }
    }

    std::string file_;
    Archive archive_;
};

class WorkbookList : public ListSource {
public:
    explicit WorkbookList(const std::string& file) : archive_(file) {
        WorkbookParts parts;
        archive_.read("xl/workbook.xml", parts);
        archive_.read("xl/_rels/workbook.xml.rels", parts);
        const std::string sheet = parts.first_sheet();
        if (sheet.empty()) refuse_file(file, "has no sheet of cells; expected a list on its first sheet");
        SharedTexts texts(texts_);
        archive_.read(parts.part_of("sharedStrings"), texts);
        NumberFormatReader styles(day_styles_);
        archive_.read(parts.part_of("styles"), styles);
        rows_ = std::make_unique<SheetRows>(file, texts_, day_styles_, parts.day_count());
        sheet_ = archive_.open(sheet, most_unpacked, *rows_);
        if (!sheet_) refuse_file(file, "lacks its first sheet: it is damaged; save it again");
    }

    std::optional<ListRow> next() override {
        while (!rows_->has_row() && sheet_->read()) {
        }
        return rows_->take();
    }

    [[nodiscard]] ListNumbers numbers() const override { return ListNumbers::point_alone; }
    [[nodiscard]] double share_read() const override { return sheet_->share_read(); }

private:
    WorkbookArchive archive_;
    std::vector<std::string> texts_;
    std::vector<bool> day_styles_;
    std::unique_ptr<SheetRows> rows_;
    std::unique_ptr<PartReader> sheet_;
};

}  // namespace

std::unique_ptr<ListSource> open_workbook_list(const std::string& file) {
    return std::make_unique<WorkbookList>(file);
}

}  // namespace flutebook::lists
