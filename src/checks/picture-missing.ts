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
        finding(card, fact.src.at, describe(fact, text), {
          suggestion: text === undefined ? undefined : { at: fact.src.at, text },
        }),
      );
    }
  },
};

function describe({ path, src }: PictureFact, likely: string | undefined): string {
  if (src.value.includes('\\')) return `a path has slashes, also on Windows: "${src.value}"`;
  if (likely?.toLowerCase() === src.value.toLowerCase())
    return `the picture is called "${likely}"; small letters and capitals are told apart`;
  if (path !== null) return `there is no picture "${src.value}"; looked for ${path}`;
  if (/^https?:/i.test(src.value))
    return 'a picture is never fetched from the web; put a copy of it beside the guide';
  return `"${src.value}" lies outside the workspace; put the picture beside the guide`;
}

/** The file that was meant, as the author would write it: the nearest of its folder, or of the same name elsewhere. */
function likely({ path, src }: PictureFact, { files }: Shop): string | undefined {
  if (src.value.includes('\\')) return src.value.replaceAll('\\', '/');
  if (path === null) return undefined;
  const folder = posix.dirname(path);
  const names = [...files.keys()]
    .filter((file) => posix.dirname(file) === folder)
    .map((file) => posix.basename(file));
  const name = nearest(posix.basename(path), names)[0];
  if (name !== undefined) return posix.join(posix.dirname(src.value), name);
  const wanted = posix.basename(path).toLowerCase();
  const elsewhere = [...files.keys()].find((file) => posix.basename(file).toLowerCase() === wanted);
  return elsewhere === undefined ? undefined : posix.relative(posix.dirname(src.at.file), elsewhere);
}
