import type { BayStep } from '../../../../src/pages/guide/bay-data.ts';
import { button, make, say } from '../elements.ts';
import type { Keeper } from '../kept/keeper.ts';
import { withWait } from '../kept/progress.ts';

const MINUTE = 60_000;

/** Shows above each step of the bay screen what is still waiting after others, as a line that leads there. */
export function showRunning(place: HTMLElement, keeper: Keeper): void {
  const lines = keeper.page.steps
    .filter(({ wait }) => wait > 0)
    .map((step) => {
      const line = make('a', 'bay-running');
      line.href = `#${step.id}`;
      return { step, line };
    });
  place.replaceChildren(...lines.map(({ line }) => line));
  const draw = (): void => {
    for (const { step, line } of lines) {
      const begun = keeper.now().waits.get(step.id);
      line.hidden = begun === undefined;
      if (begun === undefined) continue;
      const left = begun + step.wait * MINUTE - Date.now();
      say(line, `${step.title}: ${left > 0 ? `${spanWords(left)} left` : 'the wait is over'}`);
    }
  };
  keeper.onChange(draw);
  setInterval(draw, 1000);
}

/** Gives each step that is followed by a wait a timer. It runs on by the clock while the page is closed. */
export function addWaits(keeper: Keeper): void {
  for (const step of keeper.page.steps.filter(({ wait }) => wait > 0)) {
    const lines = document.getElementById(step.id)?.querySelector('.step-body > .lines');
    if (lines) lines.after(timer(step, keeper));
  }
}

function timer(step: BayStep, keeper: Keeper): HTMLElement {
  const left = make('p', 'bay-left');
  const over = make('p', 'bay-over');
  over.setAttribute('role', 'status');
  const press = () =>
    keeper.change((progress) => withWait(progress, step.id, progress.waits.has(step.id) ? null : Date.now()));
  const toggle = button('', '', press);
  const draw = (): void => {
    const begun = keeper.now().waits.get(step.id);
    const end = begun === undefined ? null : begun + step.wait * MINUTE;
    const waiting = end !== null && end > Date.now();
    say(left, waiting ? `Wait until ${clockWords(new Date(end))}: ${spanWords(end - Date.now())} left.` : '');
    say(over, end !== null && !waiting ? 'The wait is over.' : '');
    say(toggle, end === null ? 'Begin the wait' : waiting ? 'Stop the wait' : 'Clear');
  };
  keeper.onChange(draw);
  setInterval(draw, 1000);
  return make('div', 'bay-wait', left, over, toggle);
}

/** `14:32`, with the day where it is not today. */
function clockWords(end: Date): string {
  const time = end.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
  const today = end.toDateString() === new Date().toDateString();
  return today ? time : `${end.toLocaleDateString([], { weekday: 'long' })}, ${time}`;
}

/** `23 h 59 min`; the last two minutes in seconds. */
export function spanWords(milliseconds: number): string {
  const seconds = Math.ceil(milliseconds / 1000);
  if (seconds <= 120) return `${seconds}\u00a0s`;
  const minutes = Math.ceil(seconds / 60);
  const hours = Math.floor(minutes / 60);
  return hours === 0 ? `${minutes}\u00a0min` : `${hours}\u00a0h ${minutes % 60}\u00a0min`;
}
