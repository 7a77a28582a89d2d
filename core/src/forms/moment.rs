//! A moment as a person reads it: the day and the time where it was.

use chrono::{DateTime, NaiveDateTime, TimeDelta};

/// The local day of a moment, as `2026-05-04`.
pub(crate) fn day(ms: i64, utc_offset_minutes: i32) -> String {
    local(ms, utc_offset_minutes).format("%Y-%m-%d").to_string()
}

/// The local time of a moment, as `07:05`.
pub(crate) fn clock(ms: i64, utc_offset_minutes: i32) -> String {
    local(ms, utc_offset_minutes).format("%H:%M").to_string()
}

/// The same to the second, as `07:05:09`.
pub(crate) fn exact_clock(ms: i64, utc_offset_minutes: i32) -> String {
    local(ms, utc_offset_minutes).format("%H:%M:%S").to_string()
}

/// 1970-01-01 for what no calendar reaches.
fn local(ms: i64, utc_offset_minutes: i32) -> NaiveDateTime {
    let utc = DateTime::from_timestamp_millis(ms).unwrap_or_default().naive_utc();
    utc.checked_add_signed(TimeDelta::minutes(utc_offset_minutes.into())).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Reference values from the `date -u -d @SECONDS` command.
    #[test]
    fn tells_day_and_time() {
        for (seconds, is) in [
            (0, "1970-01-01 00:00"),
            (-1, "1969-12-31 23:59"),
            (951_782_399, "2000-02-28 23:59"),
            (951_868_800, "2000-03-01 00:00"),
            (1_709_210_096, "2024-02-29 12:34"),
            (4_107_542_400, "2100-03-01 00:00"),
            (1_795_622_994, "2026-11-25 16:09"),
        ] {
            assert_eq!(format!("{} {}", day(seconds * 1000, 0), clock(seconds * 1000, 0)), is);
        }
        assert_eq!(exact_clock(1_795_622_994_999, 0), "16:09:54");
        assert_eq!((day(0, -420), clock(0, -420)), ("1969-12-31".to_owned(), "17:00".to_owned()));
    }

    #[test]
    fn any_number_of_milliseconds_is_told() {
        for ms in [i64::MIN, i64::MAX] {
            assert_eq!((day(ms, 0), clock(ms, 0)), ("1970-01-01".to_owned(), "00:00".to_owned()));
        }
    }
}
