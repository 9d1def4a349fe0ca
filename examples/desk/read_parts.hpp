// Parts of a stage that become structs of the library: patterns, places, paths.
#pragma once

#include "numbers.hpp"

namespace desk {

/// The tables of a scenario, each read once for all stages of one gear.
class Tables {
  public:
    explicit Tables(const Checks &checks) : checks_(checks) {}
    std::shared_ptr<const Table> read(const Value &value, const Columns &columns);

  private:
    const Checks &checks_;
    std::unordered_map<const Value *, std::shared_ptr<const Table>> known_;
};

Members members_of(const Value &object);

Pattern read_pattern(const Checks &checks, Tables &tables, const Value &value);
Place read_place(const Checks &checks, const Value &value);

/// The antenna of a pack: how it is turned, without a place.
PackAntenna read_pack_antenna(const Checks &checks, Tables &tables, const Value &value);
Path read_path(const Checks &checks, const Value &value);
/// A body's loss over facing.
std::shared_ptr<const Table> read_body_table(Tables &tables, const Value &value);

} // namespace desk
