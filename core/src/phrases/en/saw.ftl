# saw: every key starts with saw-.
saw-help = The joints of long runs and the cuts of all pieces, planned as one: the least cost, and a bound under which no plan can come. Where stagger forces more joints, as few runs as possible take one more than they may have. A piece's length, rounded down, is what must fit a board and reach piece_min. Runs that only touch need no stagger. Costs are taken to the nearest billionth, at most a million a board. One step of effort is a million small operations, a few thousandths of a second.
saw-too-many-pieces = These runs make more than 10,000 pieces. Plan fewer of them at a time, or use longer boards.
saw-run-short = This run is not longer than its two end gaps. Make it longer, or the end gap smaller.
saw-no-board = There is no board to cut from. Give new boards or offcuts.
saw-too-long = This run is longer than every board, and joints are not allowed. Give a longer board, or allow joints.
saw-no-stud = { $run } is longer than every board, and there is no stud inside it where a joint may lie. Give the studs, or a longer board.
saw-no-joints = This run cannot be pieced: between its studs, the stretches to avoid and the least piece no joints are left. Give a longer board, or a smaller piece_min.
saw-no-stagger = The joints of { $run } and its neighbors cannot keep this stagger, even with one joint more in each. Give a smaller stagger, or allow extra_joints.
saw-not-enough = The boards do not suffice for all pieces. Give more of them.
saw-plan-proved = { $boards ->
    [one] { $boards } board, { $used }: no plan takes less.
   *[other] { $boards } boards, { $used }: no plan takes less.
}
saw-plan-open = { $boards ->
    [one] { $boards } board, { $used }. No plan takes less than { $least }.
   *[other] { $boards } boards, { $used }. No plan takes less than { $least }.
}
saw-plan-stale = The book has changed since this plan was begun. Plan again, then accept it.
saw-not-planned = No saw list yet.
saw-progress = { $cut } of { $all } boards cut
saw-rest = Left over { $rest }
saw-rest-keep = Left over { $rest }: keep { $kept }
saw-spoiled = Spoiled: { $spoiled }
saw-piece-goes = { $wall }, course { $course }, { $from } from the left corner
saw-piece-strip = { $goes }; out of the strip that is ripped off
saw-cuts-strips = { $cuts }; out of the strip: { $strips }
saw-stock-open = { $length }: { $used } to cut
saw-stock = { $length }: { $used } of { $have } used
saw-stock-short = { $length }: { $used } needed, { $have } there: buy { $short }
saw-unlisted = { $count ->
    [one] 1 board is planned that is not on this list. Plan the list again.
   *[other] { $count } boards are planned that are not on this list. Plan the list again.
}
saw-no-better = No better plan was found. The list stays as it is.
saw-already-cut = This board is cut already.
saw-strips-keep = Strips ripped off: keep { $kept }
saw-low = { $length } by { $height } high
saw-offcut-gone = This offcut is cut up already.
saw-against-boards = { $boards ->
    [one] { $boards } board. No plan takes fewer than { $least }.
   *[other] { $boards } boards. No plan takes fewer than { $least }.
}
saw-boards-cut = { $cut } cut
saw-ticket = { $house }: board { $number }, { $length }
saw-piece-notched = notched
