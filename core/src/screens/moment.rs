//! A moment as a person reads it: the day and the time where it was.

const DAY_MINUTES: i64 = 24 * 60;

/// The local day of a moment, as `2026-05-04`.
pub(super) fn day(ms: i64, utc_offset_minutes: i32) -> String {
    let (year, month, day) = civil(minutes(ms, utc_offset_minutes).div_euclid(DAY_MINUTES));
    format!("{year:04}-{month:02}-{day:02}")
}

/// The local time of a moment, as `07:05`.
pub(super) fn clock(ms: i64, utc_offset_minutes: i32) -> String {
    let minutes = minutes(ms, utc_offset_minutes).rem_euclid(DAY_MINUTES);
    format!("{:02}:{:02}", minutes / 60, minutes % 60)
}

fn minutes(ms: i64, utc_offset_minutes: i32) -> i64 {
    ms.div_euclid(60_000).saturating_add(utc_offset_minutes.into())
}

/// Year, month and day of a count of days since 1970-01-01, in the Gregorian calendar: eras of 400 years have
/// 146,097 days, and years that begin in March end with the leap day.
const fn civil(days: i64) -> (i64, i64, i64) {
    let shifted = days + 719_468;
    let era = shifted.div_euclid(146_097);
    let of_era = shifted.rem_euclid(146_097);
    let year = (of_era - of_era / 1_460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year + year / 4 - year / 100);
    let month = (5 * of_year + 2) / 153;
    let day = of_year - (153 * month + 2) / 5 + 1;
    let month = if month < 10 { month + 3 } else { month - 9 };
    (year + era * 400 + (month <= 2) as i64, month, day)
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
        assert_eq!((day(0, -420), clock(0, -420)), ("1969-12-31".to_owned(), "17:00".to_owned()));
    }
}
