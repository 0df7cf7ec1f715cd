import type { HandbookView } from '../../src/handbook/site-pages.ts';
import { type Markup, markup } from '../../src/html/markup.ts';
import type { OwnPictureView } from '../../src/pages/frame/own-picture.ts';
import { printedWords } from '../../src/pages/frame/printed-words.ts';
import type {
  FrameView,
  LinkView,
  Shown,
  SizedPicture,
  StepRef,
  VaryingView,
} from '../../src/pages/frame/shared-views.ts';
import type { GuideView, SectionView } from '../../src/pages/guide/guide-views.ts';
import type { GatherRow, GatherView } from '../../src/pages/overview/list-views.ts';
import type { GuideEntry, IndexView, PlatformView } from '../../src/pages/overview/overview-views.ts';
import type {
  GlossaryView,
  RecordsView,
  ReferenceView,
  UsedInView,
} from '../../src/pages/reference/reference-views.ts';
import type { CardsView, RehearsalView } from '../../src/pages/rehearsal/rehearsal-view.ts';
import type { BlockView, PictureView, ReadingView, SignalBar } from '../../src/pages/steps/block-views.ts';
import type { StepView, TorqueView } from '../../src/pages/steps/step-views.ts';
import { usualWords } from '../../src/trade/words.ts';

/**
 * Views with something in every field, every text of its own, so that a page can be searched for each. The compiler
 * asks for a new field or a new kind here, and the test then asks for it on the page.
 */
let count = 0;

const next = () => {
  count += 1;
  return 1000 + count;
};

const text = () => `text${next()}`;
const id = () => `id${next()}`;
const href = () => `https://h${next()}.example/`;
const html = (): Markup => markup(`<b>html${next()}</b>`);
const number = next;

const shown = (): Shown => ({ plans: String(number()), only: text() });
const varying = (): VaryingView => ({ ...shown(), text: text() });
const link = (): LinkView => ({ text: text(), href: href() });
const stepRef = (): StepRef => ({ ...shown(), id: id(), number: number(), title: text() });
const file = (): SizedPicture => ({ src: href(), width: number(), height: number() });

const picture = (detail: PictureView | null): PictureView => ({
  ...file(),
  sources: [{ type: 'image/webp', srcset: `${href()} ${number()}w` }],
  detail,
});

const bar = (word: SignalBar['word']): SignalBar => ({ word, label: text(), alert: true });

const reading = (): ReadingView => ({
  ...shown(),
  id: id(),
  name: text(),
  expect: text(),
  check: { words: null, dimension: text(), unit: text(), ranges: text(), otherwise: text() },
  sides: [{ side: 'left', name: text() }],
});

const told = (): ReadingView => ({ ...reading(), check: { words: [text(), text()], otherwise: text() } });

type Blocks = { readonly [K in BlockView['type']]: BlockView & { readonly type: K } };

const blocks = (): Blocks => ({
  // What stands for some builds alone is told within the prose.
  prose: { type: 'prose', changed: true, plans: null, only: null, html: html() },
  message: { type: 'message', changed: true, ...shown(), ...bar('danger'), hazard: html(), body: html() },
  note: { type: 'note', changed: true, ...shown(), title: html(), html: html() },
  why: { type: 'why', changed: true, ...shown(), title: html(), html: html() },
  owner: { type: 'owner', changed: true, ...shown(), title: html(), html: html() },
  figure: {
    type: 'figure',
    changed: true,
    ...shown(),
    caption: html(),
    alt: text(),
    picture: picture(picture(null)),
    marks: { overlay: html(), sides: text() },
    key: [{ letter: text(), text: html() }],
    order: { of: id(), title: text(), lines: [text()], aloud: text() },
    body: html(),
    side: text(),
    undoes: { step: { id: id(), number: number(), title: text(), href: href() }, turned: true },
  },
  photo: {
    type: 'photo',
    changed: true,
    ...shown(),
    number: number(),
    shows: html(),
    sides: [{ side: 'left', name: text() }],
  },
  template: {
    type: 'template',
    changed: true,
    ...shown(),
    id: id(),
    title: text(),
    facts: [text(), text()],
    datums: [text()],
    drawings: [{ ...shown(), side: text(), drawing: html() }],
    cuts: [{ ...shown(), id: id(), marks: text(), name: text(), size: text(), for: text() }],
    files: [{ ...shown(), href: href(), name: text(), detail: text(), sheets: null }],
    printCheck: {
      guide: id(),
      template: id(),
      within: text(),
      rows: [{ measures: text(), causes: [{ cause: text(), mend: text() }] }],
      correctable: text(),
      command: text(),
    },
  },
  prove: { type: 'prove', changed: true, ...shown(), title: html(), html: html(), readings: [reading()] },
});

const torque = (): TorqueView => ({
  ...shown(),
  changed: true,
  id: id(),
  item: text(),
  torque: text(),
  thread: text(),
  turn: text(),
  coat: text(),
  leftHand: true,
  setting: { crowfoot: text(), inLine: text(), formula: text(), square: text() },
  pattern: text(),
  check: { words: null, dimension: text(), unit: text(), ranges: text(), otherwise: text() },
});

const step = (): StepView => ({
  ...shown(),
  id: id(),
  number: number(),
  changed: true,
  place: { name: text(), drawing: { href: href(), width: number(), height: number(), lit: [id()] } },
  title: html(),
  facts: [text()],
  needs: [text()],
  blocks: Object.values(blocks()),
  tools: [varying()],
  wear: [varying()],
  torques: [torque()],
  orders: [{ ...shown(), title: text(), drawing: html(), lines: [text()] }],
  stacks: [
    { ...shown(), title: text(), drawing: html(), key: [{ letter: text(), text: text() }], grip: text() },
  ],
  positions: { positions: [number()], rows: [{ ...shown(), bolt: text(), cells: [text()] }] },
  hasLines: true,
  inspections: [
    {
      ...shown(),
      id: id(),
      name: text(),
      outcomes: [{ value: text(), name: text(), steps: [stepRef()] }],
    },
  ],
  stop: true,
  times: 2,
  rounds: ['left 1', 'left 2'],
  until: text(),
  cables: [{ ...shown(), name: text(), text: text() }],
  settings: [{ ...shown(), id: id(), name: text(), from: text(), to: text() }],
  readings: [reading(), told()],
  wait: text(),
  signOff: true,
  anyOrder: text(),
});

const box = () => ({ x: number(), y: number(), width: number(), height: number() });
const thing = () => ({ ...shown(), ...link() });

const zone = () => ({
  id: id(),
  lit: { id: id(), box: box() },
  name: text(),
  steps: [stepRef()],
  parts: [thing()],
  plugs: [thing()],
});

/** A single thing, or a set of sizes, which takes the place of the row's own id and step. */
const ownPicture = (): OwnPictureView => ({ shown: picture(null), alt: text() });

const gatherRow = (sizes: GatherRow['sizes'] = []): GatherRow => ({
  picture: ownPicture(),
  ...shown(),
  item: id(),
  id: id(),
  name: text(),
  page: href(),
  detail: text(),
  amount: [varying()],
  used: [varying()],
  first: [stepRef()],
  sizes,
});

const gatherSet = (): GatherRow => ({
  ...gatherRow([{ id: id(), size: text(), page: href(), picture: ownPicture(), first: [stepRef()] }]),
  id: '',
  page: null,
  first: [],
});

const gather = (): GatherView => ({
  wear: [gatherRow()],
  tools: [gatherRow(), gatherSet()],
  supplies: [gatherRow()],
  kit: [gatherRow()],
  nones: [text()],
});

const limit = () => ({ ...shown(), item: id(), id: id(), name: text(), value: text(), governs: true });

const section = (): SectionView => ({
  ...shown(),
  id: id(),
  title: html(),
  level: 2,
  empty: false,
  intro: Object.values(blocks()),
  gather: gather(),
  comesOff: [
    {
      picture: ownPicture(),
      ...shown(),
      item: id(),
      id: id(),
      name: text(),
      page: href(),
      count: text(),
      detail: text(),
      first: [stepRef()],
    },
  ],
  limits: [limit()],
  time: [varying()],
  steps: [step()],
});

const frame = (): FrameView => ({
  title: text(),
  words: printedWords(usualWords),
  root: `r${number()}/`,
  shop: text(),
  logo: file(),
  styles: [href()],
  scripts: [href()],
  policy: markup(text()),
  inlined: null,
});

/** A guide's page. */
export const guideView = (): GuideView => ({
  frame: frame(),
  title: text(),
  platform: link(),
  identity: [{ label: text(), value: text() }],
  standing: {
    unverified: text(),
    inShort: text(),
    verified: text(),
    note: text(),
    since: {
      title: text(),
      changes: [{ thing: link(), lines: [text()] }],
      reworded: text(),
      files: [link()],
    },
  },
  draft: text(),
  opening: Object.values(blocks()),
  picker: {
    groups: [
      {
        title: text(),
        options: [{ id: id(), name: text(), choices: [{ value: text(), name: text() }] }],
      },
    ],
    plans: [varying()],
  },
  cover: {
    code: { address: text(), drawing: html() },
    fields: [{ id: id(), label: text() }],
    letter: true,
    wishes: text(),
    templates: [{ ...shown(), title: text(), sheets: [varying()] }],
  },
  contents: [{ title: text(), steps: [stepRef()] }],
  about: [{ label: text(), text: text(), owner: true }],
  signalKey: [{ word: text(), meaning: text() }],
  vehicle: {
    picture: picture(null),
    alt: text(),
    zones: [zone()],
    links: [{ href: href(), name: text(), lit: id(), touch: box() }],
  },
  glance: [{ label: text(), lines: [varying()], more: [varying()], steps: [stepRef()] }],
  visit: {
    guides: [{ link: link(), edition: text() }],
    savings: [
      {
        ...shown(),
        rows: [{ label: text(), apart: text(), together: text(), saved: text() }],
      },
    ],
    shared: [{ steps: [stepRef()], title: text(), guides: text() }],
    reasons: [{ steps: [stepRef()], text: text(), other: [stepRef()] }],
    panels: [{ ...shown(), title: text(), drawing: html(), templates: [link()], nearest: text() }],
  },
  untimed: [stepRef()],
  accounted: false,
  safety: [
    {
      ...bar('warning'),
      entries: [{ ...shown(), hazard: html(), body: html(), steps: [stepRef()], sections: [link()] }],
    },
  ],
  sections: [section()],
  schedules: [
    { ...shown(), crews: [{ title: text(), lines: [text()], charts: [html()] }], noGain: [text()] },
  ],
  course: [
    {
      state: text(),
      rows: [
        {
          ...shown(),
          text: text(),
          from: { id: id(), number: number() },
          until: { id: id(), number: number() },
        },
      ],
    },
  ],
  sheets: {
    torques: [{ ...torque(), step: stepRef() }],
    bags: [
      {
        ...shown(),
        number: number(),
        step: stepRef(),
        contents: [
          { text: text(), back: stepRef(), end: null },
          { text: text(), back: null, end: text() },
        ],
      },
    ],
    counts: [{ ...shown(), name: text(), from: text(), out: number(), back: text(), elsewhere: text() }],
    evidence: [
      {
        ...shown(),
        step: stepRef(),
        key: text(),
        what: text(),
        text: html(),
        expect: text(),
        written: text(),
        sides: [{ side: 'left', name: text() }],
      },
    ],
    signOffs: [{ ...shown(), step: stepRef() }],
  },
  handOver: {
    words: [{ ...shown(), title: html(), html: html() }],
    limits: [limit()],
    readings: [reading()],
    rechecks: [{ ...shown(), name: text(), detail: text(), when: text() }],
  },
  footnotes: html(),
  table: markup(`"${text()}"`),
  bay: markup(`"${text()}"`),
  rehearsal: link(),
  cards: link(),
  pickList: link(),
  alone: link(),
});

/** The page on which a guide is rehearsed. */
export const rehearsalView = (): RehearsalView => ({
  frame: frame(),
  title: text(),
  guide: link(),
  edition: text(),
  steps: [{ id: id(), blocks: Object.values(blocks()) }],
});

/** A card set. */
export const cardsView = (): CardsView => ({
  frame: frame(),
  of: link(),
  edition: text(),
  groups: [
    {
      title: text(),
      cards: [{ ask: text(), only: text(), drawings: [html()], answer: text(), places: [link()] }],
    },
  ],
});

const entry = (): GuideEntry => ({
  picture: picture(null),
  link: link(),
  partNumber: text(),
  revision: text(),
  updated: text(),
  unverified: text(),
  time: text(),
  people: text(),
  builds: text(),
});

/** The page of records. */
export const recordsView = (): RecordsView => ({ frame: frame(), guides: markup(`["${text()}"]`) });

/** The first page. */
export const indexView = (): IndexView => ({
  frame: frame(),
  find: {
    kinds: [{ value: text(), name: text() }],
    platforms: [{ value: text(), name: text() }],
  },
  platforms: [{ link: link(), guides: [entry()] }],
  visits: [entry()],
  lists: [{ title: text(), links: [link()] }],
});

/** The page of a platform. */
export const platformView = (): PlatformView => ({
  frame: frame(),
  title: text(),
  options: [{ name: text(), choices: text() }],
  opening: Object.values(blocks()),
  drawn: blocks().figure,
  openingParts: [{ name: text(), guides: [link()] }],
  openingLimits: [{ name: text(), value: text() }],
  openingStates: [{ name: text(), set: text(), clear: text() }],
  sections: [
    {
      id: id(),
      title: html(),
      blocks: Object.values(blocks()),
      parts: [{ name: text(), guides: [link()] }],
      limits: [{ name: text(), value: text() }],
      states: [{ name: text(), set: text(), clear: text() }],
    },
  ],
  guides: [entry()],
  cards: link(),
  vehicle: {
    standsAlone: true,
    picture: picture(null),
    alt: text(),
    zones: [
      {
        id: id(),
        lit: { id: id(), box: box() },
        name: text(),
        parts: [text()],
        guides: [{ guide: link(), steps: [{ number: number(), title: text(), href: href() }] }],
      },
    ],
    links: [{ href: href(), name: text(), lit: id(), touch: box() }],
  },
});

const use = (): UsedInView => ({
  guide: link(),
  platform: text(),
  items: [text()],
  places: [{ ...link(), number: number() }],
});

/** The page of a tool or a kind of fastener. */
export const referenceView = (): ReferenceView => ({
  frame: frame(),
  kicker: text(),
  title: text(),
  picture: ownPicture(),
  drawing: html(),
  lead: text(),
  facts: [{ label: text(), drawing: html(), text: text(), href: href() }],
  uses: [use()],
  unlisted: number(),
});

/** The page of all terms. */
export const glossaryView = (): GlossaryView => ({
  frame: frame(),
  groups: [
    {
      title: text(),
      terms: [
        {
          id: id(),
          term: text(),
          drawing: html(),
          bar: bar('caution'),
          meaning: text(),
          synonyms: text(),
          standard: text(),
          related: [link()],
          uses: [use()],
          unlisted: number(),
        },
      ],
    },
  ],
});

const example = (): HandbookView['entries'][number]['example'] => [
  { path: text(), text: text() },
  { path: null, text: text() },
];

export const handbookView = (): HandbookView => ({
  frame: frame(),
  title: text(),
  up: link(),
  body: html(),
  wants: [{ want: text(), links: [{ ...link(), told: html() }] }],
  entries: [
    {
      id: id(),
      title: text(),
      lead: html(),
      rows: [{ name: text(), expects: html(), means: html(), needed: true }],
      example: example(),
    },
  ],
  rules: [{ id: id(), title: text(), severity: text(), why: html(), bad: example(), good: example() }],
});
