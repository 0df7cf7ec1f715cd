import type { Finding } from '../diagnostics/finding.ts';
import { finding, type RuleCard, type RuleExample } from '../diagnostics/rule-card.ts';
import type { Span } from '../source/span.ts';
import type { PictureCode, PictureProblem } from './picture.ts';
import { example, exampleDrawing } from './rule-examples.ts';
import { drawingRules } from './svg/drawing-rules.ts';

const good: RuleExample = example('arch.svg', exampleDrawing('<path d="M10 10h80"/>'));

/** A GIF's header that claims 30,000 × 30,000 pixels: 0x7530 reads "0u". */
const hugeHeader = 'GIF89a0u0u\0\0\0,\0\0\0\x000u0u\0\x02\x02D\x01\0;';

const oneFrame = ',\0\0\0\0\x01\0\x01\0\0\x02\x02D\x01\0';
const twoFrames = `GIF89a\x01\0\x01\0\0\0\0${oneFrame}${oneFrame};`;

const cards: Readonly<Record<PictureCode, RuleCard>> = {
  'picture-unreadable': {
    code: 'picture-unreadable',
    severity: 'error',
    title: 'A picture cannot be read',
    why: 'A step that leans on a picture is of no use with a grey box in its place. Files break off when a phone is unplugged too early, and a file may be something else than its name says.',
    bad: example('arch.jpg', 'This is a note, not a photo.'),
    good,
  },
  'picture-too-large': {
    code: 'picture-too-large',
    severity: 'error',
    title: 'A picture is too large to be read',
    why: 'A picture of many hundred million pixels fills the memory of the machine that builds the site, and no screen or print shows more than a few million of them.',
    bad: example('arch.gif', hugeHeader),
    good,
  },
  'picture-animated': {
    code: 'picture-animated',
    severity: 'error',
    title: 'A picture moves',
    why: 'The guide is printed, and a print shows one picture. What moves also draws the eye from the sentence that says what to do.',
    bad: example('arch.gif', twoFrames),
    good,
  },
  'picture-over-budget': {
    code: 'picture-over-budget',
    severity: 'warning',
    title: 'A picture is heavy',
    why: 'In the bay the guide is read on a tablet over a weak network. A heavy picture comes late or not at all.',
    bad: example('arch.svg', exampleDrawing(`<path d="M0 0${'l1 1'.repeat(55_000)}"/>`)),
    good,
  },
  'page-pictures-over-budget': {
    code: 'page-pictures-over-budget',
    severity: 'warning',
    title: 'The pictures of a page are heavy together',
    why: 'A guide is loaded whole, so that it works once the network is gone. Pictures of many megabytes make that first visit fail.',
    bad: manyDrawings(31),
    good,
  },
  ...drawingRules(good),
};

/** The cards of every rule about pictures. */
export const pictureRules: readonly RuleCard[] = Object.values(cards);

/** Makes a finding of a problem, at the place where an author names the picture. */
export function pictureFinding(problem: PictureProblem, at: Span): Finding {
  return finding(cards[problem.code], at, problem.message);
}

function manyDrawings(count: number): RuleExample {
  const heavy = exampleDrawing(`<path d="M0 0${'l1 1'.repeat(49_500)}"/>`);
  const names = Array.from({ length: count }, (_, index) => `p${index}.svg`);
  const files = names.map((name) => example(name, heavy));
  const guide = names.map((name) => `![A path](pictures/${name})`).join('\n\n');
  return { ...Object.assign({}, ...files), 'example/guide.md': guide };
}
