## Mending everything, and what a mend would do.

mend-all-edit = { $count ->
    [one] Make { $count } mend
   *[other] Make { $count } mends
}
