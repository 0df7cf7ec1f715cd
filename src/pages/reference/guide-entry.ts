import { listed, lowered } from '../../job/index.ts';
import { formatEstimate } from '../../units/estimate.ts';
import { base } from '../../units/quantity.ts';
import { guideFolder, type PageContext } from '../frame/context.ts';
import { dateWords } from '../frame/identity.ts';
import type { GuideEntry } from '../overview/overview-views.ts';
import type { PictureView } from '../steps/block-views.ts';
import type { GuideSummary } from './guide-summary.ts';

/** A guide as lists name it: what it is, how long it takes, for which builds it differs. */
export function guideEntry(guide: GuideSummary, { root }: Pick<PageContext, 'root'>): GuideEntry {
  const { time, people, differsWith } = guide;
  return {
    link: { text: guide.title, href: `${root}${guideFolder(guide)}index.html` },
    picture: guide.picture && pictureFrom(root, guide.picture),
    partNumber: guide.partNumber,
    revision: guide.revision,
    unverified: guide.unverified,
    updated: guide.updated === null ? null : dateWords(guide.updated),
    time: formatEstimate({
      least: base<'time'>(time.least),
      likely: base<'time'>((time.least + time.most) / 2),
      most: base<'time'>(time.most),
    }),
    people: people > 1 ? `${people} people for some steps` : '1 person',
    builds: guide.visit
      ? `${guide.visit.length} guides as one job`
      : differsWith.length === 0
        ? 'The same for every build'
        : `Differs with ${listed(differsWith.map(lowered))}`,
  };
}

/** The same picture with addresses from a page; a list shows no enlarged part. */
function pictureFrom(root: string, picture: PictureView): PictureView {
  const fromPage = (srcset: string) =>
    srcset
      .split(', ')
      .map((one) => root + one)
      .join(', ');
  return {
    ...picture,
    src: root + picture.src,
    sources: picture.sources.map(({ type, srcset }) => ({ type, srcset: fromPage(srcset) })),
    detail: null,
  };
}
