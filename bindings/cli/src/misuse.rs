//! A call that cannot be read: what is wrong with it, what is allowed, and a right call of the same command.

use std::ffi::OsString;

use clap::CommandFactory as _;
use clap::error::{ContextKind, ContextValue, Error, ErrorKind};
use lapwright::phrases::{Arg, Phrases, nearest};

use crate::fault::Fault;
use crate::help;
use crate::locale;
use crate::options::{BadValue, Command};

/// The options of every call that have a value behind them.
const WITH_VALUE: [&str; 5] = ["--book", "--language", "--show", "--division", "--signer"];

/// The words of a call that are no options of every call, from its command on.
pub(crate) fn words(args: &[OsString]) -> Vec<String> {
    let mut words = Vec::new();
    let mut args = args.iter().skip(1).map(|arg| arg.to_string_lossy().into_owned());
    while let Some(arg) = args.next() {
        if WITH_VALUE.contains(&arg.as_str()) {
            args.next();
        } else if !arg.starts_with('-') {
            words.push(arg);
        }
    }
    words
}

/// The command of a call, where there is such a command.
pub(crate) fn task(args: &[OsString]) -> Option<String> {
    let name = words(args).into_iter().next()?;
    Command::command().find_subcommand(&name).map(|task| task.get_name().to_owned())
}

/// The right call that is nearest to a call: that of its command, and where there is one, that with the same word in it.
pub(crate) fn example(args: &[OsString]) -> Option<String> {
    let task = task(args)?;
    let phrases = Phrases::for_language(locale::chosen());
    let mut with = args.iter().filter_map(|arg| arg.to_str()).map(|arg| {
        let word = arg.trim_start_matches('-').split('=').next().unwrap_or_default();
        format!("{task}-{word}")
    });
    let command = Command::command();
    let is_one =
        |call: &String| phrases.has(&format!("command-call-{call}")) && command.find_subcommand(call).is_none();
    let with: Option<String> = with.find(is_one);
    Some(with.unwrap_or(task))
}

/// A field that is answered twice in a call.
pub(crate) fn answered_twice(matches: &clap::ArgMatches) -> Option<Fault> {
    let (task, matches) = matches.subcommand()?;
    let given = matches.try_get_many::<(String, String)>("given").ok()??;
    let given: Vec<&(String, String)> = given.collect();
    let times = |field: &str| given.iter().filter(|(own, _)| own == field).count();
    let (field, _) = given.iter().find(|(field, _)| times(field) > 1)?;
    let answers = given.iter().filter(|(own, _)| own == field).map(|(_, answer)| answer.as_str());
    Some(Fault::twice(field, &answers.collect::<Vec<_>>()).with_call(task))
}

/// What is wrong with a call, in words.
pub(crate) fn fault(error: &Error, args: &[OsString]) -> Fault {
    let (task, example) = (task(args), example(args));
    Misuse { example: example.as_deref(), ..Misuse::of(task.as_deref()) }.of_error(error)
}

/// Words a fault of a call of one command.
struct Misuse<'a> {
    phrases: &'static Phrases,
    task: Option<&'a str>,
    /// The call that stands for what is right.
    example: Option<&'a str>,
}

impl<'a> Misuse<'a> {
    fn of(task: Option<&'a str>) -> Self {
        Self { phrases: Phrases::for_language(locale::chosen()), task, example: task }
    }

    /// A fault with an example behind it.
    fn fault(&self, code: &str, field: &str, key: &str, args: &[(&str, Arg<'_>)]) -> Fault {
        Fault::new(code, field, self.with_example(self.phrases.phrase(key, args), self.example))
    }

    fn with_example(&self, text: String, task: Option<&str>) -> String {
        let call = help::call(task, self.phrases);
        format!("{text}\n{}", self.phrases.phrase("command-error-example", &[("call", call.into())]))
    }

    fn of_error(&self, error: &Error) -> Fault {
        let argument = said(error, ContextKind::InvalidArg);
        let value = said(error, ContextKind::InvalidValue);
        let field = self.field(&argument);
        let fault = |code, key, args: &[(&str, Arg<'_>)]| self.fault(code, &field, key, args);
        let both = [("argument", Arg::from(&argument)), ("text", Arg::from(&value))];
        match error.kind() {
            ErrorKind::InvalidSubcommand => self.no_command(&said(error, ContextKind::InvalidSubcommand)),
            ErrorKind::UnknownArgument => self.too_much(&argument),
            ErrorKind::MissingRequiredArgument => {
                let missing = argument.trim_end_matches("...");
                self.fault("missing", &field, "command-error-missing", &[("missing", missing.into())])
            }
            ErrorKind::InvalidValue if value.is_empty() => fault("missing", "command-error-no-value", &both),
            ErrorKind::InvalidValue => {
                let (near, known) = nearest(&value, strings(error, ContextKind::ValidValue));
                let [argument, text] = both;
                let fault =
                    fault("choice", "command-error-value", &[argument, text, ("known", known.join(", ").into())]);
                self.near(fault, near.as_deref())
            }
            ErrorKind::ValueValidation => {
                let [argument, text] = both;
                match std::error::Error::source(error).and_then(|why| why.downcast_ref::<BadValue>()) {
                    Some(BadValue::Whole { least, most }) => {
                        let bounds = [("least", (*least).into()), ("most", (*most).into())];
                        fault("range", "command-error-whole", &[[argument, text].as_slice(), &bounds].concat())
                    }
                    Some(BadValue::Pair) if field == "have" => {
                        fault("length", "command-error-stock", &[argument, text])
                    }
                    Some(BadValue::Pair) => fault("unknown", "command-error-pair", &[argument, text]),
                    None => fault("range", "command-error-other", &[]),
                }
            }
            ErrorKind::TooManyValues => fault("unknown", "command-error-no-value-allowed", &both),
            ErrorKind::TooFewValues | ErrorKind::WrongNumberOfValues | ErrorKind::NoEquals => {
                fault("missing", "command-error-no-value", &both)
            }
            ErrorKind::ArgumentConflict => {
                let other = said(error, ContextKind::PriorArg);
                if other == argument || other.is_empty() {
                    return fault("twice", "command-error-option-twice", &both);
                }
                let [argument, _] = both;
                fault("order", "command-error-together", &[argument, ("other", other.into())])
            }
            ErrorKind::InvalidUtf8 => fault("unknown", "command-error-not-text", &[]),
            _ => fault("other", "command-error-other", &[]),
        }
    }

    fn no_command(&self, text: &str) -> Fault {
        let names = Command::command().get_subcommands().map(|task| task.get_name().to_owned()).collect();
        let (near, _) = nearest(text, names);
        let said = self.phrases.phrase("command-error-command", &[("text", text.into())]);
        let said = self.with_near(said, near.as_deref());
        Fault::new("unknown", "", self.with_example(said, near.as_deref()))
    }

    /// An option that is none, or a word behind the last one that is read.
    fn too_much(&self, text: &str) -> Fault {
        if !text.starts_with('-') {
            return self.fault("unknown", "", "command-error-extra", &[("text", text.into())]);
        }
        let mut command = Command::command();
        command.build();
        let command = self.task.and_then(|task| command.find_subcommand(task)).unwrap_or(&command);
        let known = command.get_arguments().filter_map(|arg| arg.get_long()).map(|long| format!("--{long}")).collect();
        let (near, known) = nearest(text, known);
        let args = [("text", text.into()), ("known", known.join(", ").into())];
        let said = self.with_near(self.phrases.phrase("command-error-option", &args), near.as_deref());
        Fault::new("unknown", "", self.with_example(said, self.example))
    }

    fn with_near(&self, said: String, near: Option<&str>) -> String {
        match near {
            Some(near) => format!("{said} {}", self.phrases.phrase("command-error-near", &[("near", near.into())])),
            None => said,
        }
    }

    fn near(&self, fault: Fault, near: Option<&str>) -> Fault {
        let Some(near) = near else { return fault };
        let near = self.phrases.phrase("command-error-near", &[("near", near.into())]);
        fault.with_line(&near)
    }

    /// The name of the argument that is shown like this.
    fn field(&self, shown: &str) -> String {
        let mut command = help::command(self.phrases.language());
        command.build();
        let command = self.task.and_then(|task| command.find_subcommand(task)).unwrap_or(&command);
        let found = command.get_arguments().find(|arg| arg.to_string() == shown);
        // What is given is FIELD=ANSWER: the field itself is what is wrong, and it is in the text.
        found.map(|arg| arg.get_id().as_str()).filter(|id| *id != "given").unwrap_or_default().replace('_', "-")
    }
}

fn said(error: &Error, kind: ContextKind) -> String {
    error.get(kind).map(ToString::to_string).unwrap_or_default()
}

fn strings(error: &Error, kind: ContextKind) -> Vec<String> {
    match error.get(kind) {
        Some(ContextValue::Strings(strings)) => strings.clone(),
        _ => Vec::new(),
    }
}
