#include "command/loadrun.h"

#include <charconv>

namespace flowhand {

Result<std::int64_t> findRun(Store& store, const std::string& name) {
    std::int64_t id = 0;
    const auto [end, problem] = std::from_chars(name.data(), name.data() + name.size(), id);
    if (problem == std::errc() && end == name.data() + name.size())
        return id;
    if (name != "last")
        return failure("bad-run", "'" + name + "' is no run; write its number, as 'flowhand runs' lists it, or last");
    const Result<std::vector<RunSummary>> runs = store.runs();
    if (!runs)
        return tl::unexpected(runs.error());
    if (runs->empty())
        return failure("no-such-run", "there are no runs yet; 'flowhand practise FLOW' flies one");
    return runs->front().id;
}

Result<StoredDebrief> loadDebrief(Store& store, std::int64_t id) {
    return StoredDebrief::open(store, id, FLOWHAND_VERSION);
}

Result<StoredRun> loadRun(const std::string& storeFile, const std::string& name) {
    Result<Store> store = Store::open(storeFile, {false, true});
    if (!store)
        return tl::unexpected(store.error());
    const Result<std::int64_t> id = findRun(*store, name);
    if (!id)
        return tl::unexpected(id.error());
    return store->load(*id);
}

} // namespace flowhand
