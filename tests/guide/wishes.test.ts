import { describe, expect, it } from 'vitest';
import { computeJob } from '../../src/job/index.ts';
import { guidePage } from '../../src/pages/guide/guide-page.ts';
import { page } from '../pages/render.ts';
import { readBody, soundGuide } from './read.ts';

const guide = (front: string, body: string) =>
  `---\ntitle: Example\nplatform: example-van\n${front}---\n\n## Fit {#fit}\n\n${body}`;

const buzzer = ':where[Set the buzzer.]{when=alarm}';

function pageOf(text: string) {
  const made = soundGuide(text);
  return guidePage(made, computeJob(made), page());
}

describe('what the customer wishes', () => {
  it('is asked apart from what the vehicle is', () => {
    const { picker, cover } = pageOf(
      guide(
        'wishes:\n  alarm: Alarm\n  colour: {one-of: {red: Red, blue: Blue}}\n',
        `::step[Look]{#look}\n\n:where[Unplug the lamps.]{when=fog} ${buzzer} :where[Take the red one.]{when="colour is red"}`,
      ),
    );
    expect(picker?.groups.map(({ title, options }) => [title, options.map(({ id }) => id)])).toEqual([
      ['As the vehicle is', ['fog']],
      ['As the customer wishes', ['alarm', 'colour']],
    ]);
    expect(cover.wishes).toBe('As the customer wishes: alarm and colour');
  });

  it('needs no heading where only facts are asked, and has one where only wishes are', () => {
    const facts = pageOf(guide('', '::step[Look]{#look}\n\n:where[Unplug the lamps.]{when=fog}'));
    expect(facts.picker?.groups.map(({ title }) => title)).toEqual([null]);
    expect(facts.cover.wishes).toBeNull();
    const wishes = pageOf(guide('wishes: {alarm: Alarm}\n', `::step[Look]{#look}\n\n${buzzer}`));
    expect(wishes.picker?.groups.map(({ title }) => title)).toEqual(['As the customer wishes']);
  });

  it('is not a fact as well', () => {
    const { findings } = readBody(
      guide('options: {alarm: Alarm}\nwishes: {alarm: Alarm}\n', `::step[Look]{#look}\n\n${buzzer}`),
    );
    expect(findings.map(({ code, message }) => [code, message])).toEqual([
      ['option-doubled', '"alarm" is an option and a wish; it is either a fact or decided by the customer'],
    ]);
  });
});
