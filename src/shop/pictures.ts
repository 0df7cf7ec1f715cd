import type { Report } from '../diagnostics/report.ts';
import type { PictureFact } from '../model/guide.ts';
import { type PictureWeight, pageOverBudget } from '../pictures/budget.ts';
import { checkPicture, type PictureCheck } from '../pictures/check-picture.ts';
import type { PictureRequest } from '../pictures/picture.ts';
import { pictureFinding } from '../pictures/rules.ts';
import { wholeFile } from '../source/span.ts';
import type { Store } from '../store/store.ts';
import type { WorkspaceFiles } from './workspace-files.ts';

/** Judges the pictures of a page; `file` is the page's own. */
export type LookAtPictures = (file: string, facts: readonly PictureFact[], report: Report) => Promise<void>;

/**
 * Makes the judge of a workspace's pictures, which looks at each only once however many pages show it. A
 * picture that is not there is a finding of another rule.
 */
export function pictureJudge(files: WorkspaceFiles, cache: Store): LookAtPictures {
  const seen = new Map<string, Promise<PictureCheck | null>>();
  const judged = (path: string, request: PictureRequest) => {
    const key = `${path}\n${JSON.stringify(request)}`;
    const known = seen.get(key);
    if (known) return known;
    const bytes = files.read(path);
    const check = bytes ? checkPicture(bytes, path, request, cache) : Promise.resolve(null);
    seen.set(key, check);
    return check;
  };
  return async (file, facts, report) => {
    const weights = new Map<string, PictureWeight>();
    // A bad file is one fault, however often the page shows it.
    const told = new Set<string>();
    for (const fact of facts) {
      const check = fact.path === null ? null : await judged(fact.path, requestOf(fact));
      if (!check) continue;
      for (const problem of check.problems) {
        const fault = `${fact.path}\n${problem.code}`;
        if (!told.has(fault)) report(pictureFinding(problem, fact.src.at));
        told.add(fault);
      }
      if (check.weight) weights.set(check.weight.file, check.weight);
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
