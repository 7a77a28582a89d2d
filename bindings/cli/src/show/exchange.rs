use lapwright::views::View;

use crate::paper::Paper;

/// The screens of copies and colleagues' files: sentences under a title.
pub(super) fn show(paper: &mut Paper, view: &View) {
    let (title, lines) = match view {
        View::BackupsKind { view } => {
            let copies = view.copies.iter().map(|copy| format!("{}  {}  {}", copy.said, copy.size, copy.copy));
            let lines = [view.done.clone(), view.notes.clone(), vec![view.copied.clone()], copies.collect()].concat();
            ("screen-backups", lines)
        }
        View::RestoreKind { view } => ("screen-restore", [vec![view.name.clone()], view.lines.clone()].concat()),
        View::HandOverKind { view } => (
            "screen-hand-over",
            [view.done.clone(), vec![view.name.clone(), view.said.clone(), view.copied.clone()]].concat(),
        ),
        View::TakeInKind { view } => {
            let senders = view.senders.iter().map(|sender| sender.said.clone()).collect();
            ("screen-take-in", [view.refused.clone(), view.lines.clone(), senders, vec![view.ahead.clone()]].concat())
        }
        View::DifferencesKind { view } => {
            let told = |line: &lapwright::views::DifferenceLine| {
                format!("{}\n    {}\n    {}", line.title, line.stands, line.other)
            };
            ("screen-differences", [view.done.clone(), view.differences.iter().map(told).collect()].concat())
        }
        _ => return,
    };
    let title = paper.phrase(title, &[]);
    paper.title(&title);
    for line in lines.iter().filter(|line| !line.is_empty()) {
        paper.line(line);
    }
}
