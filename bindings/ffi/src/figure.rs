/// The answer to one question: a JSON object in, a JSON object out, the same as the command's.
///
/// What is wrong with a request is in the answer, as `{"error": {"code", "field", "text"}}`.
#[uniffi::export]
pub fn figure(question: &str, request: &str) -> String {
    lapwright::figure::answer(question, request).json
}
