import type { SafetyMessage } from '../../model/block.ts';
import type { Guide } from '../../model/guide.ts';
import type { PlacedMessage } from '../../model/job.ts';
import { signalPanel, signalWords } from '../../trade/signal-words.ts';
import { type GuideContext, stepRef } from '../frame/context.ts';
import { shownIn } from '../frame/plans.ts';
import { proseMarkup } from '../frame/prose.ts';
import type { SafetyEntry, SafetyGroup, SignalKeyRow } from '../guide/guide-views.ts';
import { signalBar } from '../steps/blocks.ts';

/** The safety messages of the whole job under their words; a message that is repeated stands once. */
export function safetyGroups(guide: Guide, context: GuideContext): readonly SafetyGroup[] {
  const byText = new Map<string, PlacedMessage[]>();
  for (const placed of context.job.plans.flatMap((plan) => plan.messages)) {
    const key = textKey(placed.message, context);
    byText.set(key, [...(byText.get(key) ?? []), placed]);
  }
  const entries = [...byText.values()].map((places) => ({ places, word: places[0]?.message.word }));
  return signalWords.flatMap((word) => {
    const own = entries.filter((entry) => entry.word === word);
    if (own.length === 0) return [];
    return [
      { ...signalBar(word, context), entries: own.flatMap(({ places }) => entryOf(places, guide, context)) },
    ];
  });
}

/** The key of the signal words; a scheme without a word for mere damage leaves it out. */
export function signalKey({ shop }: GuideContext): readonly SignalKeyRow[] {
  return signalWords
    .map((word) => signalPanel(word, shop.settings.signalWords))
    .flatMap(({ word, meaning }) => (word === '' ? [] : [{ word, meaning }]));
}

function textKey({ word, hazard, body }: SafetyMessage, context: GuideContext): string {
  const place = { context, stepSide: null };
  return [word, proseMarkup(hazard, place).html, proseMarkup(body, place).html].join('\n');
}

function entryOf(places: readonly PlacedMessage[], guide: Guide, context: GuideContext): SafetyEntry[] {
  const [first] = places;
  if (!first) return [];
  const place = { context, stepSide: null, repeated: true };
  const messages = new Set(places.map(({ message }) => message));
  const plans = context.job.plans.filter((plan) =>
    plan.messages.some(({ message }) => messages.has(message)),
  );
  const steps = new Set(places.map(({ step }) => step));
  const sections = new Set(places.filter(({ step }) => step === null).map(({ section }) => section));
  return [
    {
      ...shownIn(context, plans),
      hazard: proseMarkup(first.message.hazard, place),
      body: proseMarkup(first.message.body, place),
      steps: [...steps].flatMap((id) => (id === null ? [] : (stepRef(context, id) ?? []))),
      sections: guide.sections
        .filter(({ id }) => sections.has(id))
        .map(({ id, titleText }) => ({ text: titleText, href: `#${id}` })),
    },
  ];
}
