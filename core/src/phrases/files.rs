use super::Language;

/// One room's texts in every language.
pub(super) struct File {
    #[cfg_attr(not(test), allow(dead_code, reason = "names the file in the tests"))]
    pub(super) name: &'static str,
    english: &'static str,
    spanish: &'static str,
}

impl File {
    pub(super) const fn text(&self, language: Language) -> &'static str {
        match language {
            Language::English => self.english,
            Language::Spanish => self.spanish,
        }
    }
}

macro_rules! files {
    ($($name:literal,)+) => {
        &[$(File {
            name: $name,
            english: include_str!(concat!("en/", $name, ".ftl")),
            spanish: include_str!(concat!("es/", $name, ".ftl")),
        },)+]
    };
}

/// Every file, one a room or a screen.
pub(super) const FILES: &[File] = files![
    "amounts",
    "ask",
    "board",
    "cautions",
    "cli",
    "command",
    "detail",
    "document",
    "done",
    "drawing",
    "errors",
    "exchange",
    "figure",
    "file",
    "flashing",
    "frame",
    "handover",
    "house",
    "measure",
    "notch",
    "penetration",
    "plausible",
    "pole",
    "rules",
    "saw",
    "screens",
    "settings",
    "siding",
    "signing",
    "spoken",
    "steps",
    "store",
    "wall",
];
