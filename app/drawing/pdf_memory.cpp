#include "app/drawing/pdf_memory.h"

#include <algorithm>
#include <cstdlib>

namespace carriageway {

namespace {
thread_local PdfMemory* present = nullptr;
}

PdfMemory::PdfMemory(std::size_t limit) : outer_(present), limit_(limit) {
    first_.before = first_.after = &first_;
    present = this;
}

PdfMemory::~PdfMemory() {
    for (Piece* piece = first_.after; piece != &first_;) {
        Piece* const after = piece->after;
        std::free(piece);
        piece = after;
    }
    present = outer_;
}

void* PdfMemory::take(unsigned size) {
    if (present == nullptr) return nullptr;
    PdfMemory& memory = *present;
    Piece* const piece = size > memory.limit_ - memory.held_
                             ? nullptr
                             : static_cast<Piece*>(std::malloc(sizeof(Piece) + size));
    if (piece == nullptr) {
        memory.ran_out_ = true;
        return nullptr;
    }
    *piece = {memory.first_.before, &memory.first_, size};
    piece->before->after = piece->after->before = piece;
    memory.held_ += size;
    memory.most_ = std::max(memory.most_, memory.held_);
    return piece + 1;
}

void PdfMemory::give(void* bytes) {
    if (bytes == nullptr || present == nullptr) return;
    Piece* const piece = static_cast<Piece*>(bytes) - 1;
    piece->before->after = piece->after;
    piece->after->before = piece->before;
    present->held_ -= piece->size;
    std::free(piece);
}

} // namespace carriageway
