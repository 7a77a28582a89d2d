//! What somebody may have meant who typed a word that is not known.

use super::Phrases;

/// The word that was most likely meant, where one is near enough, and all that are known, the nearest first.
pub fn nearest(text: &str, known: Vec<String>) -> (Option<String>, Vec<String>) {
    let text: Vec<char> = text.to_lowercase().chars().collect();
    let mut words: Vec<(usize, String)> = known.into_iter().map(|word| (slips(&text, &word), word)).collect();
    // Words that are equally far keep their order.
    words.sort_by_key(|(slips, _)| *slips);
    // A third of what was typed may be wrong; of two words that are equally near none was surely meant.
    let near = words.iter().filter(|(slips, _)| 3 * slips <= text.len()).take(2);
    let near = match near.collect::<Vec<_>>().as_slice() {
        [(_, word)] => Some(word.clone()),
        [(first, word), (second, _)] if first < second => Some(word.clone()),
        _ => None,
    };
    // Who typed only the beginning of one word meant that one.
    let begun = || {
        let begins = |word: &&(usize, String)| {
            text.len() >= 3 && word.1.to_lowercase().starts_with(&text.iter().collect::<String>())
        };
        let mut begun = words.iter().filter(begins);
        begun.next().filter(|_| begun.next().is_none()).map(|(_, word)| word.clone())
    };
    let near = near.or_else(begun);
    (near, words.into_iter().map(|(_, word)| word).collect())
}

/// How many letters are wrong, missing, too many or swapped with their neighbor: the optimal string alignment distance.
fn slips(text: &[char], word: &str) -> usize {
    let word: Vec<char> = word.to_lowercase().chars().collect();
    // The slips between the first letters of both, a row for each count of letters of the text.
    let mut rows: Vec<Vec<usize>> = vec![(0..=word.len()).collect()];
    for i in 1..=text.len() {
        let mut row = vec![i];
        for j in 1..=word.len() {
            let at = |i: usize, j: usize| rows.get(i).and_then(|row| row.get(j)).copied().unwrap_or_default();
            let same = text.get(i - 1) == word.get(j - 1);
            let mut least = (at(i - 1, j - 1) + usize::from(!same)).min(at(i - 1, j) + 1);
            least = least.min(row.last().copied().unwrap_or_default() + 1);
            if i > 1 && j > 1 && text.get(i - 1) == word.get(j - 2) && text.get(i - 2) == word.get(j - 1) {
                least = least.min(at(i - 2, j - 2) + 1);
            }
            row.push(least);
        }
        rows.push(row);
    }
    rows.last().and_then(|row| row.last()).copied().unwrap_or_default()
}

impl Phrases {
    /// What is said of an answer to a question that is not asked: what was likely meant, and what is asked, the nearest first.
    pub fn not_asked(&self, field: &str, asked: Vec<String>) -> String {
        let (near, asked) = nearest(field, asked);
        let args = [("field", field.into()), ("fields", asked.join(", ").into())];
        match near {
            Some(near) => {
                let [field, fields] = args;
                self.phrase("screen-not-an-answer-near", &[field, fields, ("near", near.into())])
            }
            None => self.phrase("screen-not-an-answer", &args),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(text: &str, known: &[&str]) -> Option<String> {
        nearest(text, known.iter().map(|word| (*word).to_owned()).collect()).0
    }

    #[test]
    fn letters_that_are_wrong_missing_too_many_or_swapped_are_counted() {
        let count = |text: &str, word: &str| slips(&text.chars().collect::<Vec<_>>(), word);
        for (text, word, slips) in [
            ("length", "length", 0),
            ("lenght", "length", 1),
            ("legth", "length", 1),
            ("lengtth", "length", 1),
            ("lemgth", "length", 1),
            ("", "lap", 3),
            ("lap", "", 3),
            ("ca", "abc", 3),
            ("kitten", "sitting", 3),
        ] {
            assert_eq!(count(text, word), slips, "{text} {word}");
            let back: Vec<char> = word.chars().collect();
            assert_eq!(super::slips(&back, text), slips, "{word} {text}");
        }
    }

    #[test]
    fn what_is_near_was_meant_and_what_is_far_or_in_doubt_was_not() {
        let known = ["length", "height", "lap", "left", "right"];
        assert_eq!(near("lenght", &known).as_deref(), Some("length"));
        assert_eq!(near("Heigth", &known).as_deref(), Some("height"));
        assert_eq!(near("colour", &known), None);
        assert_eq!(near("wall2", &["wall1", "wall3"]), None);
        assert_eq!(near("", &known), None);
        assert_eq!(near("--lang", &["--language", "--division"]).as_deref(), Some("--language"));
        assert_eq!(near("bottom", &["bottom-left", "bottom-right"]), None);
        let (_, words) = nearest("rihgt", known.iter().map(|word| (*word).to_owned()).collect());
        assert_eq!(words.first().map(String::as_str), Some("right"));
        assert_eq!(words.len(), known.len());
    }
}
