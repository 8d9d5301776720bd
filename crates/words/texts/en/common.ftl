## What every sentence may need.

list-and = and
list-nothing = nothing
as-it-stands = { $text }
list-more = { $shown } and { $more } more

## Shown only in the documentation of this crate.

sample-reach = { $fuse } sits { $far } of wire away. Nothing guards { $runs }.
