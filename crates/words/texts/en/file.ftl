## What is wrong inside a job file.

file-problem = { $place }: { $what }
file-problems-more = … and { $count } more
file-unreadable = it cannot be read
file-no-object = it holds no JSON object
file-no-format = it does not say "format": "{ $format }"
file-no-version = it does not say its version, like "version": { $version }
file-keeps = { $count ->
    [one] the file keeps { $count } piece that could not be read when it was opened before
   *[other] the file keeps { $count } pieces that could not be read when it was opened before
}
file-not-a = { $of ->
    [text] is not a text
    [list] is not a list
   *[object] is not an object
}
file-no-sheet = there is no such sheet; there are { $words }
file-too-many = { $of ->
    [bends] { $count } bends; there may be { $most }
   *[them] there are { $count } of them; there may be { $most }
}
file-sheet-full = a sheet has { $parts } parts and { $runs } runs at most
file-steps = has too many or too long steps
file-tag-twice = the tag `{ $tag }` stands twice on this sheet
file-no-tag = the tag is missing or not a text
file-called = { $why }; it is called { $tag } for now
file-end-nowhere = the run { $run } ends on { $part }, which is not on this sheet
file-end-no-terminal = the run { $run } ends on { $part }.{ $terminal }, and { $part } has no such terminal
file-picture-form = the bytes are not those of a { $form } picture

## What stands in the JSON, and what is taken there.

json-cut = it ends before it is complete
json-syntax = what stands here has no place in JSON
json-deep = it is nested deeper than { $most } levels
json-many = it holds more than { $most } values
json-key-twice = the key stands twice in one object; take one of the two out
json-missing = `{ $key }` is missing
json-not = expected { $wanted }, found { $found }
json-wanted = { $of ->
    [object] an object
    [empty] an empty object
    [string] a string
    [number] a number
    [whole] a whole number
    [byte] a whole number from 0 to 255
    [two-bytes] a whole number from 0 to 65535
    [truth] true or false
    [list] a list
    [change] a change
    [entry] an entry of the journal
    [end] {"{"}"on": {"{"}…{"}"}{"}"} or {"{"}"loose": {"{"}…{"}"}{"}"}
   *[kind] the kind of the part and its properties, {"{"}"fuse": {"{"}…{"}"}{"}"}
}
json-number = the number { $number }
json-string = the string "{ $text }"
json-both = both `{ $first }` and `{ $second }`
json-no-kind = there is no kind `{ $word }`; there are { $words }
json-no-change = there is no change `{ $word }`
json-no-entry = there is no entry `{ $word }`
json-no-base64 = it is not base64
json-beside-assumed = it has `{ $key }`, but only `assumed` may stand here
json-assumed-empty = an empty object; it should be {"{"}"assumed": …{"}"}
