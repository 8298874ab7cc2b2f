// A plugin's file, read once. What is hashed is what is loaded: the bytes are copied into memory that no process can
// write to any more, so a file that is overwritten in place, a moment later or while the host works, changes nothing.
#pragma once

#include <sys/types.h>

#include <string>

namespace flutebook::contract {

/// Owns the sealed copy. Any thread.
class PluginFile {
public:
    /// Reads the file that people know by this name. Throws ModelError where there is none, or it is cut short.
    [[nodiscard]] static PluginFile read(const std::string& name);

    /// One that another process has read and sealed, and handed over; takes the descriptor.
    [[nodiscard]] static PluginFile handed_over(const std::string& name, int descriptor);

    ~PluginFile();
    PluginFile(PluginFile&& other) noexcept;
    PluginFile& operator=(PluginFile&&) = delete;
    PluginFile(const PluginFile&) = delete;
    PluginFile& operator=(const PluginFile&) = delete;

    [[nodiscard]] const std::string& name() const { return name_; }
    /// What the model in it must be called.
    [[nodiscard]] std::string id() const;
    /// "plugins/paper.so: model paper": how every complaint about it begins.
    [[nodiscard]] std::string where() const { return name_ + ": model " + id(); }
    /// Of its bytes, as 64 lower-case hexadecimal digits.
    [[nodiscard]] const std::string& sha256() const { return sha256_; }
    /// Of the sealed copy; valid as long as this object.
    [[nodiscard]] int descriptor() const { return descriptor_; }

    /// Throws ModelError where others could put another file in its place: where anybody may write to it or to its
    /// folder, or where its name leads out of the folder it stands in.
    void check_place() const;

private:
    PluginFile(std::string name, std::string sha256, int descriptor);

    std::string name_, sha256_;
    int descriptor_;
    std::string real_path_;                  // where the name led
    mode_t own_mode_ = 0, folder_mode_ = 0;  // who may write to it, and to the folder where it really stands
};

}  // namespace flutebook::contract
