#pragma once

#include <atomic>
#include <memory>
#include <utility>

namespace coldiron
{
/** Hands objects that own memory from one publisher to one reader, which may be the audio thread: the reader neither
    allocates nor frees, and gives back what it no longer uses; the publisher frees it with its next call. Of several objects
    published between two looks the newest is handed over, the others are freed at once. */
template <typename T>
class Handover
{
    struct Node
    {
        std::unique_ptr<T> object;
        Node* next = nullptr; ///< among those given back
    };

public:
    /** An object that the reader uses, movable and given back where it ends. Not to outlive the handover. */
    class Held
    {
    public:
        Held() = default;
        Held (Held&& other) noexcept : from (other.from), node (std::exchange (other.node, nullptr)) {}
        Held& operator= (Held&& other) noexcept
        {
            if (this != &other)
            {
                reset();
                from = other.from;
                node = std::exchange (other.node, nullptr);
            }
            return *this;
        }
        ~Held() { reset(); }

        T* get() const { return node != nullptr ? node->object.get() : nullptr; }
        T* operator->() const { return get(); }
        T& operator*() const { return *get(); }
        explicit operator bool() const { return node != nullptr; }

        /** [reader] Wait-free. */
        void reset()
        {
            if (node != nullptr)
                from->giveBack (std::exchange (node, nullptr));
        }

    private:
        friend class Handover;
        Held (Handover* h, Node* n) : from (h), node (n) {}

        Handover* from = nullptr;
        Node* node = nullptr;
    };

    Handover() = default;
    Handover (const Handover&) = delete;
    Handover& operator= (const Handover&) = delete;
    ~Handover()
    {
        delete pending.exchange (nullptr);
        free();
    }

    /** [publisher] @param object  not null */
    void publish (std::unique_ptr<T> object)
    {
        free();
        delete pending.exchange (new Node { std::move (object) }, std::memory_order_acq_rel);
    }

    /** [publisher] Frees what the reader has given back. */
    void free()
    {
        for (Node* node = givenBack.exchange (nullptr, std::memory_order_acquire); node != nullptr;)
            delete std::exchange (node, node->next);
    }

    /** [reader] The newest published since the last call; empty: none. Wait-free. */
    Held take()
    {
        if (pending.load (std::memory_order_relaxed) == nullptr)
            return {};
        return { this, pending.exchange (nullptr, std::memory_order_acq_rel) };
    }

private:
    std::atomic<Node*> pending { nullptr }, givenBack { nullptr };

    /** The publisher only ever takes the whole list, so this goes round at most twice. */
    void giveBack (Node* node)
    {
        node->next = givenBack.load (std::memory_order_relaxed);
        while (! givenBack.compare_exchange_weak (node->next, node, std::memory_order_release, std::memory_order_relaxed)) {}
    }
};
}
