import { HtmlValidate } from 'html-validate';

/** The page's own style is not the validator's: a lower-case DOCTYPE, long titles, spaces at the ends of lines. */
const validator = new HtmlValidate({
  extends: ['html-validate:recommended', 'html-validate:a11y'],
  rules: {
    'doctype-style': ['error', { style: 'lowercase' }],
    'long-title': 'off',
    'no-trailing-whitespace': 'off',
  },
});

/** What html-validate (recommended and a11y) finds wrong with a page, each with the line that it stands in. */
export async function htmlFaults(html: string): Promise<string[]> {
  const report = await validator.validateString(html);
  return report.results.flatMap(({ messages }) =>
    messages.map(
      ({ ruleId, message, line }) => `${line} ${ruleId}: ${message} | ${html.split('\n')[line - 1]}`,
    ),
  );
}
