import Foundation

/// A JSON value whose numbers are decimal, so that nothing is lost on the way in and out.
enum Json: Codable, Equatable {
    case null
    case flag(Bool)
    case number(Decimal)
    case text(String)
    case list([Json])
    case object([String: Json])

    init(from decoder: any Decoder) throws {
        let container = try decoder.singleValueContainer()
        if container.decodeNil() {
            self = .null
        } else if let value = try? container.decode(Bool.self) {
            self = .flag(value)
        } else if let value = try? container.decode(Decimal.self) {
            self = .number(value)
        } else if let value = try? container.decode(String.self) {
            self = .text(value)
        } else if let value = try? container.decode([Json].self) {
            self = .list(value)
        } else {
            self = .object(try container.decode([String: Json].self))
        }
    }

    func encode(to encoder: any Encoder) throws {
        var container = encoder.singleValueContainer()
        switch self {
        case .null: try container.encodeNil()
        case .flag(let value): try container.encode(value)
        case .number(let value): try container.encode(value)
        case .text(let value): try container.encode(value)
        case .list(let value): try container.encode(value)
        case .object(let value): try container.encode(value)
        }
    }

    init(reading text: String) throws {
        self = try JSONDecoder().decode(Json.self, from: Data(text.utf8))
    }

    func written() throws -> String {
        String(decoding: try JSONEncoder().encode(self), as: UTF8.self)
    }

    /// The field of an object; nil where there is none or this is no object.
    subscript(field: String) -> Json? {
        if case .object(let fields) = self { fields[field] } else { nil }
    }

    var string: String? {
        if case .text(let value) = self { value } else { nil }
    }

    var array: [Json]? {
        if case .list(let value) = self { value } else { nil }
    }

    /// The value with its fractions to ten places: angles and areas are floats, whose last digit depends on the
    /// reader.
    func rounded() -> Json {
        switch self {
        case .number(var value):
            var result = Decimal()
            NSDecimalRound(&result, &value, 10, .plain)
            return .number(result)
        case .list(let items): return .list(items.map { $0.rounded() })
        case .object(let fields): return .object(fields.mapValues { $0.rounded() })
        case .null, .flag, .text: return self
        }
    }

    /// The object without one of its fields.
    func without(_ field: String) -> Json {
        guard case .object(let fields) = self else { return self }
        return .object(fields.filter { $0.key != field })
    }

    /// The object with only these fields.
    func only(_ names: [String]) -> Json {
        guard case .object(let fields) = self else { return self }
        return .object(fields.filter { names.contains($0.key) })
    }
}
