//! Order: what to buy.

mod house;
mod share;

use crate::amounts::{AmountError, Item, amounts};
use crate::measure::Length;
use crate::phrases::key;
use crate::store::Store;
use crate::views::{Code, Context, Note, OrderLine, OrderView, PoleAction, Problem};

use super::context::Terms;
use super::document::take_into_new;
use super::kept::Job;
use super::pole;
use super::spoken;
use super::trouble::{Kept, Trouble};

pub(super) fn view(store: &Store, terms: &Terms<'_>, job: &str) -> Kept<OrderView> {
    let job = Job::of(store, terms, terms.id("job", job)?)?;
    let stock = job.stock(store)?;
    let items = count(store, terms, &job, ORDER_EFFORT)?;
    let lines: Vec<OrderLine> = items.iter().map(|item| line(terms, item, &stock)).collect();
    let json = items.iter().map(|item| item.json(terms.phrases, terms.show)).collect();
    let note = Note { code: "who-wins".to_owned(), text: terms.phrase(key("order-check"), &[]) };
    Ok(OrderView {
        job: job.id().to_string(),
        name: job.name().to_owned(),
        notes: vec![note],
        text: share::text(job.name(), &lines),
        csv: share::csv(terms, &lines),
        json: share::json(job.name(), &lines, json),
        lines,
    })
}

fn line(terms: &Terms<'_>, item: &Item, stock: &[(Length, Option<i64>)]) -> OrderLine {
    let amount = |amount| item.text(amount, terms.show, terms.language);
    let words = |words: &crate::amounts::Words| words.text(terms.phrases, terms.show);
    let own = item.stock.and_then(|length| stock.iter().find(|(stock, _)| *stock == length));
    let have = own.and_then(|(_, have)| *have);
    let buy = item.packs.saturating_sub(have.unwrap_or_default()).max(0);
    let (net, waste, pack) = (amount(&item.net), amount(&item.waste), words(&item.pack_name));
    let text = match (have, buy) {
        (None, _) => key("order-line"),
        (Some(_), 0) => key("order-line-enough"),
        (Some(_), _) => key("order-line-have"),
    };
    let args = [
        ("buy", buy.into()),
        ("pack", pack.as_str().into()),
        ("net", net.as_str().into()),
        ("waste", waste.as_str().into()),
        ("packs", item.packs.into()),
        ("have", have.unwrap_or_default().into()),
    ];
    OrderLine {
        code: item.code.clone(),
        name: words(&item.name),
        said: terms.phrase(text, &args),
        amount: amount(&item.amount()),
        packs: item.packs,
        from: words(&item.from),
        net,
        waste,
        pack,
        have,
        buy,
    }
}

/// The planner's steps for a house that no saw list was made for: enough for a house, over in a moment.
pub(crate) const ORDER_EFFORT: u64 = 400;

/// Counts a house; without a saw list its boards are planned with so many steps.
fn count(store: &Store, terms: &Terms<'_>, job: &Job, effort: u64) -> Kept<Vec<Item>> {
    let house = house::house(store, terms, job, effort)?;
    amounts(&house).map_err(|error| refused(terms, error))
}

fn refused(terms: &Terms<'_>, error: AmountError) -> Trouble {
    match error {
        AmountError::Rule(error) => error.into(),
        error => {
            let text = terms.phrase(key("amounts-trouble"), &[("why", error.to_string().into())]);
            Problem::new(Code::TooBig, "", text).into()
        }
    }
}

/// Everything to order for the house of a job document, which is taken into a book of its own.
///
/// # Errors
/// [`Problem`] whose field is the path in the document.
pub(crate) fn amounts_of_document(context: &Context, text: &str, effort: u64) -> Result<Vec<Item>, Problem> {
    spoken(context, |terms| {
        let mut store = Store::in_memory()?;
        let id = take_into_new(&mut store, terms, text)?;
        let mut job = Job::of(&store, terms, id)?;
        // A document whose pole was never laid out is counted by the lines that its own marks ask for.
        if job.lines(&store)?.is_none() {
            pole::act(&mut store, terms, &PoleAction::LayOut { job: id.to_string() })?;
            job = Job::of(&store, terms, id)?;
        }
        count(&store, terms, &job, effort)
    })
}
