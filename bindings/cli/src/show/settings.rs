use lapwright::views::SettingsView;

use crate::paper::{Ink, Paper};

pub(super) fn show(paper: &mut Paper, view: &SettingsView) {
    let title = paper.phrase("screen-settings", &[]);
    paper.title(&title);
    for signer in &view.signers {
        let mark = if signer.current { paper.set(Ink::Chalk, "→") } else { " ".to_owned() };
        paper.line(&format!("  {mark} {}", signer.name));
    }
    paper.questions(&view.settings);
}
