import type { Page } from '../../checks/index.ts';
import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import type { Figure } from '../../model/block.ts';
import type { PictureFact } from '../../model/guide.ts';
import { type PictureWeight, pageOverBudget } from '../../pictures/budget.ts';
import type { PictureCheck } from '../../pictures/check-picture.ts';
import type { PictureRequest } from '../../pictures/picture.ts';
import { pictureFinding } from '../../pictures/rules.ts';
import { wholeFile } from '../../source/span.ts';
import { sha256 } from '../../store/content-hash.ts';
import type { Store } from '../../store/store.ts';
import type { WorkspaceFiles } from '../files/workspace-files.ts';
import { markBlank, nothingThere } from '../mark-blank.ts';

/** Judges the pictures of a page. */
export type LookAtPictures = (
  page: Pick<Page, 'file' | 'pictures'>,
  files: Pick<WorkspaceFiles, 'read'>,
  report: Report,
) => Promise<void>;

/**
 * Makes a judge of pictures, which looks at each only once however many pages show it. A picture that is not
 * there is a finding of another rule.
 */
export function pictureJudge(store: Store): LookAtPictures {
  const seen = new Map<string, Promise<PictureCheck>>();
  const judged = (path: string, bytes: Uint8Array, request: PictureRequest) => {
    const key = JSON.stringify([path, sha256(bytes), request]);
    const known = seen.get(key);
    if (known) return known;
    // Loaded with the first picture: the library that decodes them is heavy, and few runs of one guide need it.
    const check = import('../../pictures/check-picture.ts').then(({ checkPicture }) =>
      checkPicture(bytes, path, request, store),
    );
    seen.set(key, check);
    return check;
  };
  return async ({ file, pictures }, files, report) => {
    const judgeMarks = async (path: string, bytes: Uint8Array, { marks }: Figure) => {
      const placed = marks.flatMap(({ letter, point, also, at }) =>
        (point ? [point, ...also] : also).map((place) => ({ letter, at, ...place })),
      );
      const places = placed.map(({ x, y }) => ({ x, y }));
      if (placed.length === 0) return;
      const { blankPlaces } = await import('../../pictures/blank.ts');
      const blank = await blankPlaces(bytes, places, store);
      for (const [index, { letter, at }] of placed.entries())
        if (blank[index]) report(finding(markBlank, at, nothingThere(letter, path)));
    };
    const weights = new Map<string, PictureWeight>();
    // A bad file is one fault, however often the page shows it.
    const told = new Set<string>();
    for (const fact of pictures) {
      const bytes = fact.path === null ? null : files.read(fact.path);
      if (fact.path === null || bytes === null) continue;
      const check = await judged(fact.path, bytes, requestOf(fact));
      for (const problem of check.problems) {
        const fault = `${fact.path}\n${problem.code}`;
        if (!told.has(fault)) report(pictureFinding(problem, fact.src.at));
        told.add(fault);
      }
      if (check.weight) weights.set(check.weight.file, check.weight);
      if (fact.figure && check.problems.length === 0) await judgeMarks(fact.path, bytes, fact.figure);
    }
    const heavy = pageOverBudget([...weights.values()]);
    if (heavy) report(pictureFinding(heavy, wholeFile(file)));
  };
}

function requestOf({ figure }: PictureFact): PictureRequest {
  return {
    crop: figure?.crop?.value ?? null,
    blur: figure?.blur.map(({ value }) => value) ?? [],
    zoom: figure?.zoom?.value ?? null,
  };
}
