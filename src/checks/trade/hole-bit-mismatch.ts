import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { featuresOf } from '../../job/actions/target.ts';
import { type Feature, listed } from '../../job/index.ts';
import type { Tool } from '../../model/item.ts';
import { formatBoth, formatQuantity } from '../../units/format.ts';
import type { Rule, Subject } from '../rule.ts';
import { drilledTemplate } from './example-template.ts';
import { sizeOf } from './holes.ts';
import type { Offer, ToolUse } from './tool-use.ts';
import { firstTool, placeOfOffers, reportUses, toolNouns, type UseFault } from './use-fault.ts';

const card: RuleCard = {
  code: 'hole-bit-mismatch',
  severity: 'error',
  title: 'No tool that is named makes the hole',
  why: 'The template says how wide a hole is, and the bit says what it drills. Where the two differ, the hole is spoiled and the panel with it.',
  bad: drilledTemplate('drill-6'),
  good: drilledTemplate('drill-9'),
};

/** Every hole that an action drills is made by a bit or hole saw among its tools. */
export const holeBitMismatch: Rule = {
  card,
  run: (subject, report) => reportUses(card, subject, (use) => judge(use, subject), report),
};

function judge(use: ToolUse, subject: Subject): UseFault | null {
  if (use.action.verb !== 'drill' || use.offers.length === 0) return null;
  const bits = use.offers.filter(({ any }) => any.some(({ diameter }) => diameter !== null));
  const made = (feature: Feature) => bits.some(({ any }) => any.some((tool) => makes(tool, feature)));
  const unmade = holesOfTarget(use).find((feature) => !made(feature) && !isToldByCut(feature, use, subject));
  if (!unmade) return null;
  return {
    at: placeOfOffers(use, bits),
    message: `${toolWords(use, bits)}, and the ${unmade.label.toLowerCase()} is ${formatBoth(sizeOf(unmade))}`,
    notes: [{ message: 'the hole is declared here', at: unmade.at }],
    better: firstTool(subject, (tool) => makes(tool, unmade)),
    cause: `${sizeOf(unmade).base} ${bits.map(({ tool }) => tool.id).join(' ')}`,
  };
}

/** What is drilled: one hole or row, or every round hole of a template. */
function holesOfTarget({ target }: ToolUse): readonly Feature[] {
  if (target.kind === 'hole') return [target.feature];
  if (target.kind !== 'template') return [];
  return featuresOf(target.template).filter((feature) => 'diameter' in feature);
}

/** A hole that no declared bit makes is a fault of the template, and told there; but a cutter can go round it. */
function isToldByCut(feature: Feature, { target }: ToolUse, { guide }: Subject): boolean {
  const tools = [...guide.items.values()].filter((item) => item.kind === 'tool');
  if (!('diameter' in feature) || tools.some((tool) => makes(tool, feature))) return false;
  const cutter = target.kind === 'item' ? null : target.template.cutterRadius;
  return !cutter || feature.diameter < 2 * cutter.value;
}

/** A hole and a bit this near in diameter are one size, mm. */
const SAME_DIAMETER = 0.05;

function makes({ diameter }: Tool, feature: Feature): boolean {
  return diameter !== null && Math.abs(diameter.value.base - sizeOf(feature).base) <= SAME_DIAMETER;
}

function toolWords({ offers }: ToolUse, bits: readonly Offer[]): string {
  const made = bits.map(({ tool, any }) => {
    const diameter = any.find((one) => one.diameter !== null)?.diameter;
    return `the ${tool.noun.singular} makes ${diameter ? formatQuantity(diameter.value) : ''}`;
  });
  return made.length > 0 ? listed(made) : `nothing says how wide ${toolNouns(offers)} drills`;
}
