use crate::forms::context::Terms;
use crate::forms::error::FormError;
use crate::phrases::key;
use crate::views::{Code, Problem};
use crate::work::PlanError;

/// Why boards cannot be planned, in words; `whole` names the wall or the house that they are of.
pub(in crate::screens) fn refused(terms: &Terms<'_>, whole: &str, error: PlanError) -> FormError {
    let problem = match error {
        PlanError::Work(error) => return error.into(),
        PlanError::NothingLeft => Problem::new(Code::First, whole, terms.phrase(key("wall-nothing-to-plan"), &[])),
        PlanError::NoJoints { course } => {
            let args = [("course", i64::from(course).into())];
            Problem::new(Code::Infeasible, "studs", terms.phrase(key("wall-no-joints"), &args))
        }
        PlanError::NotEnough => Problem::new(Code::Infeasible, "stock", terms.phrase(key("saw-not-enough"), &[])),
        error @ (PlanError::Pieces(_) | PlanError::Saw(_)) => {
            let args = [("why", error.to_string().into())];
            Problem::new(Code::Range, "stock", terms.phrase(key("wall-plan-trouble"), &args))
        }
    };
    problem.into()
}
