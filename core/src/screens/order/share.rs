use serde_json::json;

use crate::phrases::key;
use crate::screens::context::Terms;
use crate::views::OrderLine;

/// The list as a person would write it into a message.
pub(super) fn text(name: &str, lines: &[OrderLine]) -> String {
    let mut text = format!("{name}\n\n");
    for line in lines.iter().filter(|line| line.buy > 0) {
        text.push_str(&format!("{} × {}: {}\n", line.buy, line.pack, line.name));
    }
    text
}

/// The list as comma-separated values (RFC 4180), with a heading.
pub(super) fn csv(terms: &Terms<'_>, lines: &[OrderLine]) -> String {
    let heading = [
        key("order-name"),
        key("order-net"),
        key("order-waste"),
        key("order-amount"),
        key("order-packs"),
        key("order-pack"),
        key("order-have"),
        key("order-buy"),
        key("order-from"),
    ];
    let mut text = row(heading.map(|key| terms.phrase(key, &[])));
    for line in lines {
        text.push_str(&row([
            line.name.clone(),
            line.net.clone(),
            line.waste.clone(),
            line.amount.clone(),
            line.packs.to_string(),
            line.pack.clone(),
            line.have.map(|have| have.to_string()).unwrap_or_default(),
            line.buy.to_string(),
            line.from.clone(),
        ]));
    }
    text
}

fn row<const N: usize>(cells: [String; N]) -> String {
    let cells = cells.map(|cell| {
        // A spreadsheet would take a cell that starts so for a formula.
        let cell = if cell.starts_with(['=', '+', '-', '@']) { format!("'{cell}") } else { cell };
        if cell.contains([',', '"', '\n', '\r']) { format!("\"{}\"", cell.replace('"', "\"\"")) } else { cell }
    });
    format!("{}\r\n", cells.join(","))
}

/// The list as JSON, with the fields of `lapwright figure amounts`.
pub(super) fn json(name: &str, lines: &[OrderLine], items: Vec<serde_json::Value>) -> String {
    let mut items = items;
    for (item, line) in items.iter_mut().zip(lines) {
        if let Some(item) = item.as_object_mut() {
            item.insert("buy".to_owned(), line.buy.into());
            if let Some(have) = line.have {
                item.insert("have".to_owned(), have.into());
            }
        }
    }
    let mut text = serde_json::to_string_pretty(&json!({ "name": name, "items": items })).unwrap_or_default();
    text.push('\n');
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cell_with_a_comma_or_an_inch_sign_is_quoted() {
        let cells = ["Boards".to_owned(), "1/8\", open".to_owned(), "=1+1".to_owned()];
        assert_eq!(row(cells), "Boards,\"1/8\"\", open\",'=1+1\r\n");
    }
}
