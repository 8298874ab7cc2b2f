// Trust that is earned: a file is believed once it has passed a trial in a process apart, and then for as long as its
// bytes, the host and the contract stay what they are.
#pragma once

#include <string>

#include "host/contract/trust.hpp"
#include "host/plugin_check/records.hpp"

namespace flutebook::plugin_check {

/// Any thread.
class TriedTrust : public contract::Trust {
public:
    /// `program` is started for a trial.
    TriedTrust(std::string program, Records records) : program_(std::move(program)), records_(std::move(records)) {}

    void check(const contract::PluginFile& file) override;

private:
    std::string program_;
    Records records_;
};

}  // namespace flutebook::plugin_check
