# The job document.
document-too-big = The document is over 64 MB.
document-house-too-big = The house has more things in it than a document takes: { $limit } walls, boards, notches and so on, or 64 MB. Hand it over as a file for a colleague instead.
document-too-many = The document has more than { $limit } things in it: walls, boards, notches and so on.
document-not-json = The document is not JSON, or ends too early: line { $line }, character { $column }.
document-not-ours = This is not a job document: it must be one JSON object with "lapwright": 1.
document-house-here = This house is in the book already: “{ $name }”. To have it a second time, take the line "house" out of the document.
document-object = An object in braces belongs here.
document-list = A list in brackets belongs here.
document-text = A text in quotes belongs here.
document-length = A length with its unit belongs here, such as "12 ft" or "154 mm".
document-lines-order = The lines must rise, each above the one before.
document-twice = “{ $name }” stands twice.
document-unknown = No such name belongs here. These do: { $names }.
document-lines-threes = Lines above a course that hangs come in threes: left, middle, right.
