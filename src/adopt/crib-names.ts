import type { Tool, Wear } from '../model/item.ts';
import type { Shop } from '../model/shop.ts';
import { writtenDrive } from '../trade/drives.ts';
import { parseQuantity } from '../units/parse.ts';

/** A tool of the crib, or what is worn, as a text names it. */
interface FoundTool {
  readonly from: number;
  readonly to: number;
  readonly tool: Tool | Wear;
}

/** Finds in a text what the shop owns. */
export type ToolFinder = (text: string, inList: boolean) => readonly FoundTool[];

/**
 * Looks for the names and synonyms of the crib, the longest first. Within a sentence a name of one plain word is taken
 * only after "with", "using" or "wear", and a synonym of one word not at all: "tape" is more often what is stuck on. A
 * bit goes by its drive too.
 *
 * @param torques all that the guide tightens to: "torque wrench" is the one that can be set to each
 */
export function toolFinder({ crib }: Pick<Shop, 'crib'>, torques: readonly string[]): ToolFinder {
  const names = [...crib.values()].flatMap((tool) =>
    [tool.noun.label, tool.noun.singular, tool.noun.plural, ...tool.synonyms].map((name, index) => {
      return { name, tool, other: index > 2 && tool.kind === 'tool' };
    }),
  );
  const sharing = new Map<string, Set<Tool | Wear>>();
  for (const { name, tool } of names)
    sharing.set(name.toLowerCase(), new Set([...(sharing.get(name.toLowerCase()) ?? []), tool]));
  /** Of tools that share a name, wrenches say, the one that does for every torque of the guide; `null` where that is not one. */
  const meant = (name: string): Tool | Wear | null => {
    const all = [...(sharing.get(name.toLowerCase()) ?? [])];
    const able =
      all.length === 1 ? all : all.filter((tool) => tool.kind === 'tool' && coversAll(tool, torques));
    return able.length === 1 ? (able[0] ?? null) : null;
  };
  const known = names
    .flatMap(({ name, other }) => {
      const tool = meant(name);
      return tool ? [{ name, tool, other }] : [];
    })
    .sort((a, b) => b.name.length - a.name.length)
    .map(({ name, tool, other }) => ({
      tool,
      other,
      pattern: patternOf(name),
      plain: /^[a-z]+$/i.test(name),
    }));
  return (text, inList) => {
    const found: FoundTool[] = [];
    const add = (from: number, to: number, tool: Tool | Wear) => {
      if (!found.some((one) => from < one.to && one.from < to)) found.push({ from, to, tool });
    };
    for (const { tool, pattern, plain, other } of known) {
      for (const { index, 0: words } of text.matchAll(pattern)) {
        const before = text.slice(0, index);
        if (
          plain &&
          !inList &&
          (other || !/\b(?:with|using|use|wear)\s+(?:a |an |the |your )?$/i.test(before))
        )
          continue;
        add(index, index + words.length, tool);
      }
    }
    for (const { index, 0: words, 1: drive = '' } of text.matchAll(bits)) {
      const tool = byDrive(crib, drive.replace(/\s/g, '').toUpperCase());
      if (tool) add(index, index + words.length, tool);
    }
    return found.sort((a, b) => a.from - b.from);
  };
}

/** Whether a torque wrench can be set to each of some torques; without any, no wrench is told from another. */
function coversAll({ range }: Tool, torques: readonly string[]): boolean {
  const asked = torques.map((torque) => parseQuantity(torque, 'torque'));
  return (
    range !== null &&
    asked.length > 0 &&
    asked.every(
      (one) =>
        one.ok && range.value.least.base <= one.quantity.base && one.quantity.base <= range.value.most.base,
    )
  );
}

const bits = /\b((?:T|E|PH|PZ)\s?\d{1,3})\s(?:bit|driver|screwdriver|key)\b/gi;

/** The one tool of a drive; none where there are several, since the old words do not say which. */
function byDrive(crib: Shop['crib'], drive: string): Tool | null {
  const fitting = [...crib.values()].filter(
    (tool): tool is Tool =>
      tool.kind === 'tool' && tool.drive !== null && writtenDrive(tool.drive.value) === drive,
  );
  return fitting.length === 1 ? (fitting[0] ?? null) : null;
}

/** A name however it is spaced and joined: `10 mm socket`, `10mm socket`, `trim-lever`. */
function patternOf(name: string): RegExp {
  const parts = name.split(/[\s\-–·,]+|(?<=\d)(?=[a-z])/i).filter((part) => part !== '');
  const joined = parts.map((part) => part.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&')).join('[\\s\\-–·,]*');
  return new RegExp(`(?<![\\p{L}\\p{N}])${joined}(?![\\p{L}\\p{N}])`, 'giu');
}
