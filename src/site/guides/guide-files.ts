import { guideFolder, type PageContext } from '../../pages/frame/context.ts';
import { identityWords, oneBuildWords } from '../../pages/frame/identity.ts';
import { guideJson } from '../../pages/guide/guide-json.ts';
import { type GuidePages, guidePages } from '../../pages/guide/guide-page.ts';
import { PICK_LIST, pickList } from '../../pages/guide/pick-list.ts';
import type { RehearsalData } from '../../pages/rehearsal/rehearsal-data.ts';
import { pageFeet } from '../page-feet.ts';
import type { PublishedGuide } from '../publication.ts';

/** The place of the JSON Schema that every guide's JSON names. */
export const schemaPath = 'schema/guide.schema.json';

/** What stands in a guide's folder besides its pictures and templates. */
interface GuideFiles {
  readonly path: string;
  readonly views: GuidePages;
  /** The style sheet that names the guide at the foot of each printed sheet. */
  readonly feet: GuideFile;
  /** What the page only leads to: the guide's data, its pick list, and what is rehearsed. */
  readonly data: () => readonly GuideFile[];
}

interface GuideFile {
  readonly path: string;
  readonly content: string;
}

/** Data as a classic script: from `file://` nothing else is read. */
function rehearsalScript(data: RehearsalData): string {
  return `globalThis.rehearsed=${JSON.stringify(data)};\n`;
}

/** The page of a guide, and the files that belong to it. */
export function guideFiles({ guide, job }: PublishedGuide, page: PageContext): GuideFiles {
  const folder = guideFolder(guide);
  const views = guidePages(guide, job, page);
  const json = () => guideJson(guide, job, page.root + schemaPath);
  return {
    path: `${folder}index.html`,
    views,
    feet: {
      path: `${folder}page-feet.css`,
      content: pageFeet(guide, identityWords(guide, job), oneBuildWords(guide, job)),
    },
    data: () => [
      { path: `${folder}guide.json`, content: `${JSON.stringify(json(), null, 1)}\n` },
      { path: `${folder}${PICK_LIST}`, content: pickList(guide, job) },
      { path: `${folder}rehearsal.js`, content: rehearsalScript(views.rehearsed()) },
    ],
  };
}
