import { isOfBuild } from '../elements.ts';

/** What fills the bay screen at one time: the opening, what stands before the steps of a section, or a step. */
export interface Stop {
  readonly id: string;
  readonly at: HTMLElement;
  readonly kind: 'opening' | 'section' | 'step';
}

/** In the order of the page; what is for another build is no stop. */
export function stopsOf(main: HTMLElement): readonly Stop[] {
  const parts = [...main.querySelectorAll<HTMLElement>(':scope > .part')].filter((part) => !part.hidden);
  const stops = parts.flatMap((at): readonly Stop[] => {
    const steps = stepsOf(at).map((step): Stop => ({ id: step.id, at: step, kind: 'step' }));
    const own = steps.length === 0 || introOf(at).length > 0;
    return [...(own ? [{ id: at.id, at, kind: 'section' } as const] : []), ...steps];
  });
  return [{ id: '', at: main, kind: 'opening' }, ...stops];
}

/** The steps of a section that the build has. */
export function stepsOf(part: HTMLElement): readonly HTMLElement[] {
  return [...part.querySelectorAll<HTMLElement>(':scope > .step')].filter((step) => !step.hidden);
}

/** What the build has between the heading of a section and its first step. */
export function introOf(part: HTMLElement): readonly HTMLElement[] {
  const ours = ':scope > :not(.part-head, .step, .bay-held, .why)';
  return [...part.querySelectorAll<HTMLElement>(ours)].filter(
    (element) => isOfBuild(element) && element.textContent?.trim() !== '',
  );
}

/** The safety messages in front of a section that the build has: they guard all its steps. */
export function guardsOf(part: HTMLElement): readonly HTMLElement[] {
  return introOf(part).filter((element) => element.matches('.message'));
}

/** The stop that holds a place of the page; the opening where none does. */
export function stopAt(main: HTMLElement, place: string | null): Stop {
  const [opening = { id: '', at: main, kind: 'opening' } as const, ...rest] = stopsOf(main);
  const target = place === null ? null : document.getElementById(place);
  if (!target) return opening;
  const steps = rest.filter(({ kind }) => kind === 'step');
  return (
    steps.find(({ at }) => at.contains(target)) ??
    rest.find(({ at }) => at.contains(target)) ??
    rest.find(({ at }) => target.contains(at)) ??
    steps.find(({ at }) => target.closest('.part')?.contains(at)) ??
    opening
  );
}

/** What is out of sight while a stop is shown. */
export function hiddenFor(stop: Stop, main: HTMLElement): readonly Element[] {
  const ours = '.bay-head, .bay-runs, .bay-turn, .map, .map-bar, dialog';
  if (stop.kind === 'opening') return [...main.querySelectorAll(':scope > .part')];
  const part = stop.at.closest('.part');
  const around = [...main.children].filter((child) => child !== part && !child.matches(ours));
  if (!part) return around;
  const within = [...part.children].filter((child) =>
    stop.kind === 'section'
      ? child.matches('.step, .bay-held')
      : child !== stop.at && !child.matches('.bay-held, .message'),
  );
  return [...around, ...within];
}

/** The number of a step in the build that the page shows; `null` for another stop. */
export function numberOf({ at, kind }: Stop): string | null {
  return kind === 'step' ? (at.querySelector('.step-number [data-step]')?.textContent ?? null) : null;
}

/** The heading of a stop, in words. */
export function titleOf({ at, kind }: Stop): string {
  if (kind === 'opening') return 'the start';
  return at.querySelector('h2, h3, h4, h5, h6')?.textContent?.trim() ?? '';
}
