import { betweenRules, pageRules, rules } from '../checks/index.ts';
import { CUT_RULES } from '../cut/shape/rules.ts';
import type { RuleCard } from '../diagnostics/rule-card.ts';
import { directiveRules } from '../directives/index.ts';
import { guideRules } from '../guide/index.ts';
import { pictureRules } from '../pictures/rules.ts';
import { releaseRules } from '../release/rules.ts';
import { syntaxRules } from '../syntax/rules/index.ts';
import { yamlRules } from '../syntax/yaml-rules.ts';
import { visitRules } from '../visit/index.ts';
import { shopRules } from './rules.ts';

/** Every rule of every room, by code: what `explain`, the handbook and one generic test go by. */
export const ruleCards: readonly RuleCard[] = [
  ...yamlRules,
  ...syntaxRules,
  ...directiveRules,
  ...guideRules,
  ...shopRules,
  ...releaseRules,
  ...visitRules,
  ...pictureRules,
  ...CUT_RULES,
  // A rule about one page and about links between guides shares its card.
  ...new Set([...rules, ...pageRules, ...betweenRules].map(({ card }) => card)),
].sort((a, b) => (a.code < b.code ? -1 : 1));
