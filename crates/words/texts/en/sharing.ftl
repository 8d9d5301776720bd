### Links, page files, addresses: why they do not work.

## The address that links start with.

address-no-host = An address starts with https:// and the name of a host, as in https://wiring.example/board/
address-character = An address cannot have the character { $character }
address-fragment = An address for links has no #: the drawing comes behind it
address-long = An address for links has at most { $most } characters

## Page files.

page-no-template = This is not the page that drawings are put into: it has no empty place for one. It stands beside the program's index.html and is called page.html.
page-no-job = There is no drawing in this page. Ask for it again.
page-damaged = The drawing in this page was cut short or changed on its way, so it was not opened. Ask for the file again.
page-packed = it is packed in version { $version }
page-not-understood = This page holds a drawing that the program in it does not understand: { $why }. Ask for the page to be made anew.

## Links.

link-far-too-long = { $what ->
    [job] this job is far too large for a link. Send it as a page file instead
   *[lesson] this lesson is far too large for a link. Send it as a file instead
}
link-too-long = { $what ->
    [job] as a link this job would have { $characters } characters; mail programs cut what is over { $most }. Send it as a page file instead
   *[lesson] as a link this lesson would have { $characters } characters; mail programs cut what is over { $most }. Send it as a file instead
}
link-no-job = There is no drawing in this link: behind its # should stand { $key } and a long row of letters and digits. Ask for the whole link.
link-no-lesson = There is no lesson in this link: behind its # should stand { $key } and a long row of letters and digits. Ask for the whole link.
link-is-lesson = This link carries a lesson, not a drawing.
link-is-job = This link carries a drawing, not a lesson.
link-longer = This link is longer than any that is made here, so it was not opened. Ask whoever sent it for the page file.
link-damaged = This link was cut short or changed on its way, so it was not opened. Ask for it again, best as a page file or a code to scan.
link-newer = This link was made by a newer version of the program (link version { $version }, this one reads up to { $reads }). Reload the page to get the newest version.
link-not-understood = This link holds something that this version does not understand: { $why }. Reload the page to get the newest version.
