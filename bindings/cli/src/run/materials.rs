//! The commands of the saw list and the order.

use lapwright::views::{Action, Place, SawListAction, SawListView, View};

use super::{Session, out};
use crate::fault::Fault;
use crate::find::{Named, one};
use crate::options::{OrderOptions, SawOptions};

impl Session<'_> {
    fn saw_list(&self, job: &str) -> Result<SawListView, Fault> {
        match self.book.view(&Place::SawList { job: job.to_owned() })? {
            View::SawListKind { view } => Ok(view),
            _ => Err(Fault::unknown("house", job, &[])),
        }
    }

    /// Does everything that is asked of the saw list, in the order plan, stock, cut, offcuts; then shows it.
    pub(super) fn saw(&mut self, house: &str, asked: &SawOptions) -> Result<(), Fault> {
        let job = self.job(house)?;
        let own = || job.clone();
        let view = self.saw_list(&job)?;
        let mut actions = Vec::new();
        if let Some((stock, count)) = &asked.have {
            let named = view.stock.iter().map(|line| Named::new(&line.stock, &line.length.text));
            // A length is the same however it is written: 144, 12' and 144" name one stock.
            let length = self.book.reader()?.length(stock).ok();
            let same = view.stock.iter().find(|line| length.is_some_and(|length| length.nm() == line.length.nm));
            let stock = match same {
                Some(line) => line.stock.clone(),
                None => one("stock", stock, &named.collect::<Vec<_>>())?,
            };
            actions.push(SawListAction::SayStock { job: own(), stock, count: count.clone() });
        }
        if let Some(length) = &asked.offcut {
            actions.push(SawListAction::AddOffcut { job: own(), length: length.clone() });
        }
        let offcuts = view.offcuts.iter().map(|line| Named::new(&line.offcut, &line.length.text));
        let offcuts: Vec<Named> = offcuts.collect();
        if let Some(offcut) = &asked.drop {
            actions.push(SawListAction::DropOffcut { job: own(), offcut: one("offcut", offcut, &offcuts)? });
        }
        if let Some(offcut) = &asked.keep {
            actions.push(SawListAction::KeepOffcut { job: own(), offcut: one("offcut", offcut, &offcuts)? });
        }
        if asked.plan {
            actions.push(SawListAction::Plan { job: own() });
        }
        if asked.improve {
            actions.push(SawListAction::Improve { job: own() });
        }
        if !asked.plan && !asked.improve {
            let numbers: Vec<i64> = view.boards.iter().map(|board| board.number).collect();
            if let Some(number) = asked.cut.iter().find(|number| !numbers.contains(number)) {
                let numbers: Vec<String> = numbers.iter().take(20).map(ToString::to_string).collect();
                return Err(Fault::unknown("number", &number.to_string(), &numbers));
            }
        }
        actions.extend(asked.cut.iter().map(|number| SawListAction::MarkCut { job: own(), number: *number }));
        let mut last = None;
        for action in actions {
            last = Some(self.book.act(&Action::SawListKind { action })?);
        }
        match last {
            Some(outcome) => self.print_outcome(&outcome),
            None => self.show(&Place::SawList { job }),
        }
    }

    pub(super) fn order(&mut self, house: &str, asked: &OrderOptions) -> Result<(), Fault> {
        let job = self.job(house)?;
        let View::OrderKind { view } = self.book.view(&Place::Order { job })? else {
            return Err(Fault::unknown("house", house, &[]));
        };
        if asked.csv {
            return out(view.csv.trim_end());
        }
        if asked.text {
            return out(view.text.trim_end());
        }
        // The list itself, as an office script reads it; with the fields of `lapwright figure amounts`.
        if self.options.json {
            return out(view.json.trim_end());
        }
        self.print(&View::OrderKind { view })
    }
}
