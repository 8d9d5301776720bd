## What is wrong with a text that should be a job, and what would do.

text-error = line { $line }, column { $column }: { $what }
text-meant = did you mean `{ $meant }`?

## Quotes.

text-quote-joined = something follows a closing quote at once
text-quote-joined-help = put a space between them, or write a quote inside a text as \"
text-quote-inside = a quote in the middle of a word
text-quote-inside-help = a text in quotes stands alone or right after `=`
text-quote-open = a quote that is not closed on this line
text-quote-open-help = close it with "; a line break inside a text is written \n
text-escape-unknown = an unknown escape
text-escape-unknown-help = there are \" \\ \n \r \t; a lone backslash is written \\

## Lines.

text-too-long = the text is longer than { $most } bytes
text-too-long-help = split it into several jobs
text-begins-nothing = this cannot begin a line
text-line-words = a line begins with { $words } or the word of a kind
text-no-such-word = there is no kind of part or line `{ $word }`
text-kinds = the kinds are { $words }
text-line-twice = `{ $word }` stands a second time
text-join-lines = join the two lines
text-title = `job` takes the title, and nothing else
text-title-help = write job "Title"
text-title-long = the title { $why }
text-limit = `limit` takes a name and a number
text-limit-help = write limit NAME 3.5
text-limit-twice = the limit `{ $key }` is set a second time
text-limit-number = `{ $text }` is not a number
text-limit-number-help = a limit is a bare number, in the unit of that limit
text-allow = `allow` takes the names of checks that are not to be run
text-allow-name = this is not the name of a check
text-sheet = `sheet` takes one of { $words }
text-no-sheet = there is no sheet `{ $word }`
text-sheets = the sheets are { $words }
text-name-missing = the name of { $whose } is missing
text-name-missing-help = write one like shelf-left after the word
text-name-twice = { $whose } `{ $name }` stands a second time
text-step-word = a step of a checklist is one word
text-step-word-help = put it in double quotes
text-step-long = the step { $why }
text-full = { $what ->
    [limits] more than { $most } limits
    [checks] more than { $most } checks
    [own-places] the job tells of more than { $most } of them
    [steps] more than { $most } steps
    [readings] more than { $most } readings
    [tunings] more than { $most } lines of settings
    [complaints] more than { $most } complaints
    [intake] more than { $most } lines of the condition record
    [offers] more than { $most } lines of the quote
    [parts] more than { $most } parts on one sheet
    [runs] more than { $most } runs on one sheet
   *[bends] more than { $most } bends
}

## Whose properties a line gives.

text-whose-part = a part of kind { $kind }
text-whose = { $of ->
    [run] a run
    [title-block] the title block
    [conditions] the list of conditions
    [body] the body
    [place] a place
    [passage] a passage
    [reading] a reading
    [tuning] a line of settings
    [complaint] a complaint
    [intake] a line of the condition record
    [offer] a line of the quote
   *[rates] the list of rates
}

## Properties and their values.

text-no-property = { $whose } has no `{ $key }`
text-there-are = there are { $words }
text-key-twice = `{ $key }` is set a second time in this line
text-key-twice-help = leave one of them out; a text alone is the label
text-leave-one = leave one of them out
text-unnamed = a text without a name
text-unnamed-help = write name="text"
text-value = { $key }: { $why }
text-choices = { $words }
text-choice = { $word } ({ $title })
text-range = it takes { $least } to { $most }
text-count = it takes a whole number from { $least } to { $most }
text-yes-no = write yes or no
text-like = write it as { $example }
text-of-what = `{ $text }` does not say what it is a value of
text-with-name = write it with its name: { $words }
text-set-already = { $key } is set already in this line
text-set-already-help = `{ $text }` would be a second value for it
text-not-assumed = { $key } cannot be assumed
text-not-assumed-help = write { $text } without the ~
text-no-value = { $whose } takes no value `{ $text }`
text-write-key = write { $key }=…
text-colours = colours are written { $colour }
text-no-properties = it has no properties
text-has = it has { $words }
text-text-long = the text { $why }
text-no-fitter = `{ $text }` is nobody who fits things
text-no-fitter-help = it takes maker, earlier or us
text-no-turn = `{ $text }` is not a turn
text-no-turn-help = it takes 0, 90, 180 or 270, clockwise
text-no-point = `{ $text }` is not a point of the board
text-no-point-help = write two whole numbers like 200,80: right, then down
text-channels = these look like channels, not like a label
text-channels-help = write the channels as sections="4x 75W@4ohm"; a text alone is the label

## Tags and ends.

text-tag-first = the tag stands first: C1
text-tag-missing = the tag is missing
text-tag-like = write one like { $example } after the word
text-tag-taken = the tag `{ $tag }` stands on this sheet already
text-tag-taken-help = each part and each run has a tag of its own
text-id-taken = the id { $id } belongs to `{ $tag }` already
text-id-taken-help = leave `id=` out, or take one that is free
text-two-ends = a run has two ends
text-two-ends-help = write run W1 B1.+ F1.in; an end that is nowhere is loose@100,50
text-no-end = `{ $text }` is not an end of a run
text-end-form = write TAG.terminal like F1.in, or loose@100,50
text-end-terminals = write { $tag } and one of its terminals: { $words }
text-terminal-long = a terminal's name has at most { $most } bytes
text-no-terminal = the { $word } `{ $tag }` has no terminal `{ $terminal }`
text-meant-has = did you mean `{ $meant }`? it has { $words }
text-is-run = `{ $tag }` is a run, not a part
text-is-run-help = runs end on terminals of parts; to branch off a run, put a splice in it
text-no-part = there is no part `{ $tag }` on this sheet
text-no-parts = there are no parts on this sheet
text-parts-are = the parts on this sheet are { $words }
