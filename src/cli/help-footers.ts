/** What stands below the options in the help of `new`. */
export const newFooter = `
Examples:
  baybook new workspace                                  asks what it needs to know
  baybook new platform larkspur-dray --title "Larkspur Dray" --option "fog=Front fog lamps"
  baybook new guide lamp-cradle --title "Lamp cradle" --platform larkspur-dray --kit Cradle --kit "M8 nut x4"
  baybook new guide wicket-cradle --title "Lamp cradle" --from lamp-cradle --platform sorrel-wicket`;

/** What stands below the options in the help of `adopt`. */
export const adoptFooter = `
Steps, numbers, torques, safety messages and tools of the crib go where the format has them; an action is written where
the old words leave no doubt. What is not sure stays in its own words, and "check" lists it. Every sentence is in the
draft, nothing is made up, nothing is fetched, and no file is overwritten.

Examples:
  baybook adopt "Mud flaps.docx"                        a folder with guide.md and its pictures
  baybook adopt old/*.html --platform larkspur-dray     one guide from each
  baybook adopt notes.txt --title "Roof vent"           under a title of its own`;

/** What stands below the options in the help of `release`. */
export const releaseFooter = `
Raise "revision" in the guide's front matter first. Beside the guide, releases.yaml gets an entry, and releases/ a file
with what was released; keep both in version control. A guide with errors is refused, and a template that nobody is
named as having measured.

Examples:
  baybook release swivel-seat                           asks for the date, who proved it and on which vehicle
  baybook release lamp-cradle --date 2026-10-02 --verified "M. Hart" --build fog=yes,lamps=led \\
    --measured notch="J. Ode"`;

/** What stands below the options in the help of `compare`. */
export const compareFooter = `
Told apart are what changes the work and what is only worded otherwise: in doubt, as where a number or a "not" has
changed, it changes the work. A step that has changed places is told as moved.

Examples:
  baybook compare lamp-cradle                           since its latest release
  baybook compare lamp-cradle --from 3 --to 4           between two releases
  baybook compare lamp-cradle --overlay changed         and templates, old over new`;

/** What stands below the options in the help of `recall`. */
export const recallFooter = `
Records are the files that the page of a guide or a visit saves. Told is what has changed since that release and bears
on safety, torque or geometry. A file that is no sound record is told by its name, and the others are listed.

Examples:
  baybook recall lamp-cradle --revision 3 records       every record of a folder
  baybook recall lamp-cradle --fingerprint "3f2a 9c04 b7d1" records/*.json
  baybook recall lamp-cradle --revision 3 records --format json

Exit code: 1 where a file is no sound record.`;

/** What stands below the options in the help of `visit`. */
export const visitFooter = `
What the platform, the shop or a procedure declares is one thing in both guides; what a guide declares itself is its
own. Dirty work comes before clean, waits are filled, and the plan never takes longer than one job after the other.
A file visits/name.md says the same (title, platform, build, guides) and is published with the site.

Examples:
  baybook visit roof-vent side-awning                       for every build of the platform
  baybook visit roof-vent side-awning --build "led, lining" for the van that is booked
  baybook visit vent-and-awning --format json               what visits/vent-and-awning.md asks for, as data`;

/** What stands below the options in the help of `day`. */
export const dayFooter = `
A file says title: and jobs:, a list of visits and guides; one with build: says which vehicle comes. "baybook explain
day.yaml" tells its keys. Supplies are summed and rounded up to whole packs; a tool that two jobs want at once and that
is there once is told.

Examples:
  baybook day thursday.yaml                             what its jobs need
  baybook day vent-and-awning "lamp-cradle swivel-seat" two vehicles, one of them with two guides
  baybook day thursday.yaml --format csv                for the counter's own program
  baybook day thursday.yaml --format html --out day.html  to print and tick off`;

/** What stands below the options in the help of `cut`. */
export const cutFooter = `
A correction is refused where a print setting explains the sides, and where one of them is not between 97.0 and
103.0 mm: then the setting is to be changed, not the sheet.

Examples:
  baybook cut lamp-cradle                               every template of a guide
  baybook cut lamp-cradle notch --paper a3,single       one, on larger papers
  baybook cut lamp-cradle notch --measured 99.6,100.2   for the printer that made this of the square`;

/** What stands below the commands in the help of the program. */
export const mainFooter = `
Exit code: 0 without errors, 1 with errors, 2 for wrong usage.

Examples:
  baybook new guide                      begin a guide
  baybook adopt old/flaps.docx           begin one from what the shop has
  baybook preview lamp-cradle            show a guide while it is written
  baybook language-server                serve an editor; "baybook explain editors" says how
  baybook check                          check the workspace in guides/
  baybook check lamp-cradle              check one guide, or one visit with its guides
  baybook build --out site               check it and write the site
  baybook build --shard 2/4              work out a part of it, on one of four machines
  baybook cut lamp-cradle                the templates of one guide, without the site
  baybook release lamp-cradle            record what it is now, and who stands for it
  baybook compare lamp-cradle            what has changed since
  baybook recall lamp-cradle --revision 3 records   which vehicles were worked on under it
  baybook visit lamp-cradle roof-vent    two guides on one vehicle, as one job
  baybook day thursday.yaml              what the counter fetches for a day
  baybook check --format sarif           findings for a code host
  baybook check --read                   and print the steps as they will be read
  baybook explain tool-undeclared        what a finding is about`;
