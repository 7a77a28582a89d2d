use lapwright::views::RulesView;

use crate::paper::{Ink, Paper};

pub(super) fn show(paper: &mut Paper, view: &RulesView) {
    let title = paper.phrase("screen-rules", &[]);
    paper.title(&format!("{title}: {}", view.family));
    paper.block(&view.who_wins);
    for rule in &view.rules {
        let key = paper.set(Ink::Faint, &format!("({})", rule.key));
        paper.line(&format!("  {}  {}  {key}", rule.name, paper.set(Ink::Strong, &rule.value)));
        let from = [rule.source.as_str(), rule.edition.as_str(), rule.status.as_str()];
        let from: Vec<&str> = from.into_iter().filter(|text| !text.is_empty()).collect();
        paper.line(&format!("      {}", from.join(", ")));
        if let Some(changed) = &rule.changed {
            let args = [
                ("default", rule.default.as_str().into()),
                ("signer", changed.signer.as_str().into()),
                ("reason", changed.reason.as_str().into()),
            ];
            let text = paper.phrase("cli-rule-changed", &args);
            let set = paper.set(Ink::Warning, &format!("▲ {text}"));
            paper.line(&format!("      {set}"));
        }
    }
}
