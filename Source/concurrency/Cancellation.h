#pragma once

#include <functional>
#include <utility>

namespace coldiron
{
/** Thrown where work is given up because nobody wants its result. No fault, and so no std::exception. */
struct Cancelled
{
};

/** Says to long work whether its result is still wanted: its thread is to end, or a newer result is wanted. Work asks at
    least every 10 ms. */
class Cancellation
{
public:
    Cancellation() = default; ///< never

    /** @param isUnwanted  called on the thread that works, cheap */
    explicit Cancellation (std::function<bool()> isUnwanted) : unwanted (std::move (isUnwanted)) {}

    bool isRequested() const { return unwanted && unwanted(); }

    /** @throws Cancelled */
    void check() const
    {
        if (isRequested())
            throw Cancelled();
    }

private:
    std::function<bool()> unwanted;
};
}
