use crate::book::{Kind, Record};
use crate::store::Id;
use crate::views::Place;

/// Where the questions of a thing are asked.
pub(crate) fn place_of(record: &Record) -> Place {
    let own = record.id().to_string();
    let text = |id: Option<Id>| id.map(|id| id.to_string()).unwrap_or_default();
    let (parent, job) = (text(record.parent), text(record.made_in));
    match record.kind {
        Kind::Job => Place::House { job: own },
        Kind::Wall => Place::Measure { wall: own },
        Kind::BaseStep | Kind::Stud | Kind::Opening | Kind::Abutment => Place::Measure { wall: parent },
        Kind::Penetration => Place::Penetration { penetration: own },
        Kind::Board => Place::Board { board: own },
        Kind::Notch => Place::Board { board: parent },
        Kind::Pole | Kind::Mark => Place::Pole { job },
        Kind::Rule => Place::Rules { job },
        Kind::Stock | Kind::Offcut | Kind::BlockSize | Kind::AsBuilt | Kind::Cut | Kind::CutNotch | Kind::Gap => {
            Place::House { job }
        }
    }
}
