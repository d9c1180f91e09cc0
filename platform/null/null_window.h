// The seam without a window system, for tests: what happens is scripted, the clock stands still
// unless it is moved, and what would have been shown is kept.
#pragma once

#include <atomic>
#include <string_view>

#include "app/window.h"

struct ImDrawData;

namespace carriageway {

/// One presented frame, in figures.
struct PresentedFrame {
    std::uint32_t background = 0; ///< 0xRRGGBB
    int width = 0, height = 0;    ///< px
    int vertices = 0;
    int indices = 0;
    double time = 0.0;            ///< s
};

/// A window that a test works. Needs a Dear ImGui context, and lives shorter than it. All but
/// wake() is for one thread.
class NullWindow : public Window {
public:
    NullWindow(int width_dp, int height_dp, float pixels_per_dp = 1.0f);
    ~NullWindow() override;

    // -- the script ---------------------------------------------------------------------------
    /// Lets something happen: the next wait() delivers it. A time of 0 means now.
    void happen(InputEvent event);
    void pointer(InputKind kind, Vec at, int pointer = 0);
    void tap(Vec at, int pointer = 0);
    /// Touches at `from`, moves in `steps` equal moves to `to` and lifts.
    void drag(Vec from, Vec to, int steps = 4, int pointer = 0);
    void press(Key key, bool control = false, bool shift = false);
    void type(std::string_view text); ///< UTF-8
    /// Another size or density; the next wait() tells of it.
    void resize(const Surface& surface);
    /// Moves the clock on.
    void pass(double seconds) { time_ += seconds; }
    void prefer_dark(bool dark) { dark_ = dark; }
    void can_do(const Abilities& abilities) { abilities_ = abilities; }

    // -- what came of it ----------------------------------------------------------------------
    const std::vector<PresentedFrame>& frames() const { return frames_; }
    /// What the last frame consisted of, until Dear ImGui begins the next; nullptr before the first.
    const ImDrawData* last_drawn() const { return drawn_; }
    const std::string& title() const { return title_; }
    bool keyboard_shown() const { return keyboard_; }
    bool kept_awake() const { return awake_; }
    const std::vector<Errand>& errands() const { return errands_; }
    /// Forgets both, so that a long script doesn't fill the memory.
    void forget() { frames_.clear(); errands_.clear(); }

    // -- the seam -----------------------------------------------------------------------------
    Surface surface() const override { return surface_; }
    /// Never blocks. Where nothing has been scripted it moves the clock on by `seconds`; a wait
    /// without limit that nothing can end gives InputKind::close.
    void wait(double seconds, std::vector<InputEvent>& events) override;
    void wake() override { woken_ = true; }
    void begin_frame() override;
    void present(std::uint32_t background) override;
    double now() const override { return time_; }
    void keyboard(bool shown) override { keyboard_ = shown; }
    void keep_awake(bool awake) override { awake_ = awake; }
    bool prefers_dark() const override { return dark_; }
    void title(const std::string& text) override { title_ = text; }
    Abilities abilities() const override { return abilities_; }
    void run(const Errand& errand) override { errands_.push_back(errand); }

private:
    void feed_imgui(const InputEvent& event) const;

    Surface surface_;
    double time_ = 0.0;
    double shown_at_ = 0.0;
    std::vector<InputEvent> waiting_;
    std::atomic<bool> woken_{false};
    std::vector<PresentedFrame> frames_;
    const ImDrawData* drawn_ = nullptr;
    std::string title_;
    Abilities abilities_;
    std::vector<Errand> errands_;
    bool keyboard_ = false, awake_ = false, dark_ = false;
};

} // namespace carriageway
