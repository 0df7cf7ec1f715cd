import type { RuleCard } from '../diagnostics/rule-card.ts';
import { markBlank } from './mark-blank.ts';
import { placeUnfilled } from './marked-places.ts';

/** An empty text in an example's files takes the file of that name away. */
const away = '';
const shop = 'name: Example Fitting\n';

export const shopMissing: RuleCard = {
  code: 'shop-missing',
  severity: 'error',
  title: 'A workspace without shop.yaml',
  why: 'shop.yaml names the shop, its units and its papers, and shows that this folder is a workspace. Without it Baybook may be looking at the wrong folder.',
  bad: { 'shop.yaml': away },
  good: { 'shop.yaml': shop },
};

export const listMissing: RuleCard = {
  code: 'list-missing',
  severity: 'error',
  title: 'A list of the shop that guides ask for is not there',
  why: 'A tool without a label takes its name from tools.yaml, the type of a fastener stands in fasteners.yaml, and a supply without a label in supplies.yaml. Without the file nothing of that can be looked up.',
  bad: {
    'example/guide.md':
      '::tool{#trim-lever}\n::tool{#heat-gun}\n\n::step[Free the edge]{#arch}\n\nWork the :tool[trim-lever] behind the edge. Warm it with the :tool[heat-gun].\n',
  },
  good: {
    'tools.yaml': 'trim-lever: {name: Trim lever}\nheat-gun: {name: Heat gun}\n',
    'example/guide.md':
      '::tool{#trim-lever}\n::tool{#heat-gun}\n\n::step[Free the edge]{#arch}\n\nWork the :tool[trim-lever] behind the edge. Warm it with the :tool[heat-gun].\n',
  },
};

export const guidesMissing: RuleCard = {
  code: 'guides-missing',
  severity: 'error',
  title: 'A workspace without a guide',
  why: 'A site without a guide is most likely the wrong folder. A guide is a file guide.md in a folder of its own.',
  bad: { 'example/guide.md': away },
  good: { 'shop.yaml': shop },
};

export const guideMisplaced: RuleCard = {
  code: 'guide-misplaced',
  severity: 'error',
  title: 'A guide.md where no guide is looked for',
  why: 'A guide stands in a folder right under the workspace, and the name of that folder is its id. One that stands deeper, or whose folder has a name that is no id, would be left out of the site without a word.',
  bad: { 'front/cradle/guide.md': 'A guide.\n' },
  good: { 'shop.yaml': shop },
};

const procedure = '---\ntitle: Look twice\n---\n\n::step[Look twice]{#twice}\n\nLook behind the edge.\n';

export const procedureUnused: RuleCard = {
  code: 'procedure-unused',
  severity: 'warning',
  title: 'A procedure that no guide places',
  why: 'A shared procedure is read and checked where a guide places it. One that none places is checked by nobody.',
  bad: { 'procedures/twice.md': procedure },
  good: {
    'procedures/twice.md': procedure,
    'example/guide.md': '## Work {#work}\n\n::procedure{of=twice}\n',
  },
};

export const fileEmpty: RuleCard = {
  code: 'file-empty',
  severity: 'error',
  title: 'A file with nothing in it',
  why: 'An empty file is mostly one that was not saved.',
  bad: { 'tools.yaml': '\n' },
  good: { 'tools.yaml': 'trim-lever: {name: Trim lever}\n' },
};

export const namesAlike: RuleCard = {
  code: 'names-alike',
  severity: 'warning',
  title: 'Two names that are one on other machines',
  why: 'Windows and macOS take A.pdf and a.pdf for one file. Whoever copies the workspace or the site there keeps one of the two, and nothing says which.',
  bad: { 'example/Parts.txt': 'Two clips.\n', 'example/parts.txt': 'Three clips.\n' },
  good: { 'example/parts-left.txt': 'Two clips.\n', 'example/parts-right.txt': 'Three clips.\n' },
};

export const fileNotUtf8: RuleCard = {
  code: 'file-not-utf8',
  severity: 'error',
  title: 'A text file in another encoding than UTF-8',
  why: 'In another encoding the signs for degrees, newton metres and fractions come out as something else. Any editor can save as UTF-8.',
  // Not UTF-8 cannot be written in an example; U+0000 is what UTF-16 text without a mark decodes to.
  bad: { 'tools.yaml': 't\u0000r\u0000i\u0000m\u0000\n\u0000' },
  good: { 'tools.yaml': 'trim-lever: {name: Trim lever}\n' },
};

export const fileTooLarge: RuleCard = {
  code: 'file-too-large',
  severity: 'error',
  title: 'A text file beyond all use',
  why: 'A guide of a hundred steps has some 50 kB of text. A file of more than 4 MB is something else under the wrong name.',
  bad: { 'tools.yaml': '# a line of notes\n'.repeat(250_000) },
  good: { 'tools.yaml': 'trim-lever: {name: Trim lever}\n' },
};

export const logoMissing: RuleCard = {
  code: 'logo-missing',
  severity: 'error',
  title: 'The logo is not in the workspace',
  why: 'The logo stands on every page and on every print.',
  bad: { 'shop.yaml': `${shop}logo: logo.svg\n` },
  good: {
    'shop.yaml': `${shop}logo: logo.svg\n`,
    'logo.svg': '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9v9z"/></svg>\n',
  },
};

/** A link or a file that cannot be read is no text that an example could hold, so the cards show the cure. */
export const linkRefused: RuleCard = {
  code: 'link-refused',
  severity: 'warning',
  title: 'A symbolic link in the workspace',
  why: 'A link can lead out of the workspace, and what it leads to is different on every computer. Baybook does not follow it: put the file itself there.',
  bad: '',
  good: '',
};

export const fileUnreadable: RuleCard = {
  code: 'file-unreadable',
  severity: 'error',
  title: 'A file or folder that cannot be opened',
  why: 'It is there, but this user may not read it.',
  bad: '',
  good: '',
};

/** The rules of a workspace's files. */
export const shopRules: readonly RuleCard[] = [
  shopMissing,
  listMissing,
  guidesMissing,
  guideMisplaced,
  procedureUnused,
  fileEmpty,
  namesAlike,
  fileNotUtf8,
  fileTooLarge,
  logoMissing,
  linkRefused,
  fileUnreadable,
  placeUnfilled,
  markBlank,
];
