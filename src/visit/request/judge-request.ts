import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { didYouMean, nearest } from '../../diagnostics/suggest.ts';
import {
  visitEmpty,
  visitGuideFaulty,
  visitGuideRepeated,
  visitGuideUnknown,
  visitPlatformDiffers,
} from '../rules.ts';
import type { VisitedGuide } from '../savings.ts';
import type { VisitRequest } from './request.ts';

/** What became of a guide that a visit names: itself, without an error; or why it cannot be planned. */
export type NamedGuide = VisitedGuide | 'unknown' | 'faulty';

/**
 * The guides of a visit, where each can be planned with the others; `null`, and a finding for each that cannot.
 *
 * @param known the names of all guides that there are
 */
export function judgeRequest(
  request: VisitRequest,
  named: ReadonlyMap<string, NamedGuide>,
  known: () => readonly string[],
  report: Report,
): readonly VisitedGuide[] | null {
  if (request.guides.length === 0) {
    report(
      finding(
        visitEmpty,
        request.at,
        'this visit names no guide; guides: lists the folders of those that are booked',
      ),
    );
    return null;
  }
  const found: VisitedGuide[] = [];
  const wanted = request.platform?.value ?? firstPlatform(named);
  let faults = 0;
  const fault = (...told: Parameters<typeof finding>) => {
    faults += 1;
    report(finding(...told));
  };
  for (const [place, { value, at }] of request.guides.entries()) {
    const earlier = request.guides.slice(0, place).find((one) => one.value === value);
    const guide = named.get(value) ?? 'unknown';
    if (earlier) {
      const notes = earlier.at.start === at.start ? [] : [{ message: 'named here', at: earlier.at }];
      fault(visitGuideRepeated, at, `“${value}” is named twice; a guide fits what is in one box, once`, {
        notes,
      });
    } else if (guide === 'unknown') {
      const help = didYouMean(nearest(value, known())) || `there are ${known().join(', ')}`;
      fault(visitGuideUnknown, at, `there is no guide "${value}"; ${help}`);
    } else if (guide === 'faulty') {
      fault(
        visitGuideFaulty,
        at,
        `the guide "${value}" has errors, so it cannot be planned; mend them first`,
      );
    } else if (guide.guide.platform.value !== wanted) {
      const { platform } = guide.guide;
      const notes = [{ message: 'its platform', at: platform.at }];
      fault(
        visitPlatformDiffers,
        at,
        `the guide "${value}" is for ${platform.value}, and this visit is for ${wanted}`,
        { notes },
      );
    } else found.push(guide);
  }
  return faults === 0 ? found : null;
}

function firstPlatform(named: ReadonlyMap<string, NamedGuide>): string | undefined {
  const [first] = [...named.values()].filter((one) => typeof one !== 'string');
  return first?.guide.platform.value;
}
