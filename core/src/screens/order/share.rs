use serde_json::json;

use crate::forms::context::Terms;
use crate::phrases::key;
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
    let mut table = Table::new();
    table.row(heading.map(|key| terms.phrase(key, &[])));
    for line in lines {
        table.row([
            line.name.clone(),
            line.net.clone(),
            line.waste.clone(),
            line.amount.clone(),
            line.packs.to_string(),
            line.pack.clone(),
            line.have.map(|have| have.to_string()).unwrap_or_default(),
            line.buy.to_string(),
            line.from.clone(),
        ]);
    }
    table.into_text()
}

/// Rows of cells, safe to open in a spreadsheet.
struct Table(csv::Writer<Vec<u8>>);

impl Table {
    fn new() -> Self {
        Self(csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new()))
    }

    fn row(&mut self, cells: [String; 9]) {
        // Rows of one length into memory: nothing that can fail.
        let _ = self.0.write_record(cells.map(text_only));
    }

    fn into_text(self) -> String {
        self.0.into_inner().ok().and_then(|bytes| String::from_utf8(bytes).ok()).unwrap_or_default()
    }
}

/// A spreadsheet would take a cell that starts with one of these for a formula (OWASP, CSV Injection); behind an
/// apostrophe it is a text.
fn text_only(cell: String) -> String {
    if cell.starts_with(['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠']) {
        format!("'{cell}")
    } else {
        cell
    }
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

    /// Field quoting by RFC 4180, 2, items 5 to 7.
    #[test]
    fn a_cell_with_a_comma_or_an_inch_sign_is_quoted() {
        let mut table = Table::new();
        let cells = ["Boards", "1/8\", open", "7 1/4\"", "two\nlines", "", "=1+1", "\t=1+1", "-3", "3 - 1"];
        table.row(cells.map(str::to_owned));
        let row = "Boards,\"1/8\"\", open\",\"7 1/4\"\"\",\"two\nlines\",,'=1+1,'\t=1+1,'-3,3 - 1\r\n";
        assert_eq!(table.into_text(), row);
    }
}
