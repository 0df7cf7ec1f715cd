import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { isIn } from '../../job/actions/uses.ts';
import { isCounted, totalCount } from '../../job/index.ts';
import type { Connector, KitItem, Part } from '../../model/item.ts';
import { buildsOf } from '../builds/witness.ts';
import type { Rule, Subject } from '../rule.ts';

const ways = (second: string) =>
  `::part[Fuse way 7]{#way-7}\n::part[Fuse way 9]{#way-9}\n::kit[Lamp fuse]{#lamp-fuse takes=way-7}\n::kit[Fan fuse]{#fan-fuse takes=${second}}\n\n::step[Press in the fuses]{#fuses}\n\n:fit[lamp-fuse] into the :part[way-7] and :fit[fan-fuse] into the :part[way-9].`;

const card: RuleCard = {
  code: 'place-taken-twice',
  severity: 'error',
  title: 'More is put into a place than it has room for',
  why: 'A fuse way takes one fuse, a spare plug one plug, an earth point as many lugs as its `count` says. Where two things take one place, the second finds it full in the bay.',
  bad: ways('way-7'),
  good: ways('way-9'),
};

/** No place of the vehicle is taken more often than it is there, in any build. */
export const placeTakenTwice: Rule = {
  card,
  run: (subject, report) => {
    const { items } = subject.guide;
    for (const place of items.values()) {
      if (place.kind !== 'part') continue;
      const takers = [...items.values()].filter(
        (item): item is KitItem | Connector =>
          (item.kind === 'kit' || item.kind === 'connector') &&
          item.takes.some(({ value }) => value === place.id),
      );
      const together = mostTogether(takers, subject);
      const last = together.at(-1);
      const room = totalCount(place);
      if (!last || roomFor(together) <= room) continue;
      const ref = last.takes.find(({ value }) => value === place.id);
      const notes = [
        ...together
          .slice(0, -1)
          .map((item) => ({ message: `taken here by the ${nameOf(item)}`, at: item.at })),
        { message: roomWords(place, room), at: place.at },
      ];
      const message = `the ${nameOf(last)} takes the ${nameOf(place)}, which is taken already; give it another place`;
      report(finding(card, ref?.at ?? last.at, message, { notes }));
    }
  },
};

/** Of what takes a place, all that one build has, in the build that has most. */
function mostTogether(takers: readonly (KitItem | Connector)[], { job }: Subject) {
  return buildsOf(job)
    .map((build) => takers.filter((item) => isIn(item, build)))
    .reduce((most, some) => (roomFor(some) > roomFor(most) ? some : most), []);
}

function roomFor(takers: readonly (KitItem | Connector)[]): number {
  return takers.reduce((sum, item) => sum + (isCounted(item) ? totalCount(item) : 1), 0);
}

function roomWords({ noun }: Part, room: number): string {
  return room === 1 ? `there is one ${noun.singular}` : `there is room for ${room}`;
}

function nameOf({ noun }: KitItem | Connector | Part): string {
  return noun.singular;
}
