use std::fs;

use sha2::{Digest as _, Sha256};

use super::*;
use crate::store::{Now, OpenOptions, Store};

/// A phone with a book on its disk and a folder for the book's own copies.
struct Phone {
    folder: tempfile::TempDir,
    book: Book,
}

impl Phone {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let options = OpenOptions { backups: Some(folder.path().join("copies")) };
        let (book, _) = Book::open(folder.path().join("book.lapwright"), &options).unwrap();
        Self { folder, book }
    }

    /// A phone with a house.
    fn with_house() -> (Self, String) {
        let mut phone = Self::new();
        let job = phone.house(1, "Lot 12");
        (phone, job)
    }

    fn house(&mut self, n: u8, name: &str) -> String {
        let made = self.tap(n, JobsAction::Create { name: name.to_owned(), like: None }).unwrap();
        let Place::House { job } = made.place else { panic!("a new house opens") };
        job
    }

    fn path(&self, name: &str) -> String {
        self.folder.path().join(name).display().to_string()
    }

    fn tap(&mut self, n: u8, action: impl Into<Action>) -> Result<Outcome, Problem> {
        tap(&mut self.book, n, action)
    }

    fn shown<V: OfScreen>(&self, place: Place) -> V {
        shown(&self.book, "en", place)
    }

    fn jobs(&self) -> JobsView {
        self.shown(Place::Jobs)
    }

    fn names(&self) -> Vec<String> {
        self.jobs().jobs.into_iter().map(|job| job.name).collect()
    }

    /// Hands a house over, in a file.
    fn hand_over(&mut self, n: u8, job: &str, all: bool) -> String {
        let path = self.path(&format!("house-{n}"));
        let action = HandOverAction::House { job: job.to_owned(), all, path: path.clone() };
        let outcome = self.tap(n, action).unwrap();
        assert_eq!(HandOverView::of(outcome.view).done.len(), 1);
        path
    }

    fn looks_at(&self, file: &str) -> TakeInView {
        self.shown(Place::TakeIn { file: file.to_owned() })
    }

    fn trusts(&mut self, n: u8, file: &str) -> TakeInView {
        let device = self.looks_at(file).senders[0].device.clone();
        TakeInView::of(self.tap(n, TakeInAction::Trust { file: file.to_owned(), device }).unwrap().view)
    }

    fn takes_in(&mut self, n: u8, file: &str) -> Result<DifferencesView, Problem> {
        let outcome = self.tap(n, TakeInAction::TakeIn { file: file.to_owned(), even_ahead: false })?;
        assert_eq!(outcome.place, Place::Differences);
        Ok(DifferencesView::of(outcome.view))
    }

    fn lap(&self, job: &str) -> String {
        let house: HouseView = self.shown(Place::House { job: job.to_owned() });
        house.questions.into_iter().find(|question| question.field == "lap").unwrap().answer
    }

    fn answer_lap(&mut self, n: u8, job: &str, text: &str) {
        let (job, field, text) = (job.to_owned(), "lap".to_owned(), text.to_owned());
        self.tap(n, HouseAction::Answer { job, field, text }).unwrap();
    }
}

#[test]
fn a_copy_is_kept_by_hand_and_everything_goes_into_one_file() {
    let (mut phone, _) = Phone::with_house();
    assert!(phone.shown::<BackupsView>(Place::Backups).copies.is_empty());
    let outcome = phone.tap(2, BackupsAction::Keep).unwrap();
    assert_eq!((outcome.place, outcome.group.as_str()), (Place::Backups, ""));
    let view = BackupsView::of(outcome.view);
    assert_eq!((view.copies.len(), view.done.len(), view.notes.len()), (1, 1, 0));
    assert_eq!(view.copied, "Never copied off this device");
    Store::verify_copy(&view.copies[0].copy).unwrap();
    let bytes = fs::metadata(&view.copies[0].copy).unwrap().len();
    assert_eq!(view.copies[0].size, format!("{} KB", bytes.div_ceil(1000)));

    let path = phone.path("everything.zip");
    let view = BackupsView::of(phone.tap(3, BackupsAction::Share { path: path.clone() }).unwrap().view);
    assert_eq!(view.copied, "Copied today");
    assert_eq!(Store::verify_pack(&path).unwrap().answers, 1);
}

#[test]
fn going_back_to_a_copy_says_first_what_it_would_do_and_then_where_the_book_as_it_was_is() {
    let (mut phone, job) = Phone::with_house();
    let kept = BackupsView::of(phone.tap(2, BackupsAction::Keep).unwrap().view);
    let copy = kept.copies[0].copy.clone();
    phone.house(3, "Lot 13");
    phone.book.put_draft(&crate::book::DraftKey::setting("signer"), "Te").unwrap();

    let preview: RestoreView = phone.shown(Place::Restore { copy: copy.clone() });
    assert_eq!(preview.name, kept.copies[0].said);
    assert!(preview.lines.iter().any(|line| line.starts_with("One later answer goes")), "{:?}", preview.lines);
    assert_eq!(phone.names(), ["Lot 12", "Lot 13"], "nothing was changed yet");

    let outcome = phone.tap(4, RestoreAction::Restore { copy }).unwrap();
    assert_eq!(outcome.place, Place::Backups);
    let view = BackupsView::of(outcome.view);
    assert_eq!(phone.names(), ["Lot 12"]);
    let was = view.copies.iter().find(|line| view.done[0].contains(&line.said)).expect("the copy that is named");
    assert_eq!(
        phone.book.draft(&crate::book::DraftKey::setting("signer")).unwrap(),
        "Te",
        "what was typed is this phone's"
    );
    phone.answer_lap(5, &job, "1 1/4");

    let was = was.copy.clone();
    phone.tap(6, RestoreAction::Restore { copy: was }).unwrap();
    assert_eq!(phone.names(), ["Lot 12", "Lot 13"], "a restore is itself gone back on");
}

#[test]
fn a_restore_that_is_refused_leaves_the_book_open_as_it_was() {
    let (mut phone, _) = Phone::with_house();
    let (mut other, _) = Phone::with_house();
    let theirs = other.path("theirs.lapwright");
    other.tap(2, HandOverAction::Book { path: theirs.clone() }).unwrap();
    let nonsense = phone.path("nonsense");
    fs::write(&nonsense, "not a book").unwrap();
    for copy in [theirs, nonsense, phone.path("nowhere")] {
        let place = Place::Restore { copy: copy.clone() };
        assert_eq!(view(&phone.book, &context("en", 0), &place).unwrap_err().code, "book");
        assert_eq!(phone.tap(3, RestoreAction::Restore { copy }).unwrap_err().code, "book");
        assert_eq!(phone.names(), ["Lot 12"]);
    }
    phone.house(4, "Lot 13");
    assert_eq!(phone.names(), ["Lot 12", "Lot 13"]);
}

/// A letter of a name that was typed, in the log or in a table, changes no more than itself: nothing but the check finds it.
#[test]
fn a_copy_that_was_changed_is_refused_by_its_name_and_is_no_damage_of_the_book() {
    let (mut phone, _) = Phone::with_house();
    let kept = BackupsView::of(phone.tap(2, BackupsAction::Keep).unwrap().view).copies.remove(0);
    let (bytes, wanted) = (fs::read(&kept.copy).unwrap(), b"Lot 12".as_slice());
    let places: Vec<usize> = (0..bytes.len()).filter(|at| bytes[*at..].starts_with(wanted)).collect();
    assert!(places.len() > 1, "{places:?}: in the log and in the tables");
    for at in places {
        let mut changed = bytes.clone();
        changed[at] = b'P';
        fs::write(&kept.copy, &changed).unwrap();
        let place = Place::Restore { copy: kept.copy.clone() };
        let refused = [
            view(&phone.book, &context("en", 0), &place).unwrap_err(),
            phone.tap(3, RestoreAction::Restore { copy: kept.copy.clone() }).unwrap_err(),
        ];
        for problem in refused {
            assert_eq!(problem.code, "book");
            let called = format!("The copy “{}” is damaged or was changed", kept.said);
            assert!(problem.text.starts_with(&called), "{}", problem.text);
            assert!(!problem.text.contains(['{', '\n', '/']), "{}", problem.text);
        }
        assert_eq!(phone.names(), ["Lot 12"]);
    }
    fs::remove_file(&kept.copy).unwrap();
    let gone = phone.tap(4, RestoreAction::Restore { copy: kept.copy.clone() }).unwrap_err().text;
    assert!(gone.contains("is not there any more") && !gone.contains(&phone.path("")), "{gone}");
}

#[test]
fn a_colleagues_file_that_was_cut_is_named_and_is_no_damage_of_the_book() {
    let (mut one, job) = Phone::with_house();
    let two = Phone::new();
    let file = one.hand_over(2, &job, true);
    let bytes = fs::read(&file).unwrap();
    fs::write(&file, &bytes[..bytes.len() / 2]).unwrap();
    let refused = view(&two.book, &context("en", 0), &Place::TakeIn { file }).unwrap_err();
    assert!(refused.text.starts_with("The file “house-2” is damaged"), "{}", refused.text);
}

#[test]
fn a_house_goes_to_a_colleague_whose_words_are_compared_first() {
    let (mut one, job) = Phone::with_house();
    let mut two = Phone::new();
    two.house(101, "Own");
    one.house(2, "Not this one");
    let file = one.hand_over(3, &job, false);

    let preview = two.looks_at(&file);
    assert!(!preview.ready && preview.refused.is_empty() && preview.ahead.is_empty(), "{preview:?}");
    let [sender] = preview.senders.as_slice() else { panic!("{preview:?}") };
    assert!(!sender.trusted && sender.said.contains("compare these four words"));
    let said = one.shown::<HandOverView>(Place::HandOver { job: Some(job.clone()) }).said;
    assert!(said.contains(&sender.words), "{said}: the words that are shown there");
    assert_eq!(two.takes_in(4, &file).unwrap_err().code, "book");
    assert_eq!(two.names(), ["Own"]);

    assert!(two.trusts(5, &file).ready);
    let view = two.takes_in(6, &file).unwrap();
    assert!(view.differences.is_empty());
    assert!(view.done[0].starts_with("One answer was taken in"), "{:?}", view.done);
    assert_eq!(view.done[1], "Both phones now hold the same of this house.");
    assert_eq!(two.names(), ["Lot 12", "Own"]);
    assert!(!two.looks_at(&file).ready, "there is nothing new in it any more");

    let nothing = one.tap(7, HandOverAction::House { job: job.clone(), all: false, path: one.path("again") });
    assert_eq!(nothing.unwrap_err().code, "first");
    one.hand_over(8, &job, true);
}

#[test]
fn what_was_answered_differently_is_shown_until_it_was_looked_at_and_is_taken_back_by_a_restore() {
    let (mut one, job) = Phone::with_house();
    let mut two = Phone::new();
    two.house(101, "Own");
    one.answer_lap(2, &job, "1 1/4");
    let file = one.hand_over(3, &job, false);
    two.trusts(4, &file);
    two.takes_in(5, &file).unwrap();
    two.answer_lap(110, &job, "1 1/2");
    one.answer_lap(120, &job, "1 3/8");
    let file = one.hand_over(121, &job, false);

    let preview = two.looks_at(&file);
    assert!(preview.lines.iter().any(|line| line.starts_with("In one place both")), "{:?}", preview.lines);
    let view = two.takes_in(122, &file).unwrap();
    let [line] = view.differences.as_slice() else { panic!("{view:?}") };
    assert!(line.title.starts_with("Lot 12, "), "{line:?}");
    assert!(line.stands.contains("1 3/8") && line.other.contains("1 1/2"), "{line:?}");
    assert!(line.stands.contains("Ines"), "{line:?}");
    assert_eq!(line.place, Place::House { job: job.clone() });
    assert_eq!(two.lap(&job), "1 3/8\"");
    assert_eq!(two.jobs().differences, "One thing was answered differently on two phones");

    let outcome = two.tap(123, DifferencesAction::LookedAt { differences: vec![line.difference.clone()] }).unwrap();
    assert_eq!(outcome.place, Place::Jobs);
    assert_eq!(two.jobs().differences, "");

    let copies: BackupsView = two.shown(Place::Backups);
    let before = copies.copies.iter().find(|copy| view.done[0].contains(&copy.said)).expect("the copy that is named");
    two.tap(124, RestoreAction::Restore { copy: before.copy.clone() }).unwrap();
    assert_eq!(two.lap(&job), "1 1/2\"", "what a colleague brought is taken back");
}

#[test]
fn an_answer_that_was_altered_on_the_way_is_named_and_nothing_comes_in() {
    let (mut one, job) = Phone::with_house();
    let mut two = Phone::new();
    two.house(101, "Own");
    let file = one.hand_over(2, &job, true);
    let text = fs::read_to_string(&file).unwrap();
    let (body, _) = text.trim_end().rsplit_once('\n').unwrap();
    let body = body.replace("Lot 12", "Lot 99");
    fs::write(&file, format!("{body}\n{}\n", hex::encode(Sha256::digest(&body)))).unwrap();
    let preview = two.looks_at(&file);
    assert!(!preview.ready && preview.senders.is_empty());
    let [refused] = preview.refused.as_slice() else { panic!("{preview:?}") };
    assert!(refused.contains("Ines") && refused.contains("it was changed later"), "{refused}");
    assert!(two.takes_in(3, &file).is_err());
    assert_eq!(two.names(), ["Own"]);
}

#[test]
fn a_clock_that_is_days_ahead_is_asked_about() {
    const DAYS_MS: i64 = 3 * 24 * 60 * 60 * 1000;
    let (mut one, job) = Phone::with_house();
    let mut two = Phone::new();
    two.house(101, "Own");
    let ahead = Context { now_ms: context("en", 2).now_ms + DAYS_MS, ..context("en", 2) };
    let answer = HouseAction::Answer { job: job.clone(), field: "lap".to_owned(), text: "1 1/4".to_owned() };
    act(&mut one.book, &ahead, &answer.into()).unwrap();
    let file = one.hand_over(3, &job, true);
    let preview = two.trusts(4, &file);
    assert!(preview.ready && preview.ahead.contains("one of the two clocks is wrong"), "{preview:?}");
    assert_eq!(two.takes_in(5, &file).unwrap_err().code, "book");
    assert_eq!(two.names(), ["Own"]);
    two.tap(6, TakeInAction::TakeIn { file, even_ahead: true }).unwrap();
    assert_eq!(two.lap(&job), "1 1/4\"");
}

#[test]
fn a_copy_that_could_not_be_kept_is_told_until_one_is() {
    let (mut phone, _) = Phone::with_house();
    phone.book.put_setting(&crate::book::Setting::Language, "es").unwrap();
    let blocked = phone.path("blocked");
    fs::write(&blocked, "no folder").unwrap();
    let now = Now { ms: context("en", 2).now_ms, utc_offset_minutes: 0 };
    assert!(keep_copy(&mut phone.book, &blocked, now).is_err());
    let told = shown::<JobsView>(&phone.book, "es", Place::Jobs).copy_failed;
    assert!(told.starts_with("Al salir de la aplicación"), "{told}");
    assert_eq!(shown::<BackupsView>(&phone.book, "es", Place::Backups).notes, [told]);
    let copies = phone.path("copies");
    keep_copy(&mut phone.book, copies, now).unwrap();
    assert_eq!(phone.jobs().copy_failed, "");
}

/// Where only copies came to a new phone, what an older one of them holds beyond the newest is told of it by its name.
#[test]
fn what_another_copy_holds_is_told_without_a_folder() {
    let (mut phone, _) = Phone::with_house();
    let copies = phone.path("copies");
    let at = |ms: i64| Now { ms: context("en", 2).now_ms + ms, utc_offset_minutes: 0 };
    keep_copy(&mut phone.book, &copies, at(90_000)).unwrap();
    phone.house(3, "Lot 13");
    keep_copy(&mut phone.book, &copies, at(0)).unwrap();
    let folder = tempfile::tempdir().unwrap();
    let here = folder.path().join("copies");
    fs::create_dir(&here).unwrap();
    for copy in fs::read_dir(&copies).unwrap().map(Result::unwrap) {
        fs::copy(copy.path(), here.join(copy.file_name())).unwrap();
    }
    let options = OpenOptions { backups: Some(here) };
    let (book, _) = Book::open(folder.path().join("book.lapwright"), &options).unwrap();
    let account = shown::<JobsView>(&book, "en", Place::Jobs).account;
    assert!(account.iter().any(|line| line.starts_with("One further answer lies in the copy “")), "{account:?}");
    let folder = folder.path().display().to_string();
    assert!(account.iter().all(|line| !line.contains(&folder)), "{account:?}");
}
