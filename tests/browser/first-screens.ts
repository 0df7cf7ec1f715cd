import type { Page } from 'playwright-core';

/** What of a step stands on the bay screen without scrolling. */
export interface FirstScreen {
  readonly step: string;
  readonly title: boolean;
  /** The first action; true where the step has none. */
  readonly action: boolean;
  readonly done: boolean;
  /** The words of the step that can be read. */
  readonly words: string;
}

/** Goes through all steps of a guide's page by the button that leads on, and looks at each as it stands. */
export async function firstScreens(page: Page): Promise<readonly FirstScreen[]> {
  return page.evaluate<readonly FirstScreen[]>(`(() => {
    document.querySelector('.bay-one').click();
    const next = document.querySelector('.bay-next');
    const seen = (element) => element.getClientRects().length > 0;
    const screens = [];
    for (let turns = 0; turns < 200 && !next.disabled; turns += 1) {
      const step = [...document.querySelectorAll('.step')].find(seen);
      const bar = document.querySelector('.bay-turn').getBoundingClientRect();
      // On a phone that lies the buttons stand at the side.
      const foot = bar.width < innerWidth / 2 ? innerHeight : bar.top;
      const top = document.querySelector('.bay-head').getBoundingClientRect().bottom;
      const inside = (element) => {
        const box = element.getBoundingClientRect();
        return box.height > 0 && box.top >= top - 1 && box.bottom <= foot + 1;
      };
      if (step && screens.at(-1)?.step !== step.id) {
        const action = [...step.querySelectorAll('.step-body .action')].find(seen);
        const said = [...step.querySelectorAll('h3, h4, h5, p, dd, li, .sentence')].filter(seen).filter(inside);
        screens.push({
          step: step.id,
          title: inside(step.querySelector('h3, h4, h5')),
          action: !action || inside(action),
          done: next.getBoundingClientRect().bottom <= innerHeight + 1,
          words: said.map((element) => element.innerText).join(' '),
        });
      }
      next.click();
    }
    return screens;
  })()`);
}
