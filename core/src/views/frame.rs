//! The frame round every screen: the words of its buttons, and the drawn inch of tape that a fraction is tapped on.

use crate::phrases::{Phrases, key};

macro_rules! words {
    ($($name:ident = $key:tt,)+) => {
        /// The words of buttons and headings that no view carries.
        #[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
        #[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
        pub struct Words {
            $(
                #[doc = $key]
                pub $name: String,
            )+
        }

        impl Words {
            /// Every word in a language.
            pub(crate) fn of(phrases: &Phrases) -> Self {
                Self { $($name: phrases.phrase(key($key), &[]),)+ }
            }
        }
    };
}

words! {
    jobs = "screen-jobs",
    settings = "screen-settings",
    wall = "screen-wall",
    measure = "screen-measure",
    pole = "screen-pole",
    saw_list = "screen-saw-list",
    order = "screen-order",
    rules = "screen-rules",
    done_list = "screen-done-list",
    back = "screen-back",
    cancel = "screen-cancel",
    show_face = "frame-show-face",
    show_back = "frame-show-back",
    taped = "screen-taped",
    planned = "screen-planned",
    by_rule = "screen-by-rule",
    came_back = "frame-came-back",
    accept = "frame-accept",
    rub_out = "frame-rub-out",
    space = "frame-space",
    tape = "frame-tape",
    say_it = "frame-say-it",
    caution = "frame-caution",
    open = "frame-open",
    done = "frame-done",
    left_out = "frame-left-out",
    leave_out = "frame-leave-out",
    take_back = "frame-take-back",
    photo = "frame-photo",
    compare = "frame-compare",
    compare_not = "frame-compare-not",
    lock = "frame-lock",
    unlock = "frame-unlock",
    more = "frame-more",
    close = "frame-close",
    answers = "frame-answers",
    remove = "frame-remove",
    archive = "frame-archive",
    bring_back = "frame-bring-back",
    archived = "frame-archived",
    same_as_last = "frame-same-as-last",
    new_house = "frame-new-house",
    house_like = "frame-house-like",
    open_demo = "frame-open-demo",
    no_houses = "frame-no-houses",
    notch_now = "frame-notch-now",
    new_wall = "frame-new-wall",
    new_stock = "frame-new-stock",
    stock = "frame-stock",
    blocks = "frame-blocks",
    new_block = "frame-new-block",
    walls = "frame-walls",
    open_to_weather = "frame-open-to-weather",
    plan_boards = "frame-plan-boards",
    new_penetration = "frame-new-penetration",
    new_notch = "frame-new-notch",
    loose_board = "frame-loose-board",
    gap = "frame-gap",
    gap_least = "frame-gap-least",
    gap_most = "frame-gap-most",
    offset = "frame-offset",
    legs = "frame-legs",
    steps = "frame-steps",
    layers = "frame-layers",
    patch = "frame-patch",
    block = "frame-block",
    lay_out = "frame-lay-out",
    new_mark = "frame-new-mark",
    back_to_default = "frame-back-to-default",
    change = "frame-change",
    older = "frame-older",
    new_signer = "frame-new-signer",
    zoom_in = "frame-zoom-in",
    zoom_out = "frame-zoom-out",
    base_step = "wall-part-base-step",
    stud = "wall-part-stud",
    opening = "wall-part-opening",
    abutment = "wall-part-abutment",
    heights = "frame-heights",
    signers = "frame-signers",
    taken_back = "frame-taken-back",
    depends = "frame-depends",
    reopened = "frame-reopened",
    nothing_done = "frame-nothing-done",
    improve = "frame-improve",
    offcuts = "frame-offcuts",
    new_offcut = "frame-new-offcut",
    throw_away = "frame-throw-away",
    thrown_away = "frame-thrown-away",
    keep_it = "frame-keep-it",
    all_cut = "frame-all-cut",
    as_built = "frame-as-built",
    as_built_at = "frame-as-built-at",
    share_text = "frame-share-text",
    share_csv = "frame-share-csv",
    share_json = "frame-share-json",
    advice = "frame-advice",
    take_advice = "frame-take-advice",
    spoiled = "frame-spoiled",
    same_board = "frame-same-board",
    attach = "frame-attach",
    forget_habit = "frame-forget-habit",
    penetrations = "frame-penetrations",
    details = "frame-details",
    boards = "frame-boards",
    share_copy = "frame-share-copy",
    account_read = "frame-account-read",
    share_photo = "frame-share-photo",
    listen = "frame-listen",
    differs = "step-differs",
    locked = "frame-locked",
    listening = "frame-listening",
    heard_nothing = "frame-heard-nothing",
    microphone_refused = "frame-microphone-refused",
    language_not_here = "frame-language-not-here",
    no_camera = "frame-no-camera",
    read_it = "frame-read-it",
    undo = "frame-undo",
    lock_sign = "frame-lock-sign",
    listen_sign = "frame-listen-sign",
    ticket = "frame-ticket",
    length = "frame-length",
    from_left = "frame-from-left",
    from_bottom = "frame-from-bottom",
    from_top = "frame-from-top",
    sizes = "frame-sizes",
    next_work = "frame-next-work",
    lacking = "frame-lacking",
    backups = "screen-backups",
    restore = "screen-restore",
    hand_over = "screen-hand-over",
    take_in = "screen-take-in",
    differences = "screen-differences",
    keep_copy = "frame-keep-copy",
    share_backup = "frame-share-backup",
    copies_here = "frame-copies-here",
    pick_copy = "frame-pick-copy",
    no_copies = "frame-no-copies",
    restore_now = "frame-restore-now",
    share_new = "frame-share-new",
    share_all = "frame-share-all",
    pick_file = "frame-pick-file",
    same_words = "frame-same-words",
    take_in_now = "frame-take-in-now",
    take_in_ahead = "frame-take-in-ahead",
    looked_at = "frame-looked-at",
    file_unreadable = "frame-file-unreadable",
}

/// What stands round every screen.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct FrameView {
    /// The words of buttons and headings.
    pub words: Words,
    /// The drawn piece of tape: one inch, or one centimeter.
    pub tape: Vec<TapeMark>,
    /// What is shown beside a number that is being typed.
    pub unit: String,
}

/// A mark on the drawn piece of tape.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct TapeMark {
    /// What tapping it adds to the whole number that was typed, such as `5/16` or `.5`.
    pub text: String,
    /// What a person hears.
    pub spoken: String,
    /// Where it stands, in thousandths of the drawn piece.
    pub at: u32,
    /// How long its line is, in thousandths of the longest.
    pub long: u32,
}
