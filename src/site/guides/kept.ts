import type { Ask } from '../../shop/asks.ts';
import { contentHash } from '../../store/content-hash.ts';
import { readJson, writeJson } from '../../store/store.ts';
import { bringsBytes } from './made.ts';
import type { GuideResult, TurnGround } from './turn.ts';

/** What a guide was made from is not known before it is made: under its name stands what it asked for last time. */
const asksName = ({ basis }: TurnGround, path: string) => `asks-${contentHash(basis, path)}.json`;

/** Under the answers to that stands what it gave. */
const resultName = ({ basis }: TurnGround, path: string, answers: readonly string[]) =>
  `guide-${contentHash(basis, path, ...answers)}.json`;

/**
 * What a guide gave when everything that it asks for was as it is now; `null` where it has to take its turn. A
 * guide that was only checked serves a build only where it has errors, and so makes no pages.
 */
export function readKept(path: string, ground: TurnGround): GuideResult | null {
  const asks = readJson<readonly Ask[]>(ground.store, asksName(ground, path));
  if (!asks) return null;
  const result = readJson<GuideResult>(ground.store, resultName(ground, path, asks.map(ground.answer)));
  if (!result || !ground.kit) return result;
  return result.made || result.findings.some(({ severity }) => severity === 'error') ? result : null;
}

/** Keeps what a guide gave, unless a file of it had to be handed on instead of being stored. */
export function writeKept(
  ground: TurnGround,
  path: string,
  asked: readonly { readonly ask: Ask; readonly answer: string }[],
  result: GuideResult,
): void {
  if (bringsBytes(result.made)) return;
  const name = resultName(
    ground,
    path,
    asked.map(({ answer }) => answer),
  );
  if (writeJson(ground.store, name, result))
    writeJson(
      ground.store,
      asksName(ground, path),
      asked.map(({ ask }) => ask),
    );
}
