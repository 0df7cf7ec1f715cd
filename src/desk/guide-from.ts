import { fillIn } from '../shop/marked-places.ts';
import { yamlValue } from './facts.ts';

/** How a guide for another platform begins. */
interface GuideFrom {
  /** The other guide's text. */
  readonly text: string;
  readonly title: string;
  /** The id of the new platform. */
  readonly platform: string;
  /** Ids of the options that the new platform has, which a guide may not declare again. */
  readonly platformOptions: ReadonlySet<string>;
}

/**
 * A guide for another platform, from one that is there. The words stay; what was measured or seen on the other vehicle
 * is marked, since it is not known to be so on this one: fasteners of the vehicle, cut templates, pictures, ratings.
 */
export function guideFrom({ text, title, platform, platformOptions }: GuideFrom): string {
  const ending = text.includes('\r\n') ? '\r\n' : '\n';
  const all = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const close = all.findIndex((line, index) => index > 0 && /^---\s*$/.test(line));
  if (close < 0) return text;
  const front = frontMatter(all.slice(0, close), title, platform, platformOptions);
  const opening = [
    '---',
    '',
    `${fillIn} what is different on this vehicle; every line was written for another.`,
  ];
  return [...front, ...opening, ...all.slice(close + 1).map(toCheck)].join(ending);
}

/** What speaks of the other guide's own history, or of its measured facts, begins anew. */
const notCarried = new Set(['revision', 'updated', 'changes', 'when']);

function frontMatter(
  lines: readonly string[],
  title: string,
  platform: string,
  platformOptions: ReadonlySet<string>,
): readonly string[] {
  const out: string[] = [];
  let key = '';
  for (const line of lines) {
    const top = /^([\w-]+):/.exec(line)?.[1];
    if (top !== undefined) key = top;
    if (notCarried.has(key)) continue;
    const option = key === 'options' && /^\s+([\w-]+):/.exec(line)?.[1];
    if (option && platformOptions.has(option)) continue;
    if (top === 'title') out.push(`title: ${yamlValue(title)}`);
    else if (top === 'platform') out.push(`platform: ${platform}`);
    else out.push(line);
  }
  // With every option gone to the platform, nothing is left under the key.
  return out.filter((line, index) => line !== 'options:' || /^\s/.test(out[index + 1] ?? ''));
}

const measured = /^(:::?(?:fastener|cut-template|rating)\[)((?:\\.|[^\]\\])*)(\].*)$/;
const pictured = /^(:::figure\b.*\balt=")([^"]*)(".*)$/;

function toCheck(line: string): string {
  const [, open, label, rest] = measured.exec(line) ?? [];
  if (open !== undefined) return `${open}${label}, ${fillIn} as it is on this vehicle${rest}`;
  const [, before, alt, after] = pictured.exec(line) ?? [];
  if (before !== undefined) return `${before}${fillIn} what it shows on this vehicle, was: ${alt}${after}`;
  return line;
}
