//! Order: what to buy.

mod share;

use crate::amounts::{AmountError, Item, Wording, amounts};
use crate::book::Book;
use crate::handover::take_into_new;
use crate::phrases::key;
use crate::views::{Code, Context, Note, OrderLine, OrderView, PoleAction, Problem};
use crate::work::{StockCount, Work, materials};

use super::planning::refused;
use super::pole;
use crate::forms::context::Terms;
use crate::forms::context::in_language;
use crate::forms::error::{FormError, Result};
use crate::forms::lookup;

pub(super) fn view(book: &Book, terms: &Terms<'_>, job: &str) -> Result<OrderView> {
    let work = lookup::house(book, terms, job)?;
    let stock = work.stock();
    let items = count(terms, &work, ORDER_EFFORT)?;
    let lines: Vec<OrderLine> = items.iter().map(|item| line(terms, item, &stock)).collect();
    let json = items.iter().map(|item| item.json(terms.phrases, terms.show)).collect();
    let note = Note::know("who-wins", terms.phrase(key("order-check"), &[]));
    Ok(OrderView {
        job: lookup::job_id(&work),
        name: work.name().to_owned(),
        notes: vec![note],
        text: share::text(work.name(), &lines),
        csv: share::csv(terms, &lines),
        json: share::json(work.name(), &lines, json),
        lines,
    })
}

fn line(terms: &Terms<'_>, item: &Item, stock: &[StockCount]) -> OrderLine {
    let amount = |amount| item.text(amount, terms.show, terms.language);
    let words = |words: &Wording| words.text(terms.phrases, terms.show);
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
fn count(terms: &Terms<'_>, work: &Work, effort: u64) -> Result<Vec<Item>> {
    let house = materials(work, terms.division, effort).map_err(|error| refused(terms, "job", error))?;
    amounts(&house).map_err(|error| not_counted(terms, error))
}

fn not_counted(terms: &Terms<'_>, error: AmountError) -> FormError {
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
    in_language(context, |terms| {
        let mut book = Book::in_memory()?;
        let job = take_into_new(&mut book, terms, text)?;
        let mut work = lookup::work(&book, Some(job))?;
        // A document whose pole was never laid out is counted by the lines that its own marks ask for.
        if work.lines().is_none() {
            pole::act(&mut book, terms, &PoleAction::LayOut { job: job.to_string() })?;
            work = lookup::work(&book, Some(job))?;
        }
        count(terms, &work, effort)
    })
}
