// The memory that the writer of PDF (libharu, in C) takes for one file: no more than a limit, and
// given back whole at the end, whatever the writer forgets on its way out of an error.
#pragma once

#include <cstddef>

namespace carriageway {

/// While one exists, take() and give() of its thread work on it; one within another replaces it for
/// as long.
class PdfMemory {
public:
    /// `limit` in bytes, of all that is held at one time.
    explicit PdfMemory(std::size_t limit);
    ~PdfMemory();
    PdfMemory(const PdfMemory&) = delete;
    PdfMemory& operator=(const PdfMemory&) = delete;

    /// Bytes, aligned for anything; nullptr where the limit or the machine has no more.
    static void* take(unsigned size);
    static void give(void* bytes);

    std::size_t most() const { return most_; } ///< held at one time so far, bytes
    bool ran_out() const { return ran_out_; }  ///< whether take() ever had to refuse

private:
    struct alignas(std::max_align_t) Piece {
        Piece* before;
        Piece* after;
        std::size_t size;
    };

    Piece first_{}; ///< of a ring of all pieces; holds nothing itself
    PdfMemory* outer_;
    std::size_t limit_;
    std::size_t held_ = 0;
    std::size_t most_ = 0;
    bool ran_out_ = false;
};

} // namespace carriageway
