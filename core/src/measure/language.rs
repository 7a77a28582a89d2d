/// A language that the program speaks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Language {
    /// American trade English.
    #[default]
    English,
    /// The Spanish of crews in the United States and Mexico.
    Spanish,
}

impl Language {
    /// Every language.
    pub const ALL: &'static [Self] = &[Self::English, Self::Spanish];

    /// The two-letter code of ISO 639-1.
    pub const fn code(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::Spanish => "es",
        }
    }

    /// The language of a two-letter code.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|language| language.code() == code)
    }

    /// The language of a locale as operating systems write it (`es_MX.UTF-8`, `es-US`, `en_US`, `C`): Spanish for any
    /// Spanish locale, else English.
    pub fn from_locale(locale: &str) -> Self {
        let language = locale.split(['_', '-', '.', '@']).next().unwrap_or_default();
        Self::from_code(&language.trim().to_ascii_lowercase()).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_a_locale() {
        for locale in ["es", "es_MX.UTF-8", "es-US", "ES_es", "es@euro", " es_MX"] {
            assert_eq!(Language::from_locale(locale), Language::Spanish, "{locale}");
        }
        for locale in ["", "C", "POSIX", "en_US.UTF-8", "est", "et_EE", "de_DE", "eses"] {
            assert_eq!(Language::from_locale(locale), Language::English, "{locale}");
        }
    }
}
