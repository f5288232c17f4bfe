#pragma once

#include <optional>
#include <vector>

namespace coldiron
{
/** Versions put in the order they are liked, one after another as they are heard. Two may share a place. */
class Ranking
{
public:
    static constexpr int fewest = 2, most = 9;

    /** @throws std::invalid_argument for a number of versions out of fewest..most */
    explicit Ranking (int versions);

    int versions() const { return count; }

    /** From 0, the best; those that share a place have the same, and the next place is left out. None: not ranked yet. */
    std::optional<int> placeOf (int version) const;
    bool isTied (int version) const;
    bool isComplete() const;

    /** One not ranked yet comes in at the top (up) or at the end (down); else it moves by one place. Out of a shared
        place it goes just above or below the others there. A number that is no version is ignored. */
    void up (int version);
    void down (int version);

    /** Shares the place of the one above it; where it shares already, it falls just below. */
    void tie (int version);

    /** Best first; those that share a place together. */
    const std::vector<std::vector<int>>& places() const { return groups; }

private:
    int count;
    std::vector<std::vector<int>> groups;

    std::optional<size_t> groupOf (int version) const;
    bool enters (int version, bool atTop);
};
}
