//! The command with its texts in a language: what help, the manual page and the completions say of it.

use clap::builder::ArgAction;
use clap::{Arg, CommandFactory as _};
use lapwright::phrases::{Language, Phrases};

use crate::options::Command;

/// The command and every command of it, with texts.
pub(crate) fn command(language: Language) -> clap::Command {
    let phrases = Phrases::for_language(language);
    let say = |key: &str| phrases.phrase(key, &[]);
    let about = say("command-about");
    let worded = texts(Command::command(), phrases)
        .long_about(format!("{about}\n\n{}", say("command-more")))
        .subcommand_help_heading(say("command-commands"))
        .subcommand_value_name(say("command-word"))
        .mut_subcommands(|task| texts(task, phrases));
    // Built, each command knows its whole name and what it takes beside its own.
    let mut built = worded.clone();
    built.build();
    let of_task = |task: clap::Command| match built.find_subcommand(task.get_name()) {
        Some(whole) => layout(task, whole, phrases),
        None => task,
    };
    layout(worded.mut_subcommands(of_task), &built, phrases)
}

/// A right call of a command, as it is typed.
pub(crate) fn call(task: Option<&str>, phrases: &Phrases) -> String {
    match task {
        Some(task) => phrases.phrase(&format!("command-call-{task}"), &[]),
        None => phrases.phrase("command-call", &[]),
    }
}

/// The key of what a command does.
fn key_of(command: &clap::Command) -> String {
    match command.get_name() {
        "lapwright" => "command-about".to_owned(),
        name => format!("command-{name}"),
    }
}

fn texts(command: clap::Command, phrases: &Phrases) -> clap::Command {
    let name = command.get_name().to_owned();
    let about = phrases.phrase(&key_of(&command), &[]);
    // What every call takes stands behind what this one takes.
    let mut place = if name == "lapwright" { 100 } else { 0 };
    command.about(about).mut_args(|arg| {
        place += 1;
        let help = help(&arg, &name, phrases);
        let words: Vec<String> = words(&arg).iter().map(|word| phrases.phrase(&key_of_word(word), &[])).collect();
        let arg = arg.help(help).display_order(place);
        match words.is_empty() {
            true => arg,
            false => arg.value_names(words).hide_possible_values(true).hide_default_value(true),
        }
    })
}

/// The words that stand for the values of an argument; none for one without values.
fn words(arg: &Arg) -> &[clap::builder::Str] {
    match arg.get_action() {
        ArgAction::Set | ArgAction::Append => arg.get_value_names().unwrap_or_default(),
        _ => &[],
    }
}

/// The key of a word that stands for a value.
fn key_of_word(word: &str) -> String {
    format!("command-value-{}", word.to_lowercase().replace('=', "-"))
}

/// The key of what an argument is: its own text in this command, else the one that it has in all.
fn key_of_argument(command: &str, arg: &Arg, phrases: &Phrases) -> String {
    let id = arg.get_id().as_str().replace('_', "-");
    let own = format!("command-{command}-{id}");
    if phrases.has(&own) { own } else { format!("command-arg-{id}") }
}

/// What an argument is, what is allowed and what holds where it is left out.
fn help(arg: &Arg, command: &str, phrases: &Phrases) -> String {
    let mut help = phrases.phrase(&key_of_argument(command, arg, phrases), &[]);
    if words(arg).is_empty() {
        return help;
    }
    let joined = |words: Vec<String>| words.into_iter().filter(|word| !word.is_empty()).collect::<Vec<_>>().join(", ");
    let allowed = joined(arg.get_possible_values().iter().map(|value| value.get_name().to_owned()).collect());
    let default = joined(arg.get_default_values().iter().map(|value| value.to_string_lossy().into_owned()).collect());
    for (key, name, said) in [("command-allowed", "values", allowed), ("command-left-out", "value", default)] {
        if !said.is_empty() {
            help = format!("{help} {}", phrases.phrase(key, &[(name, said.into())]));
        }
    }
    help
}

/// The page of a command: how it is called, what it takes, and a right call. The library's own headings are English.
fn layout(command: clap::Command, whole: &clap::Command, phrases: &Phrases) -> clap::Command {
    let say = |key: &str| phrases.phrase(key, &[]);
    let header = *command.get_styles().get_header();
    let heading = |key: &str| format!("{header}{}:{header:#}", say(key));
    let usage = whole.clone().render_usage().to_string();
    let usage = usage.trim_start_matches("Usage:").trim_start();
    let usage = usage.replace("[OPTIONS]", &format!("[{}]", say("command-options-word")));
    let mut page = format!("{{about-with-newline}}\n{} {{usage}}", heading("command-usage"));
    for (there, key, part) in [
        (whole.has_subcommands(), "command-commands", "{subcommands}"),
        (whole.get_positionals().next().is_some(), "command-arguments", "{positionals}"),
        (true, "command-options", "{options}"),
    ] {
        if there {
            page = format!("{page}\n\n{}\n{part}", heading(key));
        }
    }
    let task = (command.get_name() != "lapwright").then(|| command.get_name());
    let example = format!("{}\n  lapwright {}", heading("command-for-example"), call(task, phrases));
    command.override_usage(usage).help_template(format!("{page}{{after-help}}\n")).after_help(example)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every command with every argument of its own.
    fn all() -> Vec<(String, Vec<Arg>)> {
        let command = Command::command();
        let of = |command: &clap::Command| {
            let name = command.get_name().to_owned();
            (name, command.get_arguments().cloned().collect::<Vec<_>>())
        };
        let mut all = vec![of(&command)];
        all.extend(command.get_subcommands().map(of));
        all
    }

    #[test]
    fn every_command_and_argument_has_a_text_of_its_own_in_both_languages() {
        let [english, spanish] = [Language::English, Language::Spanish].map(Phrases::for_language);
        let mut keys = Vec::new();
        for (name, arguments) in all() {
            keys.push(if name == "lapwright" { "command-about".to_owned() } else { format!("command-{name}") });
            for arg in arguments {
                keys.push(key_of_argument(&name, &arg, english));
                keys.extend(words(&arg).iter().map(|word| key_of_word(word)));
            }
        }
        assert!(keys.len() > 150, "{}", keys.len());
        for key in keys {
            assert!(english.has(&key), "no English text for {key}");
            assert!(spanish.has(&key), "no Spanish text for {key}");
            assert_ne!(english.phrase(&key, &[]), spanish.phrase(&key, &[]), "{key}");
        }
    }

    #[test]
    fn no_text_of_a_command_stands_for_nothing() {
        let text = include_str!("../../../core/src/phrases/en/command.ftl");
        let mut used: Vec<String> = Vec::new();
        for (name, arguments) in all() {
            used.extend([format!("command-{name}"), format!("command-call-{name}")]);
            for arg in arguments {
                let id = arg.get_id().as_str().replace('_', "-");
                used.extend([format!("command-{name}-{id}"), format!("command-arg-{id}")]);
                used.extend(words(&arg).iter().map(|word| key_of_word(word)));
            }
        }
        let sources = concat!(
            include_str!("help.rs"),
            include_str!("manual.rs"),
            include_str!("misuse.rs"),
            include_str!("fault.rs")
        );
        for key in text.lines().filter_map(|line| line.split_once(" = ")).map(|(key, _)| key) {
            let said = key.starts_with("command-") && sources.contains(&format!("\"{key}\""));
            let call = key.starts_with("command-call-");
            assert!(key.starts_with('#') || call || said || used.iter().any(|used| used == key), "{key}");
        }
    }

    /// The words of a line as a shell gives them to a program.
    fn typed(line: &str) -> Vec<String> {
        let mut words = vec![String::new()];
        let mut quoted = false;
        for sign in line.chars() {
            match sign {
                '"' => quoted = !quoted,
                ' ' if !quoted => words.push(String::new()),
                sign => words.last_mut().unwrap().push(sign),
            }
        }
        words
    }

    #[test]
    fn every_example_is_a_right_call_of_its_command() {
        let text = include_str!("../../../core/src/phrases/en/command.ftl");
        let calls = text.lines().filter_map(|line| line.strip_prefix("command-call-")?.split_once(" = "));
        let calls: Vec<&str> = calls.map(|(call, _)| call).collect();
        for (name, _) in all().iter().filter(|(name, _)| name != "lapwright") {
            assert!(calls.contains(&name.as_str()), "no example of {name}");
        }
        for language in Language::ALL {
            let phrases = Phrases::for_language(*language);
            for name in &calls {
                let line = call(Some(name), phrases);
                let words = typed(&line);
                assert!(words.first().is_some_and(|word| name.starts_with(word.as_str())), "{line}");
                let called =
                    Command::command().try_get_matches_from(std::iter::once("lapwright".to_owned()).chain(words));
                assert!(called.is_ok(), "{line}: {}", called.err().map(|error| error.to_string()).unwrap_or_default());
            }
        }
    }

    #[test]
    fn a_page_is_in_one_language() {
        let mut page = command(Language::Spanish);
        let root = page.render_long_help().to_string();
        page.build();
        let pages = page.get_subcommands().map(|task| task.clone().render_long_help().to_string());
        let english = ["Usage", "Options", "Commands", "Arguments", "Print", "[default", "possible", "FILE", "HOUSE"];
        for page in std::iter::once(root).chain(pages) {
            assert!(page.contains("Uso: lapwright") && page.contains("Ejemplo:\n  lapwright"), "{page}");
            for word in english {
                assert!(!page.contains(word), "{word}: {page}");
            }
        }
    }
}
