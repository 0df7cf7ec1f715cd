/** What a technician is told to do and what is hardly ever a noun; our own list. */
const plainVerbs = `
add adjust align allow apply arrange ask attach avoid begin bend blow bolt bond bring broach carry catch centre
centre-punch check choose close coil collect compare connect continue cover crimp deburr degrease depress detach discard disconnect
dismantle dispose draw drive drop earth ease enlarge ensure erase examine expect extend fasten feed fetch
fill find fit fix flush fold follow free fuse gather get give glue go grease grip guide hand-start hang have hear hold
heat hook inform insert inspect install join keep know label lay lead leave let lever lift line listen
locate look loosen lower lubricate make measure move nip observe obtain offer pack paint peel position
pour prepare press prevent prime pry pull push put raise read reach reassemble recharge reconnect record
refill refit reinstall release remove repeat replace reset retain retighten return reuse rinse roll rotate route scrape
screw seal seat secure see select separate set shake shift shorten show shut slacken slide smooth snap snug soak solder
spray spread squeeze stand start stay stick stow straighten strip support sweep swing swivel switch tack
take tell test thread throw tie tighten tilt tip torque touch trim try tug turn twist unbolt unclip uncover undo
unfold unhook unlatch unlock unpack unplug unroll unscrew untie unwind use vacuum verify wait warm wash wear weigh
wind wipe withdraw work wrap write
balance brace change climb come crouch dip enter fold go grab grasp halve knock lean lock mind mix nudge park pinch poke pop
rock rub run shine sit snip spin splice stretch strike swap tear trace tuck unseat unwrap vent walk wet widen wiggle yank`;

/** Verbs of that list, and others, that are as often a noun or an adjective: what follows decides. */
const doubtfulVerbs = `
bag bin block bolt bond bracket brush centre clamp clean clear clip close coat complete cover crimp cut damp
drain drill drive drop dry earth empty face feed file fill fit fix flush fold free fuse glue grease grip guide hammer
heat hook key label lay lead lever lift line load loop lower mark mask measure mount move nip note nut
open pack paint panel pilot pin place plane plug position press prime prop protect pull punch push ratchet rest
ring roll route sand saw screw seal seat set shim shut slide snap spray spread stand start stick stop
strap stripe strip support sweep swing switch tack tape tap test thread tie tip torque touch trim try tug turn twist
wash warm watch weld wind wire work wrap
balance brace change dip grasp lock mind mix park pinch pop rock run spin splice stretch strike swap tear trace vent walk wet`;

/** Verbs that ask for a look, so that "if" or "when" after them belongs to what is looked for. */
const perceptionVerbs =
  'ask check examine feel find hear know listen look note observe record see tell test try verify watch write';

const irregular: { readonly [verb: string]: string } = {
  bend: 'bent',
  bring: 'brought',
  catch: 'caught',
  cut: 'cut',
  draw: 'drawn',
  drive: 'driven',
  feed: 'fed',
  find: 'found',
  give: 'given',
  hang: 'hung',
  hold: 'held',
  keep: 'kept',
  lay: 'laid',
  lead: 'led',
  leave: 'left',
  make: 'made',
  put: 'put',
  read: 'read',
  see: 'seen',
  set: 'set',
  shut: 'shut',
  slide: 'slid',
  stick: 'stuck',
  swing: 'swung',
  take: 'taken',
  undo: 'undone',
  wear: 'worn',
  wind: 'wound',
  withdraw: 'withdrawn',
  write: 'written',
};

const doubtful = setOf(doubtfulVerbs);
const all = new Set([...setOf(plainVerbs), ...doubtful, ...setOf(perceptionVerbs)]);
const perceptions = setOf(perceptionVerbs);
const participles = new Set([...all].map((verb) => irregular[verb] ?? withEnding(verb, 'ed')));
const thirdPersons = new Set([...all].map((verb) => withEnding(verb, 's')));

/** Whether a word can tell what to do: "remove", "lift", "tape". */
export function isVerb(word: string): boolean {
  return all.has(word);
}

/** Whether it is a noun or an adjective as often: "tape", "cut", "open". */
export function isDoubtful(word: string): boolean {
  return doubtful.has(word);
}

/** Whether it asks for a look: "see", "check". */
export function isPerception(word: string): boolean {
  return perceptions.has(word);
}

/** Whether it tells what is done to something: "tightened", "taken". */
export function isParticiple(word: string): boolean {
  return participles.has(word);
}

/** Whether it tells what somebody does: "removes". */
export function isThirdPerson(word: string): boolean {
  return thirdPersons.has(word);
}

function setOf(words: string): ReadonlySet<string> {
  return new Set(words.trim().split(/\s+/));
}

/** `tape` → `taped`, `clip` → `clipped`, `dry` → `dried`; `press` → `presses`. */
function withEnding(verb: string, ending: 'ed' | 's'): string {
  const stem = /[^aeiou]y$/.test(verb) ? `${verb.slice(0, -1)}i` : verb;
  if (ending === 's') return /(?:[sxz]|[cs]h|i)$/.test(stem) ? `${stem}es` : `${stem}s`;
  if (stem.endsWith('e')) return `${stem}d`;
  const doubles = /^(?:un|re)?[^aeiou]*[aeiou][bdgklmnprt]$/.test(stem);
  return doubles ? `${stem}${stem.at(-1)}ed` : `${stem}ed`;
}
