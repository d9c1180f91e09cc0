// The page as the program's window: a canvas with WebGL 2, and everything around it.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "app/window.h"
#include "platform/desktop/opengl_frame.h"
#include "platform/web/mirror.h"
#include "platform/web/web_input.h"

namespace carriageway {

class WebWindow : public Window {
public:
    /// Throws std::runtime_error where the browser gives no WebGL 2.
    explicit WebWindow(std::function<void()> turn);
    ~WebWindow() override;

    /// Plans the next turn: at once (0), later, or not at all (below 0).
    void plan(double seconds);
    /// An event that the page reports.
    void happen(InputEvent event, bool at_once) { input_.add(std::move(event), at_once); }
    const Mirror& mirror() const { return mirror_; }

    /// Things that tell() has put off because something is held: told when their time has come. The
    /// caller keeps the list between the two.
    void tell_owed(const DrawingList& list) { if (owed_) tell(list); }
    /// When they are due (s from now); below 0: there are none.
    double owed_in() const;
    /// What the window itself still has to do: events that wait, things to be told.
    bool busy() const { return owed_ || input_.waiting(); }
    /// The page has reported something that no turn has taken in yet.
    bool input_waits() const { return input_.waiting(); }

    Surface surface() const override;
    void wait(double seconds, std::vector<InputEvent>& events) override;
    void wake() override { happen({}, false); }
    void begin_frame() override;
    void present(std::uint32_t background) override;
    double now() const override;
    void keyboard(bool) override {} // comes with the page's own text field
    void keep_awake(bool awake) override;
    bool prefers_dark() const override;
    void title(const std::string& text) override;
    bool text_field(const TextField* field) override;
    void tell(const DrawingList& list) override;
    Abilities abilities() const override { return abilities_; }
    void run(const Errand& errand) override;

private:
    struct Context;
    void open_context();
    void context_lost();

    std::function<void()> turn_;
    WebInput input_;
    Mirror mirror_;
    bool owed_ = false;     ///< the last frame's things have not been told
    double told_at_ = -1.0; ///< when the last were (s)
    Abilities abilities_;
    int context_ = 0;
    std::unique_ptr<OpenGlFrame> frame_; ///< nothing while the context is lost
    bool in_turn_ = false;
    std::optional<TextField> field_;
    double shown_at_ = 0.0;
};

} // namespace carriageway
