## Alles beheben, und was eine Behebung bewirken würde.

mend-all-edit = { $count ->
    [one] { $count } Behebung vornehmen
   *[other] { $count } Behebungen vornehmen
}
