import { didYouMean, nearest } from '../diagnostics/suggest.ts';
import type { Workspace } from '../shop/open-workspace.ts';
import { guideId } from '../site/site-pages.ts';
import { UsageError } from './io.ts';

/** The file of a guide. One that is not there is wrong usage. */
export function guidePath(id: string, { found }: Pick<Workspace, 'found'>): string {
  const path = found.guides.find((one) => guideId(one) === id);
  if (path !== undefined) return path;
  const ids = found.guides.map(guideId);
  const help = didYouMean(nearest(id, ids)) || `there are ${ids.join(', ')}`;
  throw new UsageError(`there is no guide "${id}"; ${help}`);
}
