// One stage, or one item of gear, out of the file.
#pragma once

#include "read_parts.hpp"

namespace desk {

class StageReader {
  public:
    explicit StageReader(const Document &document) : checks_(document), tables_(checks_) {}
    StageReader(const StageReader &) = delete;

    /// Takes the gear list; refuses bad values also in gear that no link uses.
    void read_gear(const Value &gear);
    /// A stage of a link, with what its gear says of it.
    Stage read(const Value &value);

  private:
    std::int32_t kind_of(const Value &object) const;
    void check_stage_keys(const Value &object, std::int32_t kind, bool in_link) const;
    const Value *gear_of(const Value &stage) const;
    Members joined(const Value &value, const Value *gear) const;
    Stage parse(const Members &members, std::int32_t kind);
    std::int32_t cable_type(const Value &name) const;
    void fill(Stage &stage) const;
    void check_complete(const Stage &stage) const;
    void check_gain(const Stage &stage) const;
    void check_places(const Stage &stage) const;

    Checks checks_;
    std::unordered_map<std::string, const Value *> gear_;
    std::vector<std::string> gear_names_;
    Tables tables_;
};

} // namespace desk
