// Drives the real program on the null back end, as a person would: things are found by their
// stable name in the drawing list and touched where they were drawn.
#pragma once

#include <memory>
#include <string>
#include <string_view>

#include "app/drawing/fonts.h"
#include "app/drawing/picture.h"
#include "app/frame_loop.h"
#include "app/program.h"
#include "platform/null/null_window.h"

struct ImGuiContext;

namespace carriageway {

struct WindowSize {
    const char* name;
    int width;
    int height;
};
inline constexpr WindowSize phone{"phone", 360, 740};
inline constexpr WindowSize small_phone{"small phone", 320, 568};
inline constexpr WindowSize tablet{"tablet", 820, 1180};
inline constexpr WindowSize desktop{"desktop", 1440, 900};

/// Whether the first start of a library in a folder shows the first steps.
enum class FirstSteps { done, shown };

class Driver {
public:
    /// On the demonstration job; with a folder, on the library in it.
    explicit Driver(WindowSize size, const std::string& folder = {},
                    Language language = Language::english, float pixels_per_dp = 1.0f,
                    FirstSteps first = FirstSteps::done);
    ~Driver();

    Program& program() { return *program_; }
    Session& session() { return *session_; }
    NullWindow& window() { return *window_; }
    FrameLoop& loop() { return *loop_; }
    const DrawingList& list() const { return program_->frame().list; }
    const Fonts& fonts() const { return *fonts_; }

    void set_looks(Language language, float text_scale, ThemeChoice theme = ThemeChoice::light);

    /// Lets the program handle all that has been scripted, and every movement come to rest.
    void settle();

    /// The thing of this name; fails the test where there is none.
    const Thing& find(std::string_view name) const;
    bool has(std::string_view name) const { return list().find(name) != nullptr; }
    /// Scrolls the thing into view where it lies outside its scroll area.
    void reveal(std::string_view name);

    void tap(std::string_view name, int pointer = 1);
    void drag(std::string_view name, Vec by, int pointer = 1, int steps = 6);
    void key(Key key, bool control = false, bool shift = false);
    void type(std::string_view text);
    /// What a page can do, with an address for links.
    void as_in_a_browser();
    /// Opens a link, as the window system hands it in.
    void open_link(const std::string& text);
    /// Drops a file on the window; it is read once the loop turns.
    void give_file(const std::string& path);
    /// The same until all has come of it.
    void drop_file(const std::string& path);
    /// Taps the number pad's keys: figures, '.', '/', ' ' and the units mm, in.
    void pad(std::string_view text);

    /// The present frame as a PNG in the folder that CARRIAGEWAY_PICTURES names, for looking at; does
    /// nothing where it isn't set.
    void picture(const std::string& name) const;
    /// The present frame as pixels.
    Picture painted() const;

    const HeadAssessment& head(int station) const;
    Stops stops(int station) const { return head_on(session_->job(), station)->stops; }

private:
    ImGuiContext* context_;
    std::unique_ptr<NullWindow> window_;
    std::unique_ptr<Session> session_;
    std::unique_ptr<Fonts> fonts_;
    std::unique_ptr<Program> program_;
    std::unique_ptr<FrameLoop> loop_;
};

inline std::string words_of(Word key, Language language = Language::english) {
    return std::string(word(language, key));
}

} // namespace carriageway
