import { posix } from 'node:path';
import { finding, type RuleCard } from '../diagnostics/rule-card.ts';
import { nearest } from '../diagnostics/suggest.ts';
import type { PictureFact } from '../model/guide.ts';
import type { Shop } from '../model/shop.ts';
import type { PageRule } from './rule.ts';

const picture = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 60"><path d="M0 0h90v60z"/></svg>\n';

const card: RuleCard = {
  code: 'picture-missing',
  severity: 'error',
  title: 'A picture that is not in the workspace',
  why: 'The technician would see an empty frame. The site fetches nothing from elsewhere, so every picture stands in the workspace, in most cases in a folder beside its guide.',
  bad: {
    'example/guide.md': '![Edge of the trim](pictures/egde.svg)\n',
    'example/pictures/edge.svg': picture,
  },
  good: {
    'example/guide.md': '![Edge of the trim](pictures/edge.svg)\n',
    'example/pictures/edge.svg': picture,
  },
};

/** Every picture that a guide shows is a file of the workspace. */
export const pictureMissing: PageRule = {
  card,
  runOnPage: (page, shop, report) => {
    for (const fact of page.pictures) {
      if (fact.path !== null && shop.files.has(fact.path)) continue;
      const text = likely(fact, shop);
      report(
        finding(card, fact.src.at, describe(fact), {
          suggestion: text === undefined ? undefined : { at: fact.src.at, text },
        }),
      );
    }
  },
};

function describe({ path, src }: PictureFact): string {
  if (path !== null) return `there is no picture "${src.value}"; looked for ${path}`;
  return `"${src.value}" lies outside the workspace; put the picture beside the guide`;
}

/** The file of the same folder whose name is nearest, as the author would write it. */
function likely({ path, src }: PictureFact, { files }: Shop): string | undefined {
  if (path === null) return undefined;
  const folder = posix.dirname(path);
  const names = [...files.keys()]
    .filter((file) => posix.dirname(file) === folder)
    .map((file) => posix.basename(file));
  const name = nearest(posix.basename(path), names)[0];
  return name === undefined ? undefined : posix.join(posix.dirname(src.value), name);
}
