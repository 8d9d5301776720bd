## What every sentence may need.

list-and = and
list-nothing = nothing
as-it-stands = { $text }
list-more = { $shown } and { $more } more

## Shown only in the documentation of this crate.

sample-reach = { $fuse } sits { $far } of wire away. Nothing guards { $runs }.

## How many things.

things-parts = { $count ->
    [one] { $count } part
   *[other] { $count } parts
}
things-runs = { $count ->
    [one] { $count } run
   *[other] { $count } runs
}
things-both = { $parts } and { $runs }
